package clearbed.recognise.schedule.grid;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/** Empty cells that repeat the row above, in documents that say so: "Blank: same as above". */
public final class RepeatingBlanks {
  /** A title or a note, in characters. */
  private static final int LONGEST = 400;

  private RepeatingBlanks() {}

  /** True of a document that says of its empty cells that they do. */
  public static boolean areIn(Document document, Vocabulary vocabulary) {
    for (Block block : document.blocks()) {
      if (block instanceof Paragraph p && says(p.text(), vocabulary)) return true;
      if (block instanceof Table t
          && t.rows().stream()
              .flatMap(row -> row.cells().stream())
              .anyMatch(cell -> says(cell.text(), vocabulary))) return true;
    }
    return false;
  }

  private static boolean says(String text, Vocabulary vocabulary) {
    if (text.length() > LONGEST || text.length() < 10) return false;
    String low = text.toLowerCase(Locale.ROOT);
    boolean may = low.contains("blank") || low.contains("empty");
    return may && vocabulary.list("blanksRepeat").in(PlainText.line(text));
  }

  /** The table with the words that its empty cells repeat, in rows that open with marks. */
  public static Table filled(Table table) {
    List<Table.Row> out = new ArrayList<>();
    Table.Row above = null;
    for (Table.Row row : table.rows()) {
      List<Table.Cell> words = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
      boolean marked = words.size() > 1 && Tags.isMark(words.get(0).text().strip());
      // What stands in a line of its own begins anew.
      if (!marked && !words.isEmpty()) above = null;
      Table.Row now = marked && above != null ? filled(row, words.get(0), above) : row;
      out.add(now);
      if (marked) above = now;
    }
    return table.withRows(out);
  }

  private static Table.Row filled(Table.Row row, Table.Cell mark, Table.Row above) {
    Set<Integer> filled = new TreeSet<>();
    List<Table.Cell> cells = new ArrayList<>();
    for (Table.Cell cell : row.cells()) {
      if (cell.text().isBlank()) continue;
      cells.add(cell);
      for (int i = 0; i < cell.columnSpan(); i++) filled.add(cell.column() + i);
    }
    for (Table.Cell from : above.cells()) {
      boolean own = from.column() <= mark.column() || filled.contains(from.column());
      if (own || from.text().isBlank()) continue;
      cells.add(
          new Table.Cell(from.column(), 1, false, from.text(), "", from.firstRow(), from.page()));
    }
    cells.sort((a, b) -> a.column() - b.column());
    return row.withCells(cells);
  }
}
