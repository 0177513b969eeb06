package clearbed.report;

import java.io.File;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.Writer;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.streaming.SheetDataWriter;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * A workbook whose rows go to disk as they are written, by a quicker way than the library's own.
 */
final class StreamedBook extends SXSSFWorkbook {
  /**
   * @param compressed whether rows are compressed on their way, which takes longer and less disk
   */
  StreamedBook(XSSFWorkbook book, int window, boolean compressed) {
    super(book, window, compressed);
  }

  @Override
  protected SheetDataWriter createSheetDataWriter() throws IOException {
    return isCompressTempFiles() ? new CompressedRows() : new Rows();
  }

  private static final class CompressedRows extends Rows {
    CompressedRows() throws IOException {}

    @Override
    protected OutputStream decorateOutputStream(FileOutputStream file) throws IOException {
      return new GZIPOutputStream(file);
    }

    @Override
    protected InputStream decorateInputStream(FileInputStream file) throws IOException {
      return new GZIPInputStream(file);
    }
  }

  /** Writes plain text as a whole, where the library takes it apart into characters. */
  private static class Rows extends SheetDataWriter {
    Rows() throws IOException {}

    // Deprecated as a method for all to call; to give another writer there is no other way.
    @SuppressWarnings("deprecation")
    @Override
    public Writer createWriter(File file) throws IOException {
      return new Utf8Writer(decorateOutputStream(new FileOutputStream(file)));
    }

    @Override
    protected void outputEscapedString(String text) throws IOException {
      int from = 0;
      for (int at = 0; text != null && at < text.length(); at++) {
        char c = text.charAt(at);
        if (isPlain(c)) continue;
        _out.write(text, from, at - from);
        int end = at + Character.charCount(text.codePointAt(at));
        if (c == '"') _out.write("&quot;");
        else super.outputEscapedString(text.substring(at, end));
        from = end;
        at = end - 1;
      }
      if (text != null) _out.write(text, from, text.length() - from);
    }

    private static boolean isPlain(char c) {
      return c >= ' ' && c < 0x7F && c != '<' && c != '>' && c != '&' && c != '"';
    }
  }
}
