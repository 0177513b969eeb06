package clearbed.report;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;

/** Gathers many small pieces of text for one thread, without the locks of Java's own. */
final class Utf8Writer extends Writer {
  private final char[] held = new char[1 << 14];
  private final Writer out;
  private int length;

  Utf8Writer(OutputStream out) {
    this.out = new OutputStreamWriter(out, StandardCharsets.UTF_8);
  }

  @Override
  public void write(int c) throws IOException {
    if (length == held.length) pass();
    held[length++] = (char) c;
  }

  @Override
  public void write(String text) throws IOException {
    write(text, 0, text.length());
  }

  @Override
  public void write(String text, int from, int count) throws IOException {
    for (int at = from, left = count; left > 0; ) {
      if (length == held.length) pass();
      int now = Math.min(left, held.length - length);
      text.getChars(at, at + now, held, length);
      length += now;
      at += now;
      left -= now;
    }
  }

  @Override
  public void write(char[] text, int from, int count) throws IOException {
    pass();
    out.write(text, from, count);
  }

  private void pass() throws IOException {
    out.write(held, 0, length);
    length = 0;
  }

  @Override
  public void flush() throws IOException {
    pass();
    out.flush();
  }

  @Override
  public void close() throws IOException {
    pass();
    out.close();
  }
}
