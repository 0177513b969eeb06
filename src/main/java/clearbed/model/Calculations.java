package clearbed.model;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;

/** Calculations that are made when they are asked for: of a long schedule few are ever shown. */
public final class Calculations extends ThinList<Calculation> {

  /** Those that one check makes of one entry. */
  private record Source(String tag, int first, Supplier<List<Calculation>> making) {}

  private final List<Source> sources = new ArrayList<>();
  private int size;

  /**
   * Notes that there are some.
   *
   * @param tag of the entry they are made for
   * @param count how many are made
   * @param making makes the same ones at any time
   */
  public void add(String tag, int count, Supplier<List<Calculation>> making) {
    if (count == 0) return;
    sources.add(new Source(tag, size, making));
    size += count;
  }

  /** Notes all that another list has, behind its own. */
  public void addAll(Calculations others) {
    for (Source source : others.sources) {
      sources.add(new Source(source.tag, size + source.first, source.making));
    }
    size += others.size;
  }

  /** Those of some entries, in order. */
  public static List<Calculation> of(Set<String> tags, List<Calculation> calculations) {
    List<Calculation> found = new ArrayList<>();
    if (calculations instanceof Calculations thin) {
      for (Source source : thin.sources) {
        if (tags.contains(source.tag)) found.addAll(source.making.get());
      }
      return found;
    }
    for (Calculation one : calculations) if (tags.contains(one.tag())) found.add(one);
    return found;
  }

  @Override
  public Calculation get(int index) {
    int low = 0;
    int high = sources.size() - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (sources.get(middle).first <= index) low = middle;
      else high = middle - 1;
    }
    Source source = sources.get(low);
    return source.making.get().get(index - source.first);
  }

  /** All in order, those that one check makes of one entry at a time. */
  @Override
  public Iterator<Calculation> iterator() {
    return sources.stream().flatMap(source -> source.making.get().stream()).iterator();
  }

  @Override
  public int size() {
    return size;
  }
}
