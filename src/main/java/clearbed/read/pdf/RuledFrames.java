package clearbed.read.pdf;

import clearbed.read.layout.Ruling;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Groups drawn lines that touch, so that each group may be the frame of one table. */
final class RuledFrames {
  private static final double NEAR = 3;

  /**
   * A drawing with more lines than this is no page of tables; comparing them all takes too long.
   */
  private static final int MOST = 3_000;

  private RuledFrames() {}

  static List<List<Ruling>> of(List<Ruling> rulings) {
    List<Ruling> levels = joined(rulings.stream().filter(Ruling::isLevel).toList(), true);
    List<Ruling> uprights = joined(rulings.stream().filter(Ruling::isUpright).toList(), false);
    if (levels.size() > MOST || uprights.size() > MOST) return List.of();
    int[] group = new int[levels.size() + uprights.size()];
    for (int i = 0; i < group.length; i++) group[i] = i;
    for (int i = 0; i < levels.size(); i++) {
      for (int k = 0; k < uprights.size(); k++) {
        if (touch(levels.get(i), uprights.get(k))) unite(group, i, levels.size() + k);
      }
    }
    Map<Integer, List<Ruling>> frames = new HashMap<>();
    for (int i = 0; i < group.length; i++) {
      Ruling r = i < levels.size() ? levels.get(i) : uprights.get(i - levels.size());
      frames.computeIfAbsent(root(group, i), k -> new ArrayList<>()).add(r);
    }
    List<List<Ruling>> found = new ArrayList<>(frames.values());
    found.removeIf(f -> f.size() < 4);
    // The smallest first: a border around the page must not take what stands in a table.
    found.sort(Comparator.comparingDouble(RuledFrames::area));
    return found;
  }

  private static double area(List<Ruling> frame) {
    double x0 = frame.stream().mapToDouble(Ruling::x0).min().orElse(0);
    double x1 = frame.stream().mapToDouble(Ruling::x1).max().orElse(0);
    double y0 = frame.stream().mapToDouble(Ruling::y0).min().orElse(0);
    double y1 = frame.stream().mapToDouble(Ruling::y1).max().orElse(0);
    return (x1 - x0) * (y1 - y0);
  }

  private static boolean touch(Ruling level, Ruling upright) {
    return upright.x() >= level.x0() - NEAR
        && upright.x() <= level.x1() + NEAR
        && level.y() >= upright.y0() - NEAR
        && level.y() <= upright.y1() + NEAR;
  }

  private static int root(int[] group, int i) {
    int at = i;
    while (group[at] != at) at = group[at] = group[group[at]];
    return at;
  }

  private static void unite(int[] group, int a, int b) {
    group[root(group, a)] = root(group, b);
  }

  /** Lines in pieces (each cell draws its own edge) are made whole, doubles are dropped. */
  private static List<Ruling> joined(List<Ruling> rulings, boolean level) {
    List<Ruling> sorted = new ArrayList<>(rulings);
    sorted.sort(
        level
            ? Comparator.comparingDouble((Ruling r) -> Math.round(r.y() / 2))
                .thenComparing(Ruling::x0)
            : Comparator.comparingDouble((Ruling r) -> Math.round(r.x() / 2))
                .thenComparing(Ruling::y0));
    List<Ruling> joined = new ArrayList<>();
    for (Ruling r : sorted) {
      Ruling last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
      if (last != null && continues(last, r, level)) {
        joined.set(joined.size() - 1, union(last, r));
      } else {
        joined.add(r);
      }
    }
    return joined;
  }

  private static boolean continues(Ruling a, Ruling b, boolean level) {
    return level
        ? Math.abs(a.y() - b.y()) <= 2 && b.x0() <= a.x1() + NEAR
        : Math.abs(a.x() - b.x()) <= 2 && b.y0() <= a.y1() + NEAR;
  }

  private static Ruling union(Ruling a, Ruling b) {
    return new Ruling(
        Math.min(a.x0(), b.x0()),
        Math.min(a.y0(), b.y0()),
        Math.max(a.x1(), b.x1()),
        Math.max(a.y1(), b.y1()));
  }
}
