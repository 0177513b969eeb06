package clearbed.report.workbook.typed;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;

/** What people typed on one sheet that each issue writes anew, until it has its place again. */
public final class TypedSheet {
  private final int count;
  private final int width;
  private final Map<String, List<TypedCell>> byKey = new HashMap<>();
  private final List<TypedCell> rest = new ArrayList<>();
  private final List<AsideCell> aside = new ArrayList<>();

  /** What goes to the sheet of things set aside, and why. */
  public record AsideCell(TypedCell cell, String reason) {}

  /**
   * @param width columns that the earlier issue wrote in
   */
  TypedSheet(List<TypedCell> cells, int width) {
    this.count = cells.size();
    this.width = width;
    for (TypedCell cell : cells) {
      if (cell.key() == null) rest.add(cell);
      else byKey.computeIfAbsent(cell.key(), key -> new ArrayList<>()).add(cell);
    }
  }

  public static TypedSheet none() {
    return new TypedSheet(List.of(), 0);
  }

  int count() {
    return count;
  }

  int width() {
    return width;
  }

  /** Takes what was typed in the row of that key. */
  List<TypedCell> take(String key) {
    List<TypedCell> cells = byKey.remove(key);
    return cells == null ? List.of() : cells;
  }

  /** Takes what was typed over the number in that column of the row, or gives null. */
  TypedCell takeOver(String key, int column) {
    for (Iterator<TypedCell> cells = byKey.getOrDefault(key, List.of()).iterator();
        cells.hasNext(); ) {
      TypedCell cell = cells.next();
      if (cell.content().column() != column || cell.before().isEmpty()) continue;
      cells.remove();
      return cell;
    }
    return null;
  }

  void setAside(TypedCell cell, String reason) {
    aside.add(new AsideCell(cell, reason));
  }

  /** All that found no place, in the order of the sheet. */
  List<AsideCell> asides() {
    for (TypedCell cell : rest) setAside(cell, cell.reason());
    rest.clear();
    for (List<TypedCell> cells : byKey.values()) {
      for (TypedCell cell : cells) setAside(cell, "its row is no longer there");
    }
    byKey.clear();
    aside.sort(
        java.util.Comparator.comparingInt((AsideCell one) -> one.cell().row())
            .thenComparingInt(one -> one.cell().content().column()));
    return aside;
  }
}
