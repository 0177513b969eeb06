package clearbed.recognise.schedule.column;

import clearbed.base.Memo;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.cell.CellReading;
import clearbed.recognise.schedule.cell.UnitCells;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.HeadingEvidence;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;

/** Signs in a row by itself, and in that above it, that it heads others or is one of data. */
final class HeadingSigns {
  private static final int LONGEST = 90;

  /** Headings beside which one cell may hold a note. */
  private static final int WIDE = 12;

  private static final int LONGEST_BELOW = 40;

  static final double PLAIN = 0.75;

  /** A heading says so much of what it heads to be asked what stands below it. */
  static final double HINT = 0.5;

  private final Vocabulary vocabulary;
  private final JointEvidence evidence;
  private final HeadingEvidence headings;
  private final Memo<String, Boolean> values = Memo.ofTexts();

  HeadingSigns(Vocabulary vocabulary, JointEvidence evidence) {
    this.vocabulary = vocabulary;
    this.evidence = evidence;
    this.headings = evidence.headings();
  }

  /** No long words, and hardly a tag, a figure or a standard. */
  boolean mayHead(Table.Row row) {
    return mayHead(row, false);
  }

  /**
   * @param first true where a standard behind words that head columns may be part of the heading
   */
  boolean mayHead(Table.Row row, boolean first) {
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

  boolean hasValue(Table.Row row) {
    return filled(row).stream().anyMatch(cell -> isValue(cell.text()));
  }

  /** One heading over some columns, beside nothing. */
  boolean isGroup(List<Table.Row> rows, int at) {
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
  boolean speaks(Table.Row row, boolean plain) {
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

  /** A row whose first words are the mark of something is no heading of others. */
  boolean opensWithMark(Table.Row row) {
    List<Table.Cell> filled = filled(row);
    return !filled.isEmpty() && evidence.reading(filled.get(0).text()).tag();
  }

  /** True of words that head columns, or name what a card says. */
  boolean isName(String words) {
    return headings.of(HeadingWords.clean(vocabulary, words)).values().stream()
        .anyMatch(heard -> heard.strength() >= PLAIN);
  }

  boolean isBelow(List<Table.Row> rows, int at, int count) {
    Table.Row row = rows.get(at + count - 1);
    if (row.number() != rows.get(at + count - 2).number() + 1) return false;
    if (UnitCells.isUnits(row)) return true;
    if (opensWithMark(row)) return false;
    boolean narrow =
        row.cells().stream().allMatch(c -> c.continued() || c.text().length() <= LONGEST_BELOW);
    return narrow && mayHead(row) && filled(row).size() >= 2;
  }

  static List<Table.Cell> filled(Table.Row row) {
    return row.cells().stream().filter(c -> !c.text().isBlank()).toList();
  }
}
