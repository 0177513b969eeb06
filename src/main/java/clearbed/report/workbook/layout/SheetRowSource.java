package clearbed.report.workbook.layout;

import java.io.Closeable;
import java.io.IOException;

/** Rows of a sheet from top to bottom, those that hold something. */
public interface SheetRowSource extends Closeable {
  /** The next row, or null behind the last. */
  SheetRow next() throws IOException;
}
