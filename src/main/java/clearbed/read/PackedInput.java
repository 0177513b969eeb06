package clearbed.read;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.zip.CRC32C;

/** Reads what {@link PackedOutput} wrote, and believes none of it before it has looked. */
public final class PackedInput {
  private final byte[] bytes;
  private final List<String> texts = new ArrayList<>();
  private UnaryOperator<String> sharing = text -> text;
  private int at;

  private PackedInput(byte[] bytes, int at) {
    this.bytes = bytes;
    this.at = at;
  }

  public static PackedInput open(byte[] bytes, int version) throws DamagedDocument {
    if (bytes.length < PackedOutput.HEAD) throw new DamagedDocument("is cut short");
    ByteBuffer head = ByteBuffer.wrap(bytes);
    if (head.getInt() != PackedOutput.MARK) throw new DamagedDocument("is something else");
    if (head.getInt() != version) throw new DamagedDocument("is of another version");
    int length = bytes.length - PackedOutput.HEAD;
    if (head.getInt() != length) throw new DamagedDocument("is cut short or too long");
    CRC32C sum = new CRC32C();
    sum.update(bytes, PackedOutput.HEAD, length);
    if (head.getInt() != (int) sum.getValue()) throw new DamagedDocument("is changed");
    return new PackedInput(bytes, PackedOutput.HEAD);
  }

  /**
   * From now on gives texts through this.
   *
   * @param held gives a text, or the same that is held already
   */
  public PackedInput sharing(UnaryOperator<String> held) {
    sharing = held;
    return this;
  }

  public int remaining() {
    return bytes.length - at;
  }

  public void requireEnd() throws DamagedDocument {
    if (remaining() > 0) throw new DamagedDocument("goes on after its end");
  }

  public boolean flag() throws DamagedDocument {
    return switch (number()) {
      case 0 -> false;
      case 1 -> true;
      default -> throw new DamagedDocument("holds neither yes nor no");
    };
  }

  public int number() throws DamagedDocument {
    long packed = unsigned();
    long value = packed >>> 1 ^ -(packed & 1);
    if (value != (int) value) throw new DamagedDocument("holds too large a number");
    return (int) value;
  }

  public Integer numberOrNull() throws DamagedDocument {
    return flag() ? Integer.valueOf(number()) : null;
  }

  /** How many follow; as each takes a byte or more, never more than there are bytes. */
  public int count() throws DamagedDocument {
    int count = number();
    if (count < 0 || count > remaining()) throw new DamagedDocument("promises more than it holds");
    return count;
  }

  public <T> T oneOf(T[] values) throws DamagedDocument {
    int index = number();
    if (index < 0 || index >= values.length) throw new DamagedDocument("holds an unknown word");
    return values[index];
  }

  public String text() throws DamagedDocument {
    long reference = unsigned();
    if (reference == PackedOutput.NULL_TEXT) return null;
    if (reference == PackedOutput.NEW_TEXT) return newText();
    long index = reference - PackedOutput.FIRST_TEXT;
    if (index < 0 || index >= texts.size()) throw new DamagedDocument("refers to an unknown text");
    return texts.get((int) index);
  }

  public byte[] bytes() throws DamagedDocument {
    int length = count();
    at += length;
    return Arrays.copyOfRange(bytes, at - length, at);
  }

  private String newText() throws DamagedDocument {
    long packed = unsigned();
    boolean wide = (packed & 1) != 0;
    long length = (packed >>> 1) * (wide ? Character.BYTES : 1);
    if (length < 0 || length > remaining()) throw new DamagedDocument("promises a longer text");
    String text = sharing.apply(wide ? wide((int) length) : latin((int) length));
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

  private long unsigned() throws DamagedDocument {
    long value = 0;
    for (int shift = 0; shift < 63; shift += 7) {
      if (at >= bytes.length) throw new DamagedDocument("ends too early");
      byte next = bytes[at++];
      value |= (long) (next & 0x7F) << shift;
      if (next >= 0) return value;
    }
    throw new DamagedDocument("holds too large a number");
  }
}
