package clearbed.mark;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The mark of files without properties of their own: a last line that holds a digest of all above
 * it. Of texts, line ends and blanks at the ends of lines do not count, as mail and version control
 * change them; of a PDF every byte does.
 */
public final class ClosingLine {
  private static final Pattern LINE =
      Pattern.compile(
          "(?:<!-- |%)?Clearbed ([a-z]+), SHA-256 of all above: ([0-9a-f]{64})(?: -->)?[ \\t]*(?=[\\r\\n]|\\z)");

  /** More than the line and some blank lines behind it. */
  private static final int TAIL = 400;

  /** No text that this program writes comes near. */
  private static final long LONGEST_TEXT = 256L << 20;

  private ClosingLine() {}

  /** The text with its mark as a last line for people to see. */
  public static String closed(String text, OutputKind kind) {
    return text + "\n" + line(kind, ofText(text)) + "\n";
  }

  /** The Markdown or HTML text with its mark as a comment, which is not shown. */
  public static String closedMarkup(String text, OutputKind kind) {
    return text + "\n<!-- " + line(kind, ofText(text)) + " -->\n";
  }

  /** Writes a PDF file. */
  @FunctionalInterface
  public interface PdfWriting {
    void writeTo(OutputStream out) throws IOException;
  }

  /** Writes a PDF with its mark, a comment behind its end (ISO 32000-1, 7.2.3). */
  public static void writePdf(PdfWriting pdf, OutputKind kind, OutputStream out)
      throws IOException {
    MessageDigest digest = Sha256.begun();
    pdf.writeTo(new DigestOutputStream(out, digest));
    String line = "%" + line(kind, Sha256.hex(digest)) + "\n";
    out.write(line.getBytes(StandardCharsets.US_ASCII));
  }

  private static String line(OutputKind kind, String digest) {
    return "Clearbed " + kind.word() + ", SHA-256 of all above: " + digest;
  }

  /** What the file is of ours, or null. */
  public static OwnOutput of(Path file) throws IOException {
    long size = Files.size(file);
    String tail = tail(file, size);
    Matcher line = LINE.matcher(tail);
    OutputKind kind = line.find() ? OutputKind.of(line.group(1)) : null;
    if (kind == null || size > LONGEST_TEXT) return null;
    long above = size - tail.length() + line.start();
    String digest = kind == OutputKind.COPY ? ofBytes(file, above) : ofText(file, above);
    boolean last = tail.substring(line.end()).isBlank();
    return new OwnOutput(kind, last && digest.equals(line.group(2)));
  }

  /** One character for a byte: places in the text are places in the file. */
  private static String tail(Path file, long size) throws IOException {
    try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
      byte[] tail = new byte[(int) Math.min(TAIL, size)];
      in.seek(size - tail.length);
      in.readFully(tail);
      return new String(tail, StandardCharsets.ISO_8859_1);
    }
  }

  private static String ofBytes(Path file, long length) throws IOException {
    MessageDigest digest = Sha256.begun();
    try (InputStream in = Files.newInputStream(file)) {
      byte[] part = new byte[1 << 16];
      long left = length;
      while (left > 0) {
        int n = in.read(part, 0, (int) Math.min(part.length, left));
        if (n < 0) break;
        digest.update(part, 0, n);
        left -= n;
      }
    }
    return Sha256.hex(digest);
  }

  private static String ofText(Path file, long length) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return ofText(new String(in.readNBytes((int) length), StandardCharsets.UTF_8));
    }
  }

  private static String ofText(String text) {
    StringBuilder plain = new StringBuilder(text.length());
    text.lines().forEach(line -> plain.append(line.stripTrailing()).append('\n'));
    int start = plain.length() > 0 && plain.charAt(0) == '\uFEFF' ? 1 : 0;
    String even = plain.substring(start).stripTrailing();
    return Sha256.of(even.getBytes(StandardCharsets.UTF_8));
  }
}
