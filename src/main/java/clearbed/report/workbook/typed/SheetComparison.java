package clearbed.report.workbook.typed;

import clearbed.report.workbook.layout.CellContent;
import clearbed.report.workbook.layout.SheetRow;
import clearbed.report.workbook.layout.SheetRowSource;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * Finds what people typed on a sheet, by what an issue noted that it wrote there. Rows may have
 * been sorted, moved, put in or taken out since.
 */
final class SheetComparison {
  /** Cells; each is looked for among those of ours and kept by itself. */
  private static final int MOST_TYPED = 20_000;

  private final String sheet;
  private final Set<String> headings = new HashSet<>();
  private final Set<String> keys = new HashSet<>();
  private final Set<String> twice = new HashSet<>();
  private final Map<CellContent, CellContent> once = new HashMap<>();

  /** Rows that are not as they were, and those of ours that stood there. */
  private List<Keyed> changed = new ArrayList<>();

  private final List<Keyed> unmet = new ArrayList<>();
  private final List<RowPair> pairs = new ArrayList<>();
  private final List<TypedCell> typed = new ArrayList<>();
  private int width;

  private record Keyed(String key, SheetRow row) {}

  /**
   * @param ours null for a row that people added
   * @param key null when other rows have it, too
   */
  private record RowPair(SheetRow now, SheetRow ours, String key) {}

  /** More was typed than is carried on; the message says where. */
  static final class TooMuchTyped extends IOException {
    private static final long serialVersionUID = 1L;

    TooMuchTyped(String message) {
      super(message);
    }
  }

  /** Opens the rows that were noted; they are read twice. */
  interface Snapshot {
    SheetRowSource open() throws IOException;
  }

  SheetComparison(String sheet) {
    this.sheet = sheet;
  }

  /**
   * What was typed, row by row.
   *
   * @throws IOException when one of the two cannot be read
   */
  List<TypedCell> find(Snapshot snapshot, SheetRowSource now) throws IOException {
    try (SheetRowSource before = snapshot.open()) {
      learn(before);
    }
    try (SheetRowSource before = snapshot.open()) {
      together(before, now);
    }
    pair();
    boolean moved = pairs.stream().anyMatch(pair -> pair.ours().at() != pair.now().at());
    for (RowPair pair : pairs) compare(pair, moved);
    for (Keyed added : changed) compare(new RowPair(added.row(), null, null), moved);
    if (typed.size() > MOST_TYPED)
      throw new TooMuchTyped(
          "more than %,d cells were typed on its sheet %s; take out what is not of the log"
              .formatted(MOST_TYPED, sheet));
    return typed;
  }

  /** Columns that the issue wrote in. */
  int width() {
    return width;
  }

  private void learn(SheetRowSource before) throws IOException {
    RowKeys names = new RowKeys(sheet);
    for (SheetRow row = before.next(); row != null; row = before.next()) {
      if (row.isHeading()) headings.add(row.label(0));
      String key = names.of(row);
      if (!keys.add(key)) twice.add(key);
      for (CellContent cell : row.cells()) width = Math.max(width, cell.column() + 1);
    }
  }

  /** Most rows stand where they stood and hold what they held; they need no memory. */
  private void together(SheetRowSource before, SheetRowSource now) throws IOException {
    RowKeys ourNames = new RowKeys(sheet);
    RowKeys theirNames = new RowKeys(sheet).afterHeadings(headings);
    SheetRow ours = before.next();
    SheetRow theirs = now.next();
    while (ours != null || theirs != null) {
      boolean oursIsNext = theirs == null || ours != null && ours.at() <= theirs.at();
      boolean theirsIsNext = ours == null || theirs != null && theirs.at() <= ours.at();
      Keyed own = oursIsNext ? new Keyed(ourNames.of(ours), ours) : null;
      Keyed other = theirsIsNext ? new Keyed(theirNames.of(theirs), theirs) : null;
      boolean same = own != null && other != null && own.row().isSame(other.row());
      if (own != null && !same) unmet.add(shared(own));
      if (other != null && !same) changed.add(shared(other));
      if (oursIsNext) ours = before.next();
      if (theirsIsNext) theirs = now.next();
    }
  }

  /** The same words in the same column come thousands of times. */
  private Keyed shared(Keyed row) {
    List<CellContent> cells = new ArrayList<>(row.row().cells().size());
    for (CellContent cell : row.row().cells()) {
      CellContent first = once.putIfAbsent(cell, cell);
      cells.add(first == null ? cell : first);
    }
    return new Keyed(row.key(), new SheetRow(row.row().at(), row.row().isHeading(), cells));
  }

  /** By key, in order where several have one; then by place, for a key may be typed over. */
  private void pair() {
    Map<String, Deque<Keyed>> byKey = new HashMap<>();
    for (Keyed own : unmet) byKey.computeIfAbsent(own.key(), k -> new ArrayDeque<>()).add(own);
    take(other -> byKey.getOrDefault(other.key(), new ArrayDeque<>()).poll());
    Map<Integer, Keyed> byPlace = new HashMap<>();
    byKey.values().forEach(left -> left.forEach(own -> byPlace.put(own.row().at(), own)));
    take(other -> byPlace.remove(other.row().at()));
  }

  private void take(Function<Keyed, Keyed> search) {
    List<Keyed> left = new ArrayList<>();
    for (Keyed other : changed) {
      Keyed own = search.apply(other);
      if (own == null) left.add(other);
      else
        pairs.add(
            new RowPair(other.row(), own.row(), twice.contains(own.key()) ? null : own.key()));
    }
    changed = left;
  }

  /**
   * @param moved true when rows stand elsewhere than they did, and formulas name other cells
   */
  private void compare(RowPair pair, boolean moved) {
    List<CellContent> left = new ArrayList<>(pair.now().cells());
    List<CellContent> gone = pair.ours() == null ? List.of() : gone(pair.ours(), left, moved);
    for (CellContent cell : left) {
      String before = "";
      for (CellContent old : gone) if (old.column() == cell.column()) before = old.shown();
      typed.add(new TypedCell(sheet, pair.now().at(), pair.key(), cell, before, pair.ours()));
    }
  }

  /**
   * Takes away what is ours, where it stood or, when a column was put in or taken out, beside it.
   *
   * @return what of ours is gone or typed over
   */
  private static List<CellContent> gone(SheetRow ours, List<CellContent> cells, boolean moved) {
    List<CellContent> old = new ArrayList<>(ours.cells());
    old.removeIf(one -> cells.removeIf(c -> c.column() == one.column() && c.isSame(one, moved)));
    List<CellContent> shifted = new ArrayList<>();
    int next = 0;
    for (CellContent one : old) {
      for (int i = next; i < cells.size(); i++) {
        if (!cells.get(i).isSame(one, true)) continue;
        shifted.add(one);
        next = i + 1;
        break;
      }
    }
    // One or two can be alike by chance.
    if (shifted.size() < 3 || shifted.size() * 2 < old.size()) return old;
    old.removeAll(shifted);
    for (CellContent one : shifted) remove(cells, one);
    return old;
  }

  private static void remove(List<CellContent> cells, CellContent one) {
    for (int i = 0; i < cells.size(); i++) {
      if (!cells.get(i).isSame(one, true)) continue;
      cells.remove(i);
      return;
    }
  }
}
