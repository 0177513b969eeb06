package clearbed.report.workbook.layout;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;
import org.apache.poi.ss.usermodel.Row;

/**
 * Much text in few cells: deflated, then Base64, which every spreadsheet program keeps to the
 * letter.
 */
public final class PackedText {
  /** Text goes on in the next cell after this many characters. */
  private static final int CHUNK = 30_000;

  private PackedText() {}

  /** Packs what is written, onto the sink, once it is closed. */
  public static OutputStream packing(ByteArrayOutputStream sink) {
    Deflater deflater = new Deflater(Deflater.BEST_SPEED);
    return new DeflaterOutputStream(Base64.getEncoder().wrap(sink), deflater) {
      @Override
      public void close() throws IOException {
        super.close();
        deflater.end();
      }
    };
  }

  /**
   * What was packed; reading fails with an {@link IOException} where the text is no longer whole.
   */
  public static InputStream unpacking(String packed) {
    byte[] bytes = packed.getBytes(StandardCharsets.ISO_8859_1);
    return new InflaterInputStream(Base64.getMimeDecoder().wrap(new ByteArrayInputStream(bytes)));
  }

  /** Writes text into cells of a row, from that column on. */
  public static void write(Row row, int column, String text) {
    int at = column;
    for (int from = 0; from < text.length(); from += CHUNK) {
      int to = Math.min(from + CHUNK, text.length());
      row.createCell(at++).setCellValue(text.substring(from, to));
    }
  }

  /** Reads what {@link #write} wrote. */
  public static String read(Row row, int column) {
    StringBuilder text = new StringBuilder();
    for (int at = column; row.getCell(at) != null; at++) {
      text.append(SheetLayout.text(row.getCell(at)));
    }
    return text.toString();
  }
}
