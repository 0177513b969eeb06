package clearbed.base.codec;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.zip.CRC32C;

/**
 * Reads what {@link RecordOutput} wrote. The checksum finds damage; as it does not find malice,
 * every figure in the body is also held against what is there before it is used.
 */
public final class RecordInput {
  private final byte[] bytes;
  private final List<String> texts = new ArrayList<>();
  private UnaryOperator<String> interning = text -> text;
  private int at;

  private RecordInput(byte[] bytes, int at) {
    this.bytes = bytes;
    this.at = at;
  }

  /**
   * @throws DamagedRecord when the bytes are cut, changed, of another version or of something else
   */
  public static RecordInput open(byte[] bytes, int version) throws DamagedRecord {
    if (bytes.length < RecordOutput.HEAD) throw new DamagedRecord("is cut short");
    ByteBuffer head = ByteBuffer.wrap(bytes);
    if (head.getInt() != RecordOutput.MARK) throw new DamagedRecord("is something else");
    if (head.getInt() != version) throw new DamagedRecord("is of another version");
    int length = bytes.length - RecordOutput.HEAD;
    if (head.getInt() != length) throw new DamagedRecord("is cut short or too long");
    CRC32C sum = new CRC32C();
    sum.update(bytes, RecordOutput.HEAD, length);
    if (head.getInt() != (int) sum.getValue()) throw new DamagedRecord("is changed");
    return new RecordInput(bytes, RecordOutput.HEAD);
  }

  /**
   * From now on gives texts through this.
   *
   * @param interned gives a text, or the equal one that is held already
   */
  public RecordInput interning(UnaryOperator<String> interned) {
    interning = interned;
    return this;
  }

  public int remaining() {
    return bytes.length - at;
  }

  public void requireEnd() throws DamagedRecord {
    if (remaining() > 0) throw new DamagedRecord("goes on after its end");
  }

  public boolean flag() throws DamagedRecord {
    return switch (number()) {
      case 0 -> false;
      case 1 -> true;
      default -> throw new DamagedRecord("holds neither yes nor no");
    };
  }

  public int number() throws DamagedRecord {
    long packed = unsigned();
    long value = packed >>> 1 ^ -(packed & 1);
    if (value != (int) value) throw new DamagedRecord("holds too large a number");
    return (int) value;
  }

  public Integer numberOrNull() throws DamagedRecord {
    return flag() ? Integer.valueOf(number()) : null;
  }

  /** How many follow; as each takes a byte or more, never more than there are bytes. */
  public int count() throws DamagedRecord {
    int count = number();
    if (count < 0 || count > remaining()) throw new DamagedRecord("promises more than it holds");
    return count;
  }

  public <T> T oneOf(T[] values) throws DamagedRecord {
    int index = number();
    if (index < 0 || index >= values.length) throw new DamagedRecord("holds an unknown word");
    return values[index];
  }

  public String text() throws DamagedRecord {
    long reference = unsigned();
    if (reference == RecordOutput.NULL_TEXT) return null;
    if (reference == RecordOutput.NEW_TEXT) return newText();
    long index = reference - RecordOutput.FIRST_TEXT;
    if (index < 0 || index >= texts.size()) throw new DamagedRecord("refers to an unknown text");
    return texts.get((int) index);
  }

  private String newText() throws DamagedRecord {
    long packed = unsigned();
    boolean wide = (packed & 1) != 0;
    long length = (packed >>> 1) * (wide ? Character.BYTES : 1);
    if (length < 0 || length > remaining()) throw new DamagedRecord("promises a longer text");
    String text = interning.apply(wide ? wide((int) length) : latin((int) length));
    at += (int) length;
    texts.add(text);
    return text;
  }

  private String latin(int length) {
    return new String(bytes, at, length, StandardCharsets.ISO_8859_1);
  }

  private String wide(int length) {
    char[] characters = new char[length / Character.BYTES];
    ByteBuffer.wrap(bytes, at, length).asCharBuffer().get(characters);
    return new String(characters);
  }

  private long unsigned() throws DamagedRecord {
    long value = 0;
    for (int shift = 0; shift < 63; shift += 7) {
      if (at >= bytes.length) throw new DamagedRecord("ends too early");
      byte next = bytes[at++];
      value |= (long) (next & 0x7F) << shift;
      if (next >= 0) return value;
    }
    throw new DamagedRecord("holds too large a number");
  }
}
