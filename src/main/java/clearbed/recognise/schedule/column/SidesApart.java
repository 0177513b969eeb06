package clearbed.recognise.schedule.column;

import clearbed.model.document.Table;
import clearbed.model.value.Unit;
import clearbed.recognise.text.Numbers;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Sizes whose sides stand in columns of their own, "Size, mm" over "L | W", "Length (mm) | Width
 * (mm)": the two become one column of sizes, "25 x 50". A thickness beside them stays where it is.
 */
public final class SidesApart {
  private static final String SIZE = "tile.size";

  private static final Pattern FIGURE =
      Pattern.compile(Numbers.PATTERN + "(?: ?(?:mm|cm|in\\.?|\"))?");

  /** Rows among which headings stand. */
  private static final int SEARCHED = 60;

  /**
   * A table read so.
   *
   * @param heads the headings of the sides, which stand below that of the size
   * @param sides the further sides of each row
   */
  public record SizedTable(Table table, List<Table.Row> heads, List<Table.Row> sides) {}

  /**
   * Two sides beside one another.
   *
   * @param head index of the row of their headings
   * @param heading of the size in one column
   */
  private record SidePair(int head, int first, String heading) {}

  private final Vocabulary vocabulary;
  private final Phrases sides;

  public SidesApart(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.sides = vocabulary.list("schedule.sides");
  }

  public SizedTable of(Table table) {
    SizedTable read = new SizedTable(table, new ArrayList<>(), new ArrayList<>());
    List<Table.Row> out = new ArrayList<>(table.rows());
    for (int head = 0; head < Math.min(out.size(), SEARCHED); head++) {
      SidePair pair = pair(table.rows(), head);
      if (pair != null) fold(out, pair, read);
    }
    if (read.sides().isEmpty()) return new SizedTable(table, List.of(), List.of());
    return new SizedTable(table.withRows(out), read.heads(), read.sides());
  }

  /** The sides that a row heads, with figures below both; or null. */
  private SidePair pair(List<Table.Row> rows, int head) {
    for (Table.Cell one : rows.get(head).cells()) {
      String side = side(one);
      if (side == null) continue;
      Table.Cell other = rows.get(head).at(one.column() + 1);
      String across = other == null ? null : side(other);
      if (across == null || across.equals(side) || !hasFigures(rows, head, one.column())) continue;
      String over = sizeOver(rows, head, one.column());
      if (over != null) return new SidePair(head, one.column(), over);
      if (isShort(unit(one)) && unit(one) == unit(other))
        return new SidePair(head, one.column(), label() + " (" + unit(one).symbol() + ")");
    }
    return null;
  }

  /** The word for a side that heads one column, or null. */
  private String side(Table.Cell cell) {
    if (!cell.hasOwnWords() || cell.columnSpan() > 1) return null;
    String words = HeadingWords.clean(vocabulary, PlainText.line(cell.text()));
    return sides.matches(words) ? words : null;
  }

  private static Unit unit(Table.Cell heading) {
    return HeadingTexts.unitOf(PlainText.line(heading.text()).strip());
  }

  /** Rooms are measured in metres. */
  private static boolean isShort(Unit unit) {
    return unit == Unit.MILLIMETRE || unit == Unit.CENTIMETRE || unit == Unit.INCH;
  }

  private String label() {
    return vocabulary.attribute(SIZE).orElseThrow().label();
  }

  /** The heading of a size right above, over both; or null. */
  private String sizeOver(List<Table.Row> rows, int head, int first) {
    if (head == 0 || rows.get(head).number() != rows.get(head - 1).number() + 1) return null;
    Table.Cell over = rows.get(head - 1).at(first);
    if (over == null || over.text().isBlank()) return null;
    // Saved as text, a heading over several columns stands over the first of them alone.
    Table.Cell beside = rows.get(head - 1).at(first + 1);
    boolean both = over.covers(first + 1) || beside == null || beside.text().isBlank();
    Header.Column named = HeadingWords.named(vocabulary, PlainText.line(over.text()));
    boolean size = named != null && named.attribute().id().equals(SIZE);
    return both && size ? over.text() : null;
  }

  private static boolean hasFigures(List<Table.Row> rows, int head, int first) {
    return rows.stream().skip(head + 1).anyMatch(row -> figures(row, first) != null);
  }

  /** "25 x 50" of a row; null where it has not both. */
  private static String figures(Table.Row row, int first) {
    Table.Cell one = row.at(first);
    Table.Cell other = row.at(first + 1);
    return isFigure(one) && isFigure(other)
        ? one.text().strip() + " x " + other.text().strip()
        : null;
  }

  private static boolean isFigure(Table.Cell cell) {
    return cell != null
        && cell.hasOwnWords()
        && cell.columnSpan() == 1
        && FIGURE.matcher(cell.text().strip()).matches();
  }

  private void fold(List<Table.Row> rows, SidePair pair, SizedTable read) {
    for (int i = pair.head(); i < rows.size(); i++) {
      Table.Row row = rows.get(i);
      boolean head = i == pair.head();
      String size = head ? "" : figures(row, pair.first());
      // Repeated, as on each page.
      if (!head && pair(rows, i) != null) return;
      if (size == null) continue;
      List<Table.Cell> cells = new ArrayList<>();
      List<Table.Cell> gone = new ArrayList<>();
      for (Table.Cell cell : row.cells()) {
        boolean first = cell.column() == pair.first();
        if (!first && cell.column() != pair.first() + 1) cells.add(cell);
        else if (!first) gone.add(cell);
        else cells.add(cell.withText(head ? pair.heading() : size));
      }
      (head ? read.heads() : read.sides()).add(row.withCells(gone));
      rows.set(i, row.withCells(cells));
    }
  }
}
