package clearbed.recognise.schedule.column;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.cell.UnitCells;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds the rows that head a table by their words and by what stands below them. */
public final class HeadingRows {
  private static final int MOST_ROWS = 3;

  /** Rows below a heading that show what its columns hold. */
  private static final int LOOKED_AT = 12;

  /** Fewer words below a heading might be a row of data. */
  private static final int FEWEST_HINTS = 3;

  private static final int LONGEST_HINT = 24;

  /** One row more has to be worth so much. */
  private static final double ONE_MORE = 1.0;

  private final JointEvidence evidence;
  private final HeadingSigns signs;

  public HeadingRows(Vocabulary vocabulary, JointEvidence evidence) {
    this.evidence = evidence;
    this.signs = new HeadingSigns(vocabulary, evidence);
  }

  /**
   * The header that starts at a row, or null when none does.
   *
   * @param family part of the work that the heading over the table speaks of, or empty
   * @param plain true to take such headings only as the vocabulary knows
   */
  public Header at(List<Table.Row> rows, int at, boolean plain, String family) {
    Table.Row row = rows.get(at);
    if (!signs.mayHead(row, !plain)
        || HeadingSigns.filled(row).size() < 2 && !signs.isGroup(rows, at)) return null;
    if (signs.opensWithMark(row) && at + 1 < rows.size() && signs.opensWithMark(rows.get(at + 1)))
      return null;
    if (!signs.speaks(row, plain)
        && !(at + 1 < rows.size()
            && signs.mayHead(rows.get(at + 1))
            && signs.speaks(rows.get(at + 1), plain))) return null;
    Header best = null;
    double most = 0;
    for (int count = 1; count <= MOST_ROWS && at + count <= rows.size(); count++) {
      if (count > 1 && !signs.isBelow(rows, at, count)) break;
      if (recurs(rows, at, count, plain)) break;
      Header header = header(rows, at, count, family);
      double sum = PlausibleHeader.sum(header);
      boolean better =
          best == null
              || sum >= most + ONE_MORE
              || UnitCells.isUnits(rows.get(at + count - 1)) && sum >= most;
      if (better && PlausibleHeader.is(header, best != null)) {
        best = header;
        most = sum;
      }
    }
    return best == null ? null : withHints(best, rows, at, family);
  }

  /**
   * "in.", "glass only", "see key" below some headings are said of those: the units count, and the
   * row heads nothing by itself.
   */
  private Header withHints(Header header, List<Table.Row> rows, int at, String family) {
    int end = at + header.rows();
    if (!areHints(rows, at, end, header)) return header;
    Table.Row row = rows.get(end);
    List<Table.Row> heads = new ArrayList<>(rows.subList(at, end));
    List<Table.Cell> units =
        row.cells().stream().filter(c -> UnitCells.unit(c.text()) != null).toList();
    if (!units.isEmpty()) heads.add(row.withCells(units));
    List<Table.Row> data = data(rows, end + 1, words(row));
    return new Header(evidence.columns(HeadingTexts.of(heads, data), family), header.rows() + 1);
  }

  /** Some short words of no row of their own, each below a heading and none below the marks. */
  private boolean areHints(List<Table.Row> rows, int at, int end, Header header) {
    List<Header.Column> tags = header.all(Header.Role.TAG);
    if (tags.size() != 1 || end + 1 >= rows.size()) return false;
    Table.Row row = rows.get(end);
    List<Table.Row> over = rows.subList(at, end);
    Table.Cell mark = row.at(tags.get(0).index());
    List<Table.Cell> filled = HeadingSigns.filled(row);
    return (mark == null || mark.text().isBlank())
        && row.number() == rows.get(end - 1).number() + 1
        && filled.size() >= FEWEST_HINTS
        && signs.mayHead(row)
        && filled.stream().allMatch(c -> isHint(c, over))
        && !recurs(rows, at, end - at + 1, false);
  }

  private static boolean isHint(Table.Cell cell, List<Table.Row> heading) {
    return cell.columnSpan() == 1
        && cell.text().length() <= LONGEST_HINT
        && heading.stream()
            .map(row -> row.at(cell.column()))
            .anyMatch(over -> over != null && over.columnSpan() == 1 && !over.text().isBlank());
  }

  /**
   * The header of a table that has none, or none of known words; null where its cells do not tell
   * what they are.
   *
   * @param first index of the first row of data
   */
  public Header without(List<Table.Row> rows, int first, String family) {
    if (rows.size() - first < 2) return null;
    // ColumnWords above that nobody knows head it all the same.
    boolean headed =
        first > 0
            && signs.mayHead(rows.get(first - 1))
            && HeadingSigns.filled(rows.get(first - 1)).size() * 2
                > HeadingSigns.filled(rows.get(first)).size();
    Header header = header(rows, headed ? first - 1 : first, headed ? 1 : 0, family);
    boolean tagged = header.has(Header.Role.TAG);
    return tagged && PlausibleHeader.attributes(header) >= 2 ? header : null;
  }

  /** The columns of a table that is no schedule, by the first row that might have headed it. */
  public Optional<Header> weighed(List<Table.Row> rows, String family) {
    for (int i = 0; i + 2 < Math.min(rows.size(), LOOKED_AT); i++) {
      if (HeadingSigns.filled(rows.get(i)).size() >= 2 && signs.mayHead(rows.get(i)))
        return Optional.of(header(rows, i, needsNext(rows, i) ? 2 : 1, family));
    }
    return Optional.empty();
  }

  /** Of words that nobody knows the second row is taken for data, unless the first is not whole. */
  private boolean needsNext(List<Table.Row> rows, int at) {
    List<Table.Cell> first = HeadingSigns.filled(rows.get(at));
    boolean part =
        first.stream().anyMatch(c -> c.columnSpan() > 1)
            || first.size() < HeadingSigns.filled(rows.get(at + 1)).size();
    return signs.isBelow(rows, at, 2) && (part || UnitCells.isUnits(rows.get(at + 1)));
  }

  /**
   * The words of a heading do not come again below it; those of data do.
   *
   * @param headed true where a heading stands above: a row with one value is one of data
   */
  private boolean recurs(List<Table.Row> rows, int at, int count, boolean headed) {
    Table.Row row = rows.get(at + count - 1);
    List<Table.Row> data =
        rows.subList(at + count, Math.min(rows.size(), at + count + LOOKED_AT)).stream()
            .filter(below -> !signs.mayHead(below) || headed && signs.hasValue(below))
            .toList();
    int again = 0;
    int all = 0;
    for (Table.Cell cell : row.cells()) {
      if (cell.text().isBlank() || cell.continued()) continue;
      all++;
      if (data.stream().anyMatch(below -> comesAgain(cell, below.at(cell.column())))) again++;
    }
    return again * 3 > all && !repeated(rows, at, count);
  }

  private static boolean comesAgain(Table.Cell cell, Table.Cell below) {
    return below != null
        && !below.continued()
        && below.text().equals(cell.text())
        && below.column() == cell.column();
  }

  /** The whole heading comes again, as it does on each page. */
  private static boolean repeated(List<Table.Row> rows, int at, int count) {
    List<Table.Cell> heading = rows.get(at + count - 1).cells();
    return rows.stream().skip(at + count).anyMatch(row -> sameWords(row.cells(), heading));
  }

  private static boolean sameWords(List<Table.Cell> cells, List<Table.Cell> others) {
    if (cells.size() != others.size()) return false;
    for (int i = 0; i < cells.size(); i++) {
      String text = PlainText.line(cells.get(i).text());
      if (!text.equals(PlainText.line(others.get(i).text()))) return false;
    }
    return true;
  }

  static String words(Table.Row row) {
    return String.join("|", row.cells().stream().map(c -> PlainText.line(c.text())).toList());
  }

  /** What cards call their values, over what they say of each tile. */
  public Header over(Table.Row names, List<Table.Row> cards, String family) {
    return new Header(evidence.columns(HeadingTexts.of(List.of(names), cards), family), 0);
  }

  /** True of words that head columns, or name what a card says. */
  public boolean isName(String words) {
    return signs.isName(words);
  }

  private Header header(List<Table.Row> rows, int at, int count, String family) {
    List<Table.Row> data =
        data(rows, at + count, count == 0 ? "" : words(rows.get(at + count - 1)));
    return new Header(
        evidence.columns(HeadingTexts.of(rows.subList(at, at + count), data), family), count);
  }

  /** Rows below with two cells and more. */
  private static List<Table.Row> data(List<Table.Row> rows, int from, String heading) {
    List<Table.Row> out = new ArrayList<>();
    for (int i = from; i < rows.size() && out.size() < LOOKED_AT; i++) {
      Table.Row row = rows.get(i);
      if (HeadingSigns.filled(row).size() >= 2 && !words(row).equals(heading)) out.add(row);
      else if (HeadingSigns.filled(row).isEmpty() && !out.isEmpty()) break;
    }
    return out;
  }
}
