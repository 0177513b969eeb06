package clearbed.read.detect;

import clearbed.model.document.Document.Gap;
import clearbed.model.document.Origin;
import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.tika.metadata.Metadata;
import org.apache.tika.parser.txt.UniversalEncodingDetector;

/** The charset of plain text: a mark at its start, else UTF-8 if it is valid, else guessed. */
public final class TextEncoding {
  private static final Charset FALLBACK = Charset.forName("windows-1252");

  /** What stands for bytes that are no letter (Unicode's replacement character). */
  private static final char LOST = '\uFFFD';

  private TextEncoding() {}

  /** No bytes that text never has. */
  public static boolean looksLikeText(byte[] head) {
    if (mark(head) != null || utf16(head) != null) return true;
    int odd = 0;
    for (byte b : head) {
      if (b == 0) return false;
      if (b >= 0 && b < ' ' && b != '\n' && b != '\r' && b != '\t' && b != '\f' && b != 0x1B) odd++;
    }
    return odd <= head.length / 200;
  }

  /** The start of a file for a look at its kind; letters outside ASCII may be wrong. */
  public static String preview(byte[] head) {
    Charset charset = mark(head) != null ? mark(head) : utf16(head);
    if (charset == null)
      charset = validUtf8(ByteBuffer.wrap(head)) ? StandardCharsets.UTF_8 : FALLBACK;
    return withoutMark(new String(head, charset));
  }

  public static BufferedReader open(Path file) throws IOException {
    BufferedReader reader =
        new BufferedReader(new InputStreamReader(Files.newInputStream(file), of(file)), 1 << 16);
    reader.mark(1);
    if (reader.read() != '\uFEFF') reader.reset();
    return reader;
  }

  static Charset of(Path file) throws IOException {
    byte[] head;
    try (InputStream in = Files.newInputStream(file)) {
      head = in.readNBytes(1 << 16);
    }
    Charset marked = mark(head) != null ? mark(head) : utf16(head);
    if (marked != null) return marked;
    return isUtf8(file) || isDamagedUtf8(head) ? StandardCharsets.UTF_8 : guess(file);
  }

  /** More letters of several bytes than bytes that are none: no other encoding comes out so. */
  private static boolean isDamagedUtf8(byte[] head) {
    int letters = 0;
    int lost = 0;
    String text = new String(head, StandardCharsets.UTF_8);
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == LOST) lost++;
      else if (c > 127) letters++;
    }
    return letters > lost;
  }

  /** What is to be said of a text whose bytes are not all letters in its encoding. */
  public static List<Gap> lost(String path, Stream<String> texts) {
    long lost =
        texts
            .filter(text -> text.indexOf(LOST) >= 0)
            .flatMapToInt(String::chars)
            .filter(c -> c == LOST)
            .count();
    String reason =
        " of its letters cannot be made out and show as \uFFFD; open and save it again as UTF-8";
    return lost == 0 ? List.of() : List.of(new Gap(Origin.ofDocument(path), lost + reason));
  }

  private static Charset guess(Path file) throws IOException {
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
      Charset guess = new UniversalEncodingDetector().detect(in, new Metadata());
      return guess == null || guess.equals(StandardCharsets.ISO_8859_1) ? FALLBACK : guess;
    }
  }

  private static Charset mark(byte[] b) {
    if (b.length >= 3 && b[0] == (byte) 0xEF && b[1] == (byte) 0xBB && b[2] == (byte) 0xBF) {
      return StandardCharsets.UTF_8;
    }
    if (b.length >= 2 && b[0] == (byte) 0xFF && b[1] == (byte) 0xFE)
      return StandardCharsets.UTF_16LE;
    if (b.length >= 2 && b[0] == (byte) 0xFE && b[1] == (byte) 0xFF)
      return StandardCharsets.UTF_16BE;
    return null;
  }

  /** UTF-16 without a mark: mostly ASCII letters, so that every second byte is nil. */
  private static Charset utf16(byte[] b) {
    int pairs = Math.min(b.length, 4096) / 2;
    if (pairs < 8) return null;
    int high = 0;
    int low = 0;
    for (int i = 0; i < pairs; i++) {
      if (b[2 * i] == 0 && b[2 * i + 1] >= '\t') high++;
      if (b[2 * i + 1] == 0 && b[2 * i] >= '\t') low++;
    }
    if (low > pairs * 0.9) return StandardCharsets.UTF_16LE;
    return high > pairs * 0.9 ? StandardCharsets.UTF_16BE : null;
  }

  private static boolean validUtf8(ByteBuffer bytes) {
    CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    // Not at the end of input: the last letter may be cut in two.
    return !decoder.decode(bytes, CharBuffer.allocate(bytes.remaining() + 1), false).isError();
  }

  private static boolean isUtf8(Path file) throws IOException {
    CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    ByteBuffer bytes = ByteBuffer.allocate(1 << 16);
    CharBuffer chars = CharBuffer.allocate(1 << 16);
    try (InputStream in = Files.newInputStream(file)) {
      while (true) {
        int n = in.read(bytes.array(), bytes.position(), bytes.remaining());
        if (n > 0) bytes.position(bytes.position() + n);
        bytes.flip();
        CoderResult result = decoder.decode(bytes, chars.clear(), n < 0);
        if (result.isError()) return false;
        if (n < 0) return true;
        bytes.compact();
      }
    }
  }

  private static String withoutMark(String text) {
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }
}
