package clearbed.recognise.schedule;

import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Placed;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.row.BlankCells;
import clearbed.recognise.schedule.row.GroupRows;
import clearbed.recognise.schedule.row.LaterSchedule;
import clearbed.recognise.statement.limit.Statement;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What the rows below a heading state, and what they leave blank. */
final class RowStatements {
  private final ScheduleFinder means;
  private final Table table;
  private final TableLedger ledger;
  private final List<Document.Gap> gaps;
  private final Table places;
  private final Placed.Packer<Statement> packer;
  private final Map<List<Integer>, List<Header.Column>> blankColumns = new HashMap<>();
  private Header header;
  private int tagColumn = -1;
  private LaterSchedule later;

  /**
   * @param gaps to which is added what was not understood
   */
  RowStatements(ScheduleFinder means, Table table, TableLedger ledger, List<Document.Gap> gaps) {
    this.means = means;
    this.table = table;
    this.ledger = ledger;
    this.gaps = gaps;
    this.places =
        new Table(table.origin(), List.of(), table.sheet(), table.turned(), table.apart());
    this.packer = new Placed.Packer<>(ScheduleFinder.PLACE, table.rows().size());
  }

  /** Of the rows that follow. */
  void start(Header under, int tags) {
    header = under;
    tagColumn = tags;
    blankColumns.clear();
    later = new LaterSchedule(places, header, tagColumn, means::late, packer);
  }

  /** The same, kept in little memory. */
  List<Statement> packed(List<Statement> statements) {
    return packer.pack(statements);
  }

  /**
   * @param above the row whose words it repeats, or null
   */
  List<Statement> of(Table.Row row, Table.Row above) {
    return packer.pack(
        means.rowReader.statements(
            table, header, row, above, tagColumn, means.memo, gaps, ledger::cell));
  }

  /**
   * The same with what its group says; what an undecided row states is read when somebody asks for
   * it.
   *
   * @param written the row before what is repeated was filled in
   */
  List<Statement> of(
      Table.Row row, boolean decided, Table.Row written, Table.Row previous, GroupRows.Group says) {
    // Places that no number of a row and a column tells are not kept for later.
    if (decided
        || !table.apart().isEmpty()
        || means.rowReader.isUnusual(row)
        || !says.statements().isEmpty()) {
      ledger.columnless(written, header, tagColumn);
      return says.with(of(row, previous));
    }
    ledger.undecided(written, header, tagColumn);
    return later.statements(sparing(row));
  }

  /** The same row; words that other rows have, too, are kept once. */
  private Table.Row sparing(Table.Row row) {
    List<Table.Cell> cells =
        row.cells().stream().map(c -> c.withText(means.once(c.text()))).toList();
    return row.withCells(cells);
  }

  /**
   * The empty cells under headers that are understood.
   *
   * @param cards true where each row is a card
   */
  Map<String, Origin> blanks(Table.Row row, boolean cards) {
    List<Header.Column> columns = means.rowReader.blankColumns(header, row);
    if (columns.isEmpty()) return Map.of();
    if (cards) {
      // What a card does not name at all was not left blank.
      return columns.stream()
          .filter(c -> row.at(c.index()) != null)
          .collect(Collectors.toMap(c -> c.attribute().id(), c -> table.origin(row.at(c.index()))));
    }
    if (table.turned()) {
      // There a column is a line of the table, and the row begins with its tile.
      Origin first = table.origin(row.cells().get(0));
      return columns.stream().collect(Collectors.toMap(c -> c.attribute().id(), c -> first));
    }
    List<Integer> indexes = columns.stream().map(Header.Column::index).toList();
    Table.Cell cell = row.at(indexes.get(0));
    int page = cell == null ? row.cells().get(0).page() : cell.page();
    List<Header.Column> same = blankColumns.computeIfAbsent(indexes, any -> columns);
    return new BlankCells(places, row.number(), page, same);
  }
}
