package clearbed.recognise.schedule.column;

import clearbed.base.Memo;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.cell.CellReading;
import clearbed.recognise.schedule.cell.UnitCells;
import clearbed.recognise.statement.Citations;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.HeadingEvidence;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds the rows that head a table by their words and by what stands below them. */
public final class HeadingRows {
  private static final int MOST_ROWS = 3;

  /** Rows below a heading that show what its columns hold. */
  private static final int LOOKED_AT = 12;

  private static final int LONGEST = 90;

  /** Headings beside which one cell may hold a note. */
  private static final int WIDE = 12;

  private static final int LONGEST_BELOW = 40;

  /** A heading says so much of what it heads to be asked what stands below it. */
  private static final double HINT = 0.5;

  private static final double PLAIN = 0.75;

  /** Score of a column by its cells alone, nearly all of which name a finish. */
  private static final double FINISHES = 1.5;

  /** One row more has to be worth so much. */
  private static final double ONE_MORE = 1.0;

  /** The score of a column whose heading, cells and unit speak for one another. */
  private static final double CLEAR = 3.5;

  private final Vocabulary vocabulary;
  private final JointEvidence evidence;
  private final HeadingEvidence headings;
  private final Memo<String, Boolean> values = Memo.ofTexts();

  public HeadingRows(Vocabulary vocabulary, JointEvidence evidence) {
    this.vocabulary = vocabulary;
    this.evidence = evidence;
    this.headings = evidence.headings();
  }

  /**
   * The header that starts at a row, or null when none does.
   *
   * @param family part of the work that the heading over the table speaks of, or empty
   * @param plain true to take such headings only as the vocabulary knows
   */
  public Header at(List<Table.Row> rows, int at, boolean plain, String family) {
    Table.Row row = rows.get(at);
    if (!mayHead(row, !plain) || filled(row).size() < 2 && !isGroup(rows, at)) return null;
    if (opensWithMark(row) && at + 1 < rows.size() && opensWithMark(rows.get(at + 1))) return null;
    if (!speaks(row, plain)
        && !(at + 1 < rows.size() && mayHead(rows.get(at + 1)) && speaks(rows.get(at + 1), plain)))
      return null;
    Header best = null;
    double most = 0;
    for (int count = 1; count <= MOST_ROWS && at + count <= rows.size(); count++) {
      if (count > 1 && !isBelow(rows, at, count)) break;
      if (recurs(rows, at, count, plain)) break;
      Header header = header(rows, at, count, family);
      double sum = sum(header);
      boolean better =
          best == null
              || sum >= most + ONE_MORE
              || UnitCells.isUnits(rows.get(at + count - 1)) && sum >= most;
      if (better && isPlausible(header, best != null)) {
        best = header;
        most = sum;
      }
    }
    return best;
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
            && mayHead(rows.get(first - 1))
            && filled(rows.get(first - 1)).size() * 2 > filled(rows.get(first)).size();
    Header header = header(rows, headed ? first - 1 : first, headed ? 1 : 0, family);
    boolean tagged = header.has(Header.Role.TAG);
    return tagged && attributes(header) >= 2 ? header : null;
  }

  /** The columns of a table that is no schedule, by the first row that might have headed it. */
  public Optional<Header> weighed(List<Table.Row> rows, String family) {
    for (int i = 0; i + 2 < Math.min(rows.size(), LOOKED_AT); i++) {
      if (filled(rows.get(i)).size() >= 2 && mayHead(rows.get(i)))
        return Optional.of(header(rows, i, needsNext(rows, i) ? 2 : 1, family));
    }
    return Optional.empty();
  }

  /** Of words that nobody knows the second row is taken for data, unless the first is not whole. */
  private boolean needsNext(List<Table.Row> rows, int at) {
    List<Table.Cell> first = filled(rows.get(at));
    boolean part =
        first.stream().anyMatch(c -> c.columnSpan() > 1)
            || first.size() < filled(rows.get(at + 1)).size();
    return isBelow(rows, at, 2) && (part || UnitCells.isUnits(rows.get(at + 1)));
  }

  private static double sum(Header header) {
    return header.columns().values().stream().mapToDouble(c -> c.evidence().score()).sum();
  }

  private static List<Table.Cell> filled(Table.Row row) {
    return row.cells().stream().filter(c -> !c.text().isBlank()).toList();
  }

  /** No long words, and hardly a tag, a figure or a standard. */
  private boolean mayHead(Table.Row row) {
    return mayHead(row, false);
  }

  /**
   * @param first true where a standard behind words that head columns may be part of the heading
   */
  private boolean mayHead(Table.Row row, boolean first) {
    List<Table.Cell> filled = filled(row);
    int most = filled.size() / 4;
    int found = 0;
    // Turned, a schedule has its notes behind its headings.
    int notes = filled.size() / WIDE;
    for (Table.Cell cell : filled) {
      if (cell.text().length() > LONGEST && --notes < 0) return false;
      boolean value =
          isValue(cell.text()) && !isTaught(cell) && !(first && isOfStandard(cell.text()));
      if (value && ++found > most) return false;
    }
    return !filled.isEmpty();
  }

  private boolean isTaught(Table.Cell cell) {
    return vocabulary.taught().column(cell.text(), "") != null;
  }

  /** "Adhesive, EN 12004". */
  private boolean isOfStandard(String text) {
    String plain = PlainText.line(text);
    List<Citations.Found> cited = Citations.find(plain);
    if (cited.isEmpty()) return false;
    String words = HeadingWords.clean(vocabulary, plain.substring(0, cited.get(0).start()));
    return headings.of(words).values().stream().anyMatch(heard -> heard.strength() >= PLAIN);
  }

  private boolean isValue(String text) {
    return CellReading.digits(text)
        && values.get(
            text, () -> evidence.isValue(text) && HeadingWords.tests(vocabulary, text).isEmpty());
  }

  private boolean hasValue(Table.Row row) {
    return filled(row).stream().anyMatch(cell -> isValue(cell.text()));
  }

  /** One heading over some columns, beside nothing. */
  private boolean isGroup(List<Table.Row> rows, int at) {
    List<Table.Cell> filled = filled(rows.get(at));
    if (filled.size() != 1 || at + 1 >= rows.size()) return false;
    Table.Row next = rows.get(at + 1);
    return filled.get(0).column() > 0
        && next.number() == rows.get(at).number() + 1
        && filled(next).size() > filled.get(0).columnSpan()
        && filled(next).size() >= 3
        && mayHead(next);
  }

  /** True when the words of a row point to something, each by itself. */
  private boolean speaks(Table.Row row, boolean plain) {
    int known = 0;
    int hinted = 0;
    int all = 0;
    for (Table.Cell cell : filled(row)) {
      if (cell.continued()) continue;
      all++;
      double most = isTaught(cell) ? 1 : 0;
      for (var heard :
          headings.of(HeadingWords.clean(vocabulary, PlainText.line(cell.text()))).values())
        most = Math.max(most, heard.strength());
      if (most >= PLAIN) known++;
      if (most >= HINT) hinted++;
    }
    return plain ? known >= 2 && known * 2 >= all : hinted >= 1;
  }

  private boolean isBelow(List<Table.Row> rows, int at, int count) {
    Table.Row row = rows.get(at + count - 1);
    if (row.number() != rows.get(at + count - 2).number() + 1) return false;
    if (UnitCells.isUnits(row)) return true;
    if (opensWithMark(row)) return false;
    boolean narrow =
        row.cells().stream().allMatch(c -> c.continued() || c.text().length() <= LONGEST_BELOW);
    return narrow && mayHead(row) && filled(row).size() >= 2;
  }

  /** A row whose first words are the mark of something is no heading of others. */
  private boolean opensWithMark(Table.Row row) {
    List<Table.Cell> filled = filled(row);
    return !filled.isEmpty() && evidence.reading(filled.get(0).text()).tag();
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
            .filter(below -> !mayHead(below) || headed && hasValue(below))
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
    return headings.of(HeadingWords.clean(vocabulary, words)).values().stream()
        .anyMatch(heard -> heard.strength() >= PLAIN);
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
      if (filled(row).size() >= 2 && !words(row).equals(heading)) out.add(row);
      else if (filled(row).isEmpty() && !out.isEmpty()) break;
    }
    return out;
  }

  private static long attributes(Header header) {
    return header.all(Header.Role.ATTRIBUTE).stream()
        .filter(c -> !c.attribute().id().equals("notes"))
        .map(c -> c.attribute().id())
        .distinct()
        .count();
  }

  /** Marks under a plain heading beside cells that nearly all name a tile or another finish. */
  private static boolean isFinishList(Header header) {
    return header.all(Header.Role.TAG).stream().anyMatch(c -> c.evidence().heading() >= PLAIN)
        && header.all(Header.Role.MATERIAL).stream()
            .anyMatch(c -> c.evidence().score() >= FINISHES);
  }

  /** "FIXING GROUT W (mm)" over "2.0" says less by its words than by what stands below. */
  private static boolean isKnown(Header.Evidence evidence, boolean headed) {
    boolean clear = headed && evidence.heading() >= HINT && evidence.score() >= CLEAR;
    return clear || evidence.heading() >= PLAIN;
  }

  /**
   * @param headed true where fewer rows are a header already, and one more is asked for
   */
  private boolean isPlausible(Header header, boolean headed) {
    long known = 0;
    long named = 0;
    long hinted = 0;
    for (Header.Column c : header.columns().values()) {
      if (!c.text().isEmpty()) named++;
      if (c.evidence().heading() >= HINT) hinted++;
      if (c.role() != Header.Role.OTHER
          && c.role() != Header.Role.UNASKED
          && isKnown(c.evidence(), headed)) known++;
    }
    boolean subject = header.has(Header.Role.TAG) || header.has(Header.Role.MATERIAL);
    boolean notesAlone =
        known == 2
            && header.all(Header.Role.ATTRIBUTE).stream()
                .anyMatch(c -> c.attribute().id().equals("notes"));
    boolean byWords = (known >= 3 || known >= 2 && !notesAlone && subject) && known * 2 >= named;
    boolean rooms = header.all(Header.Role.SURFACE).size() >= 2 && known >= 3;
    return byWords
        || rooms
        || isFinishList(header)
        || hinted >= 1 && subject && attributes(header) >= 2;
  }
}
