package clearbed.model;

import java.util.AbstractList;
import java.util.Collection;
import java.util.List;
import java.util.RandomAccess;

/** A list that never changes and makes its items as they are asked for, to take little memory. */
public abstract class ThinList<T> extends AbstractList<T> implements RandomAccess {
  protected ThinList() {}

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
