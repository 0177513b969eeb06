package clearbed.base.codec;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.zip.CRC32C;

/**
 * Numbers and texts one after the other, small numbers in one byte and every text once; before them
 * a mark, the version of the layout, the length and the checksum of the body.
 */
public final class RecordOutput {
  /** {@code CBED}, the mark of records in bytes. */
  static final int MARK = 0x43424544;

  /** Mark, version, length of the body, checksum of the body. */
  static final int HEAD = 4 * Integer.BYTES;

  static final int NULL_TEXT = 0;
  static final int NEW_TEXT = 1;
  static final int FIRST_TEXT = 2;

  private final Map<String, Integer> texts = new HashMap<>();
  private byte[] bytes = new byte[1 << 12];
  private int size = HEAD;

  public void flag(boolean value) {
    number(value ? 1 : 0);
  }

  public void number(int value) {
    // The sign goes into the lowest bit, so that small negative numbers stay short too.
    unsigned((long) value << 1 ^ (long) value >> 63);
  }

  public void numberOrNull(Integer value) {
    flag(value != null);
    if (value != null) number(value);
  }

  public void text(String value) {
    if (value == null) {
      unsigned(NULL_TEXT);
      return;
    }
    Integer known = texts.putIfAbsent(value, texts.size());
    if (known != null) {
      unsigned(FIRST_TEXT + (long) known);
      return;
    }
    unsigned(NEW_TEXT);
    characters(value);
  }

  /** As Latin-1 where that is enough, else as UTF-16, which keeps lone surrogates as they are. */
  private void characters(String value) {
    int length = value.length();
    boolean wide = value.chars().anyMatch(c -> c > 0xFF);
    unsigned((long) length << 1 | (wide ? 1 : 0));
    if (!wide) {
      byte[] latin = value.getBytes(StandardCharsets.ISO_8859_1);
      reserve(length);
      System.arraycopy(latin, 0, bytes, size, length);
      size += length;
      return;
    }
    reserve(Math.multiplyExact(length, Character.BYTES));
    for (int i = 0; i < length; i++) {
      bytes[size++] = (byte) (value.charAt(i) >> 8);
      bytes[size++] = (byte) value.charAt(i);
    }
  }

  private void unsigned(long value) {
    reserve(Long.BYTES);
    long left = value;
    while (left > 0x7F) {
      bytes[size++] = (byte) (left | 0x80);
      left >>>= 7;
    }
    bytes[size++] = (byte) left;
  }

  private void reserve(int more) {
    if (bytes.length - size >= more) return;
    long wanted = Math.max((long) bytes.length * 2, (long) size + more);
    bytes = Arrays.copyOf(bytes, (int) Math.min(Integer.MAX_VALUE - 8, wanted));
  }

  /**
   * All that was written, with its head.
   *
   * @param version of the layout; the reader refuses any other
   */
  public byte[] toBytes(int version) {
    CRC32C sum = new CRC32C();
    sum.update(bytes, HEAD, size - HEAD);
    ByteBuffer.wrap(bytes)
        .putInt(MARK)
        .putInt(version)
        .putInt(size - HEAD)
        .putInt((int) sum.getValue());
    return Arrays.copyOf(bytes, size);
  }
}
