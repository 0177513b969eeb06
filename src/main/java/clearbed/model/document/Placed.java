package clearbed.model.document;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * A list of things said in cells: what is said is held once, however many cells say it, and the
 * place of each is put to it when it is asked for.
 */
public final class Placed<T> extends ThinList<T> {
  private static final int NO_CELL = -1;
  private static final int FEW = 30;

  /** Rows and columns of an address have so many bits of a number. */
  private static final int COLUMN_BITS = 11;

  private static final int MOST_ROWS = 1 << 20;

  private final Placing<T> place;
  private final Object[] said;

  /** Null where nothing stands in a cell. */
  private final int[] cells;

  private Placed(Placing<T> place, Object[] said, int[] cells) {
    this.place = place;
    this.said = said;
    this.cells = cells;
  }

  /**
   * How a thing tells its place and is said in another.
   *
   * @param of may give null
   */
  public record Placing<T>(Function<T, Origin> of, BiFunction<T, Origin, T> at) {}

  /** Packs lists that may share what they say; may be asked by several threads. */
  public static final class Packer<T> {
    private final Placing<T> place;
    private final Map<T, T> known = new ConcurrentHashMap<>();

    /** What is given again as itself need not be looked for by what it says. */
    private final Set<T> held = Collections.newSetFromMap(new IdentityHashMap<>());

    private final boolean sharing;

    /**
     * @param many how many rows or entries there are; to share takes time, and is worth it for many
     */
    public Packer(Placing<T> place, int many) {
      this.place = place;
      this.sharing = many > FEW;
    }

    /** Makes ready for things that many lists will hold; to be done before any list is packed. */
    public void hold(T item) {
      if (sharing && known.putIfAbsent(item, item) == null) held.add(item);
    }

    public List<T> pack(List<T> items) {
      if (items.isEmpty()) return List.of();
      if (!sharing) return new Placed<>(place, items.toArray(), null);
      Object[] said = new Object[items.size()];
      int[] cells = new int[said.length];
      boolean any = false;
      for (int i = 0; i < said.length; i++) {
        T item = items.get(i);
        Origin origin = place.of.apply(item);
        cells[i] = origin == null || origin.cell() == null ? NO_CELL : cell(origin.cell());
        boolean placed = cells[i] != NO_CELL;
        T bare = placed ? place.at.apply(item, origin.withCell(null)) : item;
        said[i] = !placed && held.contains(item) ? item : shared(bare);
        any |= placed;
      }
      return new Placed<>(place, said, any ? cells : null);
    }

    private T shared(T bare) {
      T before = known.putIfAbsent(bare, bare);
      return before == null ? bare : before;
    }
  }

  /** A number for an address such as {@code AB12}, or {@link #NO_CELL}. */
  private static int cell(String address) {
    int column = 0;
    int row = 0;
    int at = 0;
    for (; at < address.length() && address.charAt(at) >= 'A' && address.charAt(at) <= 'Z'; at++) {
      if (at > 2) return NO_CELL;
      column = column * 26 + address.charAt(at) - 'A' + 1;
    }
    int digits = address.length() - at;
    if (at == 0 || digits == 0 || digits > 7 || address.charAt(at) == '0') return NO_CELL;
    for (; at < address.length(); at++) {
      int digit = address.charAt(at) - '0';
      if (digit < 0 || digit > 9) return NO_CELL;
      row = row * 10 + digit;
    }
    boolean fits = row < MOST_ROWS && column < 1 << COLUMN_BITS;
    return fits ? row << COLUMN_BITS | column : NO_CELL;
  }

  @Override
  @SuppressWarnings("unchecked") // Only things of T are put in.
  public T get(int index) {
    T item = (T) said[index];
    return cells == null || cells[index] == NO_CELL ? item : placed(item, cells[index]);
  }

  private T placed(T item, int cell) {
    int column = (cell & (1 << COLUMN_BITS) - 1) - 1;
    String address = Table.address(cell >>> COLUMN_BITS, column);
    return place.at.apply(item, place.of.apply(item).withCell(address));
  }

  @Override
  public int size() {
    return said.length;
  }

  /**
   * Those of one name that pass a test, in order. The list must be in the order of the names.
   *
   * @param name of a thing
   * @param test is given things without their cell
   */
  @SuppressWarnings("unchecked") // Only things of T are put in.
  public List<T> named(String wanted, Function<T, String> name, Predicate<T> test) {
    int low = 0;
    int high = said.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (name.apply((T) said[middle]).compareTo(wanted) < 0) low = middle + 1;
      else high = middle;
    }
    List<T> found = new ArrayList<>();
    for (; low < said.length && name.apply((T) said[low]).equals(wanted); low++) {
      if (test.test((T) said[low])) found.add(get(low));
    }
    return found;
  }

  /**
   * Those in cells that pass a test, in order.
   *
   * @param test is given things that may be without their cell
   */
  @SuppressWarnings("unchecked") // Only things of T are put in.
  public List<T> inCells(Predicate<T> test) {
    List<T> found = new ArrayList<>();
    for (int i = 0; i < said.length; i++) {
      if (isInCell(i) && test.test((T) said[i])) found.add(get(i));
    }
    return found;
  }

  @SuppressWarnings("unchecked") // Only things of T are put in.
  private boolean isInCell(int index) {
    if (cells != null && cells[index] != NO_CELL) return true;
    Origin origin = place.of.apply((T) said[index]);
    return origin != null && origin.cell() != null;
  }
}
