package clearbed.model.report;

import clearbed.model.document.ThinList;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;

/** Calculations that are made when they are asked for: of a long schedule few are ever shown. */
public final class Calculations extends ThinList<Calculation> {

  /** Those that one check makes of one entry. */
  private record CalculationSource(String tag, int first, Supplier<List<Calculation>> making) {}

  private final List<CalculationSource> sources = new ArrayList<>();
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
    sources.add(new CalculationSource(tag, size, making));
    size += count;
  }

  /** Notes all that another list has, behind its own. */
  public void addAll(Calculations others) {
    for (CalculationSource source : others.sources) {
      sources.add(new CalculationSource(source.tag, size + source.first, source.making));
    }
    size += others.size;
  }

  /**
   * All that have steps, or lack a figure for them, of so many entries, in order.
   *
   * @param entries the first that have such
   */
  public static List<Calculation> ofTheFirst(int entries, List<Calculation> calculations) {
    Set<String> tags = new HashSet<>();
    List<Calculation> found = new ArrayList<>();
    if (calculations instanceof Calculations thin) {
      for (CalculationSource source : thin.sources) {
        boolean asked = tags.size() < entries || tags.contains(source.tag);
        if (asked) take(source.making.get(), tags, entries, found);
      }
    } else {
      take(calculations, tags, entries, found);
    }
    return found;
  }

  private static void take(
      List<Calculation> some, Set<String> tags, int entries, List<Calculation> found) {
    for (Calculation one : some) {
      boolean counts =
          !(one.steps().isEmpty() && one.lacks().isEmpty())
              && (tags.size() < entries || tags.contains(one.tag()));
      if (!counts) continue;
      tags.add(one.tag());
      found.add(one);
    }
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
    CalculationSource source = sources.get(low);
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
