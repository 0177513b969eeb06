package clearbed.read.markup;

import java.nio.charset.StandardCharsets;

/** Whether an RTF file closes what it opens (RTF 1.9.1: a file is one group). */
final class RtfEnd {
  private static final byte[] BINARY = "bin".getBytes(StandardCharsets.US_ASCII);

  private RtfEnd() {}

  /** True when groups are still open at the end: what would follow is missing. */
  static boolean isMissing(byte[] rtf) {
    int open = 0;
    for (int i = 0; i < rtf.length; i++) {
      if (rtf[i] == '{') open++;
      else if (rtf[i] == '}') open--;
      else if (rtf[i] == '\\') i = afterWord(rtf, i + 1);
      if (open == 0 && i < rtf.length && rtf[i] == '}') return false;
    }
    return true;
  }

  /** The last byte of a control word or symbol, with the bytes that {@code \binN} announces. */
  private static int afterWord(byte[] rtf, int start) {
    for (int i = 0; i < BINARY.length; i++)
      if (start + i >= rtf.length || rtf[start + i] != BINARY[i]) return start;
    int at = start + BINARY.length;
    long bytes = 0;
    int digits = at;
    while (at < rtf.length && rtf[at] >= '0' && rtf[at] <= '9' && at - digits < 9)
      bytes = bytes * 10 + rtf[at++] - '0';
    if (at == digits) return start;
    return (int) Math.min(rtf.length, at + bytes);
  }
}
