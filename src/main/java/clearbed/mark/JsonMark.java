package clearbed.mark;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;

/**
 * The mark of a JSON file: its last value is a digest of all before it. Blanks between the values
 * do not count, nor does what the file says of the run, so that a later run over the same gives the
 * same.
 */
public final class JsonMark extends FilterOutputStream {
  /** Key of the digest. */
  public static final String KEY = "digest";

  private static final String DIGEST = ",\"" + KEY + "\":\"";

  /** In SARIF (3.8, property bags) the digest is the only property of the whole log. */
  private static final String IN_BAG = ",\"properties\":{\"" + KEY + "\":\"";

  private static final String FINDINGS = "{\"run\":{\"tool\":\"clearbed\"";
  private static final String SARIF = "\"tool\":{\"driver\":{\"name\":\"clearbed\"";

  private final Canonical canonical;

  /**
   * @param out to which everything goes on
   * @param kind JSON or SARIF
   */
  public JsonMark(OutputStream out, OutputKind kind) {
    super(out);
    this.canonical = new Canonical(kind == OutputKind.JSON, 0);
  }

  @Override
  public void write(int b) throws IOException {
    out.write(b);
    canonical.add((byte) b);
  }

  @Override
  public void write(byte[] bytes, int from, int length) throws IOException {
    out.write(bytes, from, length);
    for (int i = from; i < from + length; i++) canonical.add(bytes[i]);
  }

  /** Digest of what was written so far; to be asked for once, when all of it has come through. */
  public String digest() {
    return canonical.digest();
  }

  /** What a file that begins so is of ours, or null; whether it is untouched is not looked at. */
  public static OutputKind kind(byte[] head) {
    if (head.length == 0 || head[0] != '{') return null;
    String start = new String(head, StandardCharsets.UTF_8).replaceAll("\\s", "");
    if (start.startsWith(FINDINGS)) return OutputKind.JSON;
    return start.contains(SARIF) && start.contains("\"runs\":[") ? OutputKind.SARIF : null;
  }

  /** True when the digest at the end of the file is that of the rest. */
  static boolean isUntouched(Path file, OutputKind kind) throws IOException {
    String before = kind == OutputKind.SARIF ? IN_BAG : DIGEST;
    String after = kind == OutputKind.SARIF ? "\"}}" : "\"}";
    int end = before.length() + Sha256.DIGITS + after.length();
    Canonical canonical = new Canonical(kind == OutputKind.JSON, end);
    try (InputStream in = Files.newInputStream(file)) {
      byte[] part = new byte[1 << 16];
      for (int n = in.read(part); n >= 0; n = in.read(part)) {
        for (int i = 0; i < n; i++) canonical.add(part[i]);
      }
    }
    return canonical.end().equals(before + canonical.digest() + after);
  }

  /** Leaves out what does not count, and keeps the last bytes back. */
  private static final class Canonical {
    private final MessageDigest digest = Sha256.begun();
    private final byte[] kept;
    private final int back;
    private int length;
    private int depth;
    private boolean inText;
    private boolean escaped;
    private boolean inRun;

    /**
     * @param run true when the first object within, which tells of the run, does not count
     * @param back bytes at the end that are not under the digest
     */
    Canonical(boolean run, int back) {
      this.inRun = run;
      this.back = back;
      this.kept = new byte[back + (1 << 14)];
    }

    void add(byte b) {
      if (!inText && (b == ' ' || b == '\n' || b == '\r' || b == '\t')) return;
      if (escaped) escaped = false;
      else if (b == '\\') escaped = inText;
      else if (b == '"') inText = !inText;
      if (inRun) {
        passRun(b);
        return;
      }
      kept[length++] = b;
      if (length == kept.length) release();
    }

    private void passRun(byte b) {
      if (inText) return;
      if (b == '{') depth++;
      else if (b == '}' && --depth == 1) inRun = false;
    }

    private void release() {
      int free = Math.max(0, length - back);
      digest.update(kept, 0, free);
      System.arraycopy(kept, free, kept, 0, length - free);
      length -= free;
    }

    /** The bytes kept back; asked for before the digest. */
    String end() {
      release();
      return new String(kept, 0, length, StandardCharsets.US_ASCII);
    }

    String digest() {
      if (back == 0) release();
      return Sha256.hex(digest);
    }
  }
}
