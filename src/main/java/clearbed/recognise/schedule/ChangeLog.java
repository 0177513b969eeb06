package clearbed.recognise.schedule;

import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.card.PropertySheet;
import clearbed.recognise.schedule.cell.GlassTest;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;

/**
 * A log of changes that gives a property of a tile in each row, as it was and as it is now: "GT-1 |
 * Size | 1 x 1 in | 2 x 2 in". It is read as a title for each tile with paragraphs that say what
 * changes.
 */
public final class ChangeLog {
  /** Rows that may stand over the headings. */
  private static final int SEARCHED = 12;

  /** Fewer rows whose item is a property might be anything. */
  private static final int FEWEST = 3;

  /**
   * Where things stand.
   *
   * @param head index of the row of headings
   * @param kind column of what the tile is, or -1
   * @param item column that names the property
   */
  private record Columns(int head, int tag, int kind, int item, int former, int now) {}

  /** A mark, and what stands with it in its cell. */
  private record Marked(String tag, String kind) {}

  private final Vocabulary vocabulary;
  private final GlassTest glassTest;

  public ChangeLog(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.glassTest = new GlassTest(vocabulary);
  }

  /** What the table says; empty when it is no such log. */
  public PropertySheet.Sheet read(Table table) {
    Columns columns = columns(table);
    if (columns == null) return PropertySheet.NONE;
    List<Paragraph> out = new ArrayList<>();
    List<ScheduleRow> rows = new ArrayList<>();
    String last = "";
    for (Table.Row row : table.rows().subList(columns.head() + 1, table.rows().size())) {
      Table.Cell cell = row.at(columns.tag());
      Marked marked = cell == null ? null : marked(cell);
      if (marked != null && !marked.tag().equals(last)) {
        last = marked.tag();
        String kind = (marked.kind() + " " + text(row, columns.kind())).strip();
        String title = (last + " " + kind).strip();
        Origin at = table.origin(cell).withText(title);
        out.add(new Paragraph(at, "", 2, -1, title, Paragraph.Region.BODY));
        if (!kind.isEmpty())
          rows.add(ScheduleRow.told(last, kind, glassTest.of(kind), table.origin(cell)));
      }
      change(table, row, columns, out);
      beside(table, row, out);
    }
    return new PropertySheet.Sheet(out, rows);
  }

  /** "GT-3 and GT-5 are glass tile." below the changes is one of none. */
  private static void beside(Table table, Table.Row row, List<Paragraph> out) {
    List<Table.Cell> own = row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
    if (own.size() != 1) return;
    String words = own.get(0).text().strip();
    out.add(
        new Paragraph(
            table.origin(own.get(0)).withText(words), "", 0, -1, words, Paragraph.Region.NOTE));
  }

  private void change(Table table, Table.Row row, Columns columns, List<Paragraph> out) {
    for (Table.Cell cell : row.cells()) Paragraph.remark(table, cell).ifPresent(out::add);
    String item = text(row, columns.item());
    String was = text(row, columns.former());
    String now = text(row, columns.now());
    boolean same = vocabulary.list("schedule.unchanged").matches(now);
    String value = same ? was : now;
    if (item.isEmpty() || value.isEmpty()) return;
    boolean changed = !same && !was.isEmpty();
    String words =
        changed
            ? "Change " + item + " from \"" + was + "\" to \"" + now + "\""
            : item + ": " + value;
    Table.Cell at = row.at(same ? columns.former() : columns.now());
    out.add(Paragraph.body(table.origin(at).withText(words), words));
  }

  private Columns columns(Table table) {
    List<Table.Row> rows = table.rows();
    for (int head = 0; head < Math.min(rows.size(), SEARCHED); head++) {
      int former = -1;
      int now = -1;
      for (Table.Cell cell : rows.get(head).cells()) {
        String words = PlainText.line(cell.text()).strip();
        if (vocabulary.list("schedule.former").matches(words)) former = cell.column();
        else if (vocabulary.list("schedule.latest").matches(words)) now = cell.column();
      }
      if (former < 1 || now != former + 1) continue;
      List<Table.Row> data = rows.subList(head + 1, rows.size());
      int item = former - 1;
      int tag = tag(data, item);
      long named = data.stream().filter(row -> isName(row.at(item))).count();
      if (tag < 0 || named < FEWEST || named * 2 < data.size()) continue;
      return new Columns(head, tag, kind(rows.get(head), tag, item), item, former, now);
    }
    return null;
  }

  /** The nearest column before the items in which marks stand; -1 where there is none. */
  private int tag(List<Table.Row> data, int item) {
    // Further left the changes are counted.
    for (int column = item - 1; column >= 0; column--) {
      int at = column;
      long marks =
          data.stream().map(row -> row.at(at)).filter(c -> c != null && marked(c) != null).count();
      if (marks * 2 > data.size()) return column;
    }
    return -1;
  }

  private int kind(Table.Row head, int tag, int item) {
    for (int column = tag + 1; column < item; column++) {
      Table.Cell cell = head.at(column);
      if (cell == null) continue;
      Header.Column named = HeadingWords.column(vocabulary, column, "", cell.text().strip());
      boolean kind = named.attribute() != null && named.attribute().id().equals("tile.kind");
      if (kind || named.describes()) return column;
    }
    return -1;
  }

  private boolean isName(Table.Cell cell) {
    return cell != null
        && HeadingWords.named(vocabulary, PlainText.line(cell.text()).strip()) != null;
  }

  /** "GT-1", also over "Glass mosaic"; null where no mark opens the cell. */
  private Marked marked(Table.Cell cell) {
    String first = cell.firstLine();
    if (!Tags.isMark(first, vocabulary)) return null;
    return new Marked(first, PlainText.line(cell.text().strip().substring(first.length())).strip());
  }

  private static String text(Table.Row row, int column) {
    Table.Cell cell = column < 0 ? null : row.at(column);
    return cell == null ? "" : PlainText.line(cell.text()).strip();
  }
}
