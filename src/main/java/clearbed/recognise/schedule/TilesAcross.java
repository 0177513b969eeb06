package clearbed.recognise.schedule;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.cell.TagCells;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.schedule.grid.Transposed;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.TagList;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Whether a table lists its tiles across, as columns, by what stands in its cells. */
final class TilesAcross {
  private static final Pattern LETTERS = Pattern.compile("\\p{Lu}{1,6}");

  /** Rows that may stand over a table without headings. */
  private static final int MOST_TITLES = 8;

  /** Fewer lines say too little of tiles that stand across them. */
  private static final int FEWEST = 4;

  private final Vocabulary vocabulary;
  private final TagCells tagCells;

  TilesAcross(Vocabulary vocabulary, TagCells tagCells) {
    this.vocabulary = vocabulary;
    this.tagCells = tagCells;
  }

  /**
   * True of a table that does for certain: beside a word, or nothing, stand tags that are all
   * different.
   */
  boolean are(Table table) {
    return head(table) >= 0;
  }

  /** Index of the row of such tags; -1 where none of the first is one. */
  int head(Table table) {
    if (Transposed.isTooLong(table)) return -1;
    int names = Transposed.first(table);
    List<Table.Row> rows = table.rows();
    for (int i = 0; i < Math.min(MOST_TITLES, rows.size()); i++)
      if (isHead(rows.get(i), names)) return i;
    return -1;
  }

  private boolean isHead(Table.Row row, int names) {
    List<Table.Cell> filled =
        row.cells().stream().filter(c -> c.column() > names && !c.text().isBlank()).toList();
    boolean tags =
        filled.size() >= 2
            && filled.stream().allMatch(c -> isTag(c.text()))
            && filled.stream().map(Table.Cell::text).distinct().count() == filled.size();
    Table.Cell first = row.at(names);
    return tags && (first == null || first.text().chars().noneMatch(Character::isDigit));
  }

  boolean isTag(String text) {
    return tagCells.isTag(TagCells.unnamed(text));
  }

  /** True of a table worth reading across to see. */
  boolean mayBe(Table table) {
    return table.rows().size() >= FEWEST && !isKey(table) && namesTiles(table);
  }

  /** "Prefix | Family" over "GT | Glass tile" and "PT | Porcelain": what letters stand for. */
  private boolean isKey(Table table) {
    int names = 0;
    for (Table.Row row : table.rows()) {
      List<Table.Cell> filled = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
      if (filled.size() > 2) return false;
      if (filled.size() < 2) continue;
      String name = filled.get(0).text().strip();
      // "SIZE | 1 x 2" is of a card.
      if (LETTERS.matcher(name).matches() && HeadingWords.named(vocabulary, name) == null) names++;
    }
    return names * 2 > table.rows().size();
  }

  /** A table in which no cell can be a tag, or one word of glass, lists no tiles across. */
  private boolean namesTiles(Table table) {
    return Stream.of(table.origin().sheet(), table.origin().heading())
            .anyMatch(over -> over != null && mayBeGlass(over))
        || table.rows().stream()
            .flatMap(row -> row.cells().stream())
            .anyMatch(cell -> mayBeTags(cell.text()) || mayBeGlass(cell.text()));
  }

  private boolean mayBeTags(String cell) {
    // Every tag that was not taught begins with a capital.
    if (PlainText.of(cell).chars().noneMatch(c -> c >= 'A' && c <= 'Z'))
      return vocabulary.taught().isTag(cell);
    return TagList.inCell(cell) != null || tagCells.in(cell).stream().anyMatch(tagCells::isTag);
  }

  private boolean mayBeGlass(String text) {
    String plain = PlainText.of(text);
    return vocabulary.glass().mayBeNamed(plain)
        || Citations.mayCite(plain)
            && Citations.find(plain).stream()
                .anyMatch(f -> RowGlass.isGlass(f.standard().designation()));
  }
}
