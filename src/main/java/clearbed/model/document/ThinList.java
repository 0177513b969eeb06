package clearbed.model.document;

import java.util.AbstractList;
import java.util.Collection;
import java.util.List;
import java.util.RandomAccess;
import java.util.function.Supplier;

/**
 * A list that never changes and makes its items as they are asked for, to take little memory.
 * Compare items by {@code equals}, never by identity, and hold few of them.
 */
public abstract class ThinList<T> extends AbstractList<T> implements RandomAccess {
  protected ThinList() {}

  /** A list that is made when it is first asked for anything. */
  public static <T> List<T> late(Supplier<List<T>> making) {
    return new Late<>(making);
  }

  /** What will make a late list, or null when it has been made or is of another kind. */
  public static <T> Supplier<List<T>> making(List<T> list) {
    return list instanceof Late<T> late ? late.making() : null;
  }

  private static final class Late<T> extends ThinList<T> {
    private Supplier<List<T>> making;
    private List<T> made;

    Late(Supplier<List<T>> making) {
      this.making = making;
    }

    private synchronized Supplier<List<T>> making() {
      return making;
    }

    private synchronized List<T> made() {
      if (making != null) {
        made = making.get();
        making = null;
      }
      return made;
    }

    @Override
    public T get(int index) {
      return made().get(index);
    }

    @Override
    public int size() {
      return made().size();
    }
  }

  /** The items as a list that never changes; a thin list stays thin. */
  public static <T> List<T> copyOf(Collection<? extends T> items) {
    if (items instanceof ThinList<?>) {
      @SuppressWarnings("unchecked") // It never changes, so what it holds may be taken for T.
      List<T> thin = (List<T>) items;
      return thin;
    }
    return List.copyOf(items);
  }
}
