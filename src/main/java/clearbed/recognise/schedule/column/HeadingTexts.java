package clearbed.recognise.schedule.column;

import clearbed.model.document.Table;
import clearbed.model.value.Unit;
import clearbed.recognise.schedule.cell.TwoUnits;
import clearbed.recognise.schedule.cell.UnitCells;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The words over each column of a table, from one heading row or several. */
final class HeadingTexts {
  /** Units that stand for nothing else, wherever they are. */
  private static final Pattern WITHIN =
      Pattern.compile("\\b(?:psi|mpa|kpa|n/mm2|hrs?|days)\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern FIGURES = Pattern.compile("[\\d\\s./,x×-]*\\d[\\d\\s./,x×-]*");

  private HeadingTexts() {}

  /**
   * @param heads rows of headings; the last may be one of units
   * @param data rows below
   */
  static List<ColumnWords> of(List<Table.Row> heads, List<Table.Row> data) {
    boolean units =
        !heads.isEmpty() && UnitCells.isUnits(heads.get(heads.size() - 1)) && heads.size() > 1;
    List<Table.Row> words = units ? heads.subList(0, heads.size() - 1) : heads;
    TreeSet<Integer> indexes = new TreeSet<>();
    for (Table.Row row : heads)
      for (Table.Cell c : row.cells()) if (!c.text().isBlank()) indexes.add(c.column());
    for (Table.Row row : data)
      for (Table.Cell c : row.cells()) if (!c.text().isBlank()) indexes.add(c.column());
    List<ColumnWords> out = new ArrayList<>();
    List<NavigableSet<Integer>> filled = words.stream().map(HeadingTexts::filled).toList();
    int run = -1;
    for (int index : indexes) {
      Table.Row last = units ? heads.get(heads.size() - 1) : null;
      if (!units || !goesOn(words.get(words.size() - 1), last, index)) run = index;
      // Without a heading at its left end the units head themselves.
      boolean headed = units && !isBlank(words.get(words.size() - 1), run);
      int under = headed ? run : index;
      ColumnWords column =
          column(words, filled, data, index, under, units ? unit(last, index) : "");
      if (column != null) out.add(column);
    }
    return out;
  }

  /** The columns in which cells with words begin. */
  private static NavigableSet<Integer> filled(Table.Row row) {
    NavigableSet<Integer> out = new TreeSet<>();
    for (Table.Cell c : row.cells()) if (!c.text().isBlank()) out.add(c.column());
    return out;
  }

  static Unit unitOf(String heading) {
    if (heading.endsWith("%")) return Unit.PERCENT;
    Unit unit = Quantities.unitOfHeader(heading);
    if (unit == null) unit = UnitCells.unit(heading);
    Matcher within = WITHIN.matcher(heading);
    return unit == null && within.find() ? UnitCells.unit(within.group()) : unit;
  }

  /** "Thk inch", "Wdth in", where the cells are figures: "Used in" is a place. */
  private static Unit unitBehind(String heading, List<String> cells) {
    // "max_spacing_ft", as programs name their columns.
    int before = Math.max(heading.lastIndexOf(' '), heading.lastIndexOf('_'));
    String last = heading.substring(before + 1);
    if (last.equals(heading) || cells.isEmpty()) return null;
    long figures = cells.stream().filter(c -> FIGURES.matcher(c.trim()).matches()).count();
    return figures * 2 >= cells.size() ? UnitCells.unit(last.replaceFirst("\\.$", "")) : null;
  }

  /** Under the heading of the column before as well: "SIZE" over "mm | in". */
  private static boolean goesOn(Table.Row words, Table.Row units, int index) {
    return index > 0
        && isBlank(words, index)
        && !isBlank(units, index)
        && !isBlank(units, index - 1);
  }

  private static boolean isBlank(Table.Row row, int index) {
    return row.at(index) == null || row.at(index).text().isBlank();
  }

  private static String unit(Table.Row units, int index) {
    Table.Cell cell = units.at(index);
    return cell == null ? "" : PlainText.line(cell.text()).trim().replaceAll("^[(\\[]|[)\\]]$", "");
  }

  private static ColumnWords column(
      List<Table.Row> words,
      List<NavigableSet<Integer>> filled,
      List<Table.Row> data,
      int index,
      int under,
      String unit) {
    List<String> cells = cells(data, index);
    List<String> parts = new ArrayList<>();
    boolean over = false;
    boolean covered = false;
    for (int r = 0; r < words.size(); r++) {
      Table.Cell cell = words.get(r).at(under);
      String text = cell == null ? "" : PlainText.line(cell.text()).trim();
      boolean last = r == words.size() - 1;
      if (text.isEmpty() && !last) {
        String group = groupBefore(words, filled, r, under);
        if (!group.isEmpty()) {
          parts.add(group);
          covered = true;
        }
      } else if (!text.isEmpty() && !parts.contains(text)) {
        parts.add(text);
        boolean wide = cell.columnSpan() > 1;
        over |= wide && !last;
        if (wide && last && cell.column() != under && under == index) return null;
      }
    }
    boolean own =
        !parts.isEmpty()
            && words.get(words.size() - 1).at(under) != null
            && !words.get(words.size() - 1).at(under).text().isBlank();
    if (covered && !own) parts.clear();
    if (parts.isEmpty() && cells.size() < Math.min(2, data.size())) return null;
    if (over && !own && cells.isEmpty()) return null;
    String bottom = parts.isEmpty() ? "" : parts.get(parts.size() - 1);
    String top = parts.isEmpty() ? "" : String.join(" ", parts.subList(0, parts.size() - 1));
    String measured = unit.isEmpty() ? top + " " + bottom : top + " " + bottom + " (" + unit + ")";
    Unit found = unitOf(measured.trim());
    if (found == null) found = unitBehind(measured.trim(), cells);
    if (found == null) found = unitOf(top);
    TwoUnits pair = TwoUnits.of(measured.trim());
    if (pair != null) {
      found = pair.first();
      cells.replaceAll(pair::spelt);
    }
    String written = unit.isEmpty() || bottom.isEmpty() ? bottom : bottom + " (" + unit + ")";
    return new ColumnWords(
        index,
        top,
        written,
        over ? ColumnWords.Group.OVER : covered ? ColumnWords.Group.BEFORE : ColumnWords.Group.NONE,
        found,
        cells);
  }

  /** Saved as text, a heading merged over several columns stands over the first of them alone. */
  private static String groupBefore(
      List<Table.Row> words, List<NavigableSet<Integer>> filled, int r, int index) {
    Table.Row below = words.get(r + 1);
    Integer before = filled.get(r).lower(index);
    if (before == null || isBlank(below, index)) return "";
    Table.Cell cell = words.get(r).at(before);
    boolean heads = cell.columnSpan() == 1 && !isBlank(below, before);
    return heads ? PlainText.line(cell.text()).trim() : "";
  }

  private static List<String> cells(List<Table.Row> data, int index) {
    List<String> out = new ArrayList<>();
    for (Table.Row row : data) {
      Table.Cell cell = row.at(index);
      if (cell != null && cell.column() == index && !cell.text().isBlank()) out.add(cell.text());
    }
    return out;
  }
}
