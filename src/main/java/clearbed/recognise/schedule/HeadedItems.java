package clearbed.recognise.schedule;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.row.BillHeads;
import clearbed.recognise.schedule.row.ItemRows;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.limit.Statement;
import java.util.List;
import java.util.Map;

/** Lines of a bill that describe a tile by its mark, and the items below them that are of it. */
final class HeadedItems {
  private final ScheduleFinder means;
  private final Table table;
  private final RowGlass rowGlass;
  private final RowStatements statements;
  private final TableLedger ledger;
  private final List<ScheduleRow> rows;
  private final BillHeads heads;
  private Header header;
  private int tagColumn = -1;

  /** True where lines without a number describe the tiles of the counted items below them. */
  private boolean headed;

  /** The last such line; null before the first. */
  private ScheduleRow head;

  /**
   * @param rows to which the lines and items are added
   */
  HeadedItems(
      ScheduleFinder means,
      Table table,
      RowGlass rowGlass,
      RowStatements statements,
      TableLedger ledger,
      List<ScheduleRow> rows) {
    this.means = means;
    this.table = table;
    this.rowGlass = rowGlass;
    this.statements = statements;
    this.ledger = ledger;
    this.rows = rows;
    this.heads = new BillHeads(means.vocabulary);
  }

  /** Of the rows that follow. */
  void start(Header under, int tags, List<Table.Row> below) {
    header = under;
    tagColumn = tags;
    headed = tags >= 0 && heads.are(below, tags);
    head = null;
  }

  /** The mark of the tile that a row describes; empty where it is no such line. */
  String mark(Table.Row row) {
    return headed ? heads.mark(row) : "";
  }

  /** A line that describes a tile by its mark, over the items that say where it goes. */
  void head(Table.Row row, String mark) {
    String material = means.rowWords.material(header, row, tagColumn);
    RowGlass.Judged glass = rowGlass.of(header, row, mark, material, List.of());
    boolean repeats = head != null && !glass.decided() && heads.repeats(row);
    if (repeats) glass = new RowGlass.Judged(head.glass(), head.decided(), head.evidence());
    boolean read = glass.is() || !glass.decided();
    Origin origin = table.origin(row.cells().get(0)).withText(mark);
    if (!read) ledger.setAside(row, "not glass tile: " + glass.evidence());
    ledger.tags(List.of(mark));
    List<Statement> said = read ? statements.of(row, null) : List.of();
    if (read && repeats)
      said = statements.packed(means.groupRows.describing(head.statements()).with(said));
    head =
        new ScheduleRow(
            mark, true, glass.is(), glass.decided(), glass.evidence(), origin, said, Map.of());
    rows.add(head);
  }

  /** An item under such a line; false where it is none. */
  boolean item(Table.Row row) {
    if (head == null) return false;
    Table.Cell number = row.at(tagColumn);
    if (number == null || !ItemRows.isNumber(number.text())) return false;
    if (!head.glass()) {
      ledger.setAside(row, "not glass tile: " + head.evidence());
      return true;
    }
    ledger.tags(List.of(head.tag()));
    ledger.columnless(row, header, tagColumn);
    List<Statement> said = statements.of(row, null);
    rows.add(head.withStatements(statements.packed(heads.of(table, row, header, said))));
    return true;
  }
}
