package clearbed.recognise.schedule;

import clearbed.base.Memo;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Placed;
import clearbed.model.document.Table;
import clearbed.model.report.Fate;
import clearbed.recognise.schedule.card.CardFinder;
import clearbed.recognise.schedule.card.CardLines;
import clearbed.recognise.schedule.card.CardTable;
import clearbed.recognise.schedule.card.CardTitle;
import clearbed.recognise.schedule.cell.GlassTest;
import clearbed.recognise.schedule.cell.TagCells;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.HeadingRows;
import clearbed.recognise.schedule.column.JointEvidence;
import clearbed.recognise.schedule.column.MarkEvidence;
import clearbed.recognise.schedule.column.SidesApart;
import clearbed.recognise.schedule.grid.CalledCodes;
import clearbed.recognise.schedule.grid.SideBySide;
import clearbed.recognise.schedule.grid.TickedColumns;
import clearbed.recognise.schedule.grid.Transposed;
import clearbed.recognise.schedule.row.CellMemo;
import clearbed.recognise.schedule.row.GroupRows;
import clearbed.recognise.schedule.row.LaterSchedule;
import clearbed.recognise.schedule.row.RoomUse;
import clearbed.recognise.schedule.row.RowReader;
import clearbed.recognise.schedule.row.RowWords;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.SpanFinder;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds the schedules on a grid of cells, wherever they stand, and the notes around them. */
public final class ScheduleFinder {
  static final Placed.Placing<Statement> PLACE =
      new Placed.Placing<>(Statement::origin, Statement::movedTo);

  /** Evidence by which one direction of a grid beats the other. */
  private static final double MUCH_MORE = 3;

  /** Rows that may stand over a table without headings. */
  private static final int MOST_TITLES = 8;

  /** Cards that show what their names hold. */
  private static final int MOST_SHOWN = 40;

  /** What was found on one grid. */
  public record Result(
      List<ScheduleRow> rows,
      List<RoomUse> rooms,
      List<Paragraph> notes,
      List<Document.Gap> gaps,
      boolean schedule,
      List<TableLedger> ledgers) {

    /** How much speaks for what the columns were taken for. */
    double evidence() {
      return ledgers.stream().mapToDouble(TableLedger::evidence).sum();
    }

    boolean isCard() {
      return rows.size() == 1;
    }

    /** What stands over a card of one tile says where it is, if the card does not. */
    Result in(GroupRows.Group group) {
      if (group.statements().isEmpty() || group.former()) return this;
      ScheduleRow row = rows.get(0);
      return new Result(
          List.of(row.withStatements(group.with(row.statements()))),
          rooms,
          notes,
          gaps,
          schedule,
          ledgers);
    }

    /** Of tables on one grid; what stands over several of them is said once. */
    static Result joined(List<Result> results) {
      return new Result(
          results.stream().flatMap(r -> r.rows().stream()).toList(),
          results.stream().flatMap(r -> r.rooms().stream()).toList(),
          results.stream().flatMap(r -> r.notes().stream()).distinct().toList(),
          results.stream().flatMap(r -> r.gaps().stream()).distinct().toList(),
          results.stream().anyMatch(Result::schedule),
          results.stream().flatMap(r -> r.ledgers().stream()).toList());
    }
  }

  final Vocabulary vocabulary;
  final TagCells tagCells;
  private final TilesAcross across;
  private final StackedTables stacked;
  final RowReader rowReader;
  final RowWords rowWords;
  private final StatementFinder finder;
  private final GlassTest glassTest;

  // By their words, as tables have many in common.
  private final Memo<String, Material> materials = Memo.ofTexts();
  private final Memo<String, String> words = Memo.ofTexts();
  final CellMemo memo = new CellMemo();
  private final SideBySide sideBySide;
  private final SidesApart sidesApart;
  private final CardFinder cards;
  final HeadingRows headingRows;
  final GroupRows groupRows;

  /** True when it is to be told how every cell ended. */
  final boolean traces;

  /**
   * @param traces true when it is to be told how every cell ended
   */
  public ScheduleFinder(
      Vocabulary vocabulary, StatementFinder finder, SpanFinder spans, boolean traces) {
    this.traces = traces;
    this.vocabulary = vocabulary;
    this.tagCells = new TagCells(vocabulary);
    this.across = new TilesAcross(vocabulary, tagCells);
    this.stacked = new StackedTables(across);
    JointEvidence evidence = new JointEvidence(vocabulary, spans);
    this.headingRows = new HeadingRows(vocabulary, evidence);
    this.rowReader = new RowReader(vocabulary, finder, evidence.shorts());
    this.rowWords = new RowWords(vocabulary);
    this.finder = finder;
    this.glassTest = new GlassTest(vocabulary);
    this.cards = new CardFinder(vocabulary, headingRows);
    this.sideBySide = new SideBySide(headingRows);
    this.sidesApart = new SidesApart(vocabulary);
    this.groupRows = new GroupRows(vocabulary);
  }

  /** The words are held once for all rows that say them. */
  record Material(String words, GlassTest.Result result) {}

  Material known(String words) {
    return materials.get(words, () -> new Material(once(words), glassTest.of(words)));
  }

  /** The same words, held once for many that say them. */
  String once(String text) {
    return words.get(text, () -> text);
  }

  /** The part of the work that a title over a table speaks of; empty for none. */
  String family(String title) {
    String named = vocabulary.family(title);
    // Over a table of tiles "Joint schedule" is of no joint in particular but those that move.
    boolean joints = named.isEmpty() && vocabulary.list("schedule.ofJoints").in(title);
    return joints ? "movement" : named;
  }

  /**
   * @param heading that the table stands under; empty when there is none
   * @param document what its figures show of the way they are written
   * @param codes by which tables of the document call rows of others
   */
  public Result find(Table table, String heading, MarkEvidence document, CalledCodes codes) {
    List<Result> results = new ArrayList<>();
    for (Table beside : sideBySide.of(table))
      for (Table part : stacked.of(beside)) results.add(ticked(part, heading, document, codes));
    if (results.size() != 1) return Result.joined(results);
    Result only = results.get(0);
    return only.isCard() ? only.in(groupRows.of(heading, table.origin().withText(heading))) : only;
  }

  private Result ticked(Table table, String heading, MarkEvidence document, CalledCodes codes) {
    TickedColumns.TickedTable read = TickedColumns.of(table);
    SidesApart.SizedTable sized = sidesApart.of(read.table());
    Result result = findOne(sized.table(), heading, document, codes);
    TableLedger ledger = result.ledgers().get(0);
    for (List<Table.Row> heads : List.of(read.heads(), sized.heads()))
      heads.forEach(row -> ledger.row(row, Fate.CONTEXT));
    for (List<Table.Row> cells : List.of(read.ticks(), sized.sides()))
      cells.forEach(row -> ledger.row(row, Fate.READ));
    return result;
  }

  /**
   * The cards on a grid, one to a row; empty where there are none.
   *
   * @param over the heading that the table stands under, or the tab of its sheet
   */
  public Optional<Result> cards(Table table, String over, MarkEvidence document) {
    CardFinder.Found found = cards.on(table, over, table.origin().withText(over));
    if (found.cards().isEmpty() || isHeaded(table)) return Optional.empty();
    CardTable all = CardTable.of(found, table);
    List<Table.Row> shown = all.cards().subList(0, Math.min(all.cards().size(), MOST_SHOWN));
    Header header = headingRows.over(all.names(), shown, vocabulary.family(over));
    ScheduleWalk walk = new ScheduleWalk(this, all.table(), over, document, CalledCodes.NONE);
    walk.heads(all.context());
    Result result = walk.run(header, all.first());
    // A line that opens with the mark is the title of the card, and was read as that.
    boolean place = result.isCard() && CardTitle.of(over, vocabulary) == null;
    return Optional.of(
        place ? result.in(groupRows.of(over, table.origin().withText(over))) : result);
  }

  /** "Mark | Product | Substrate" over rows of marks: whatever else stands there, it is a list. */
  private boolean isHeaded(Table table) {
    List<Table.Row> rows = table.rows();
    for (int i = 0; i < Math.min(rows.size(), MOST_TITLES); i++) {
      Header header = headingRows.at(rows, i, true, "");
      if (header == null) continue;
      List<Header.Column> tags = header.all(Header.Role.TAG);
      if (tags.size() != 1 || header.all(Header.Role.ATTRIBUTE).size() < 2) return false;
      return rows.stream()
              .skip(i + header.rows())
              .map(row -> row.at(tags.get(0).index()))
              .filter(cell -> cell != null && !cell.continued() && tagCells.isTag(cell.text()))
              .map(Table.Cell::text)
              .distinct()
              .count()
          >= 2;
    }
    return false;
  }

  /** Paragraphs of a document that may be cards, by the index of the first. */
  public Map<Integer, CardLines.Run> cardLines(List<Block> blocks) {
    return cards.lines(blocks);
  }

  private Result findOne(Table table, String heading, MarkEvidence document, CalledCodes codes) {
    Result result = new ScheduleWalk(this, table, heading, document, codes).run();
    boolean tagged =
        result.rows().stream()
                .anyMatch(r -> r.tagged() && tagCells.areTags(TagCells.unnamed(r.tag())))
            || !result.rooms().isEmpty();
    Table uncounted = Transposed.measured(Transposed.uncounted(table));
    if (tagged && !across.are(uncounted)) return result;
    Table turned = across.mayBe(table) ? Transposed.of(uncounted) : null;
    if (turned != null) {
      Result other = new ScheduleWalk(this, turned, heading, document, codes).run();
      double more = other.evidence() - result.evidence();
      boolean tags = tagsAcross(other) >= (result.schedule() ? 2 : 1);
      if (tags && (more > 0 || !result.schedule()) || tagsAcross(other) > 0 && more >= MUCH_MORE)
        return other;
      if (result.rows().stream().anyMatch(ScheduleRow::tagged)) return result;
    }
    return result.schedule() ? result : headless(table, heading, document, result);
  }

  /** A table without headings, whose cells tell what they are. */
  private Result headless(Table table, String heading, MarkEvidence document, Result none) {
    String family = vocabulary.family(heading);
    List<Table.Row> rows = table.rows();
    for (int i = 0; i < Math.min(rows.size(), MOST_TITLES); i++) {
      if (rows.get(i).cells().stream().noneMatch(c -> tagCells.areTags(c.text()))) continue;
      Header header = headingRows.without(rows, i, family);
      if (header == null) break;
      return new ScheduleWalk(this, table, heading, document, CalledCodes.NONE)
          .run(header, i - header.rows());
    }
    headingRows.weighed(rows, family).ifPresent(none.ledgers().get(0)::header);
    return none;
  }

  /**
   * Some line of a grid looks like a heading by chance; tags in the other direction do not, nor do
   * names of glass tile.
   */
  private long tagsAcross(Result turned) {
    return turned.rows().stream()
        .filter(r -> r.tagged() && (tagCells.isTag(r.tag()) || r.glass()))
        .count();
  }

  /** What is cut short or passed over is not told of rows that are read so late. */
  List<Statement> late(Table places, Header under, Table.Row row, int tagColumn) {
    return rowReader.statements(
        places, under, row, null, tagColumn, memo, new ArrayList<>(), RowReader.CellFates.NOBODY);
  }

  /** Schedules that were kept, with so many unread rows in all. */
  public List<LaterSchedule> later(List<LaterSchedule.Marks> schedules, int rows) {
    Placed.Packer<Statement> packer = new Placed.Packer<>(PLACE, rows);
    return schedules.stream()
        .map(marks -> LaterSchedule.of(marks, vocabulary, this::late, packer))
        .toList();
  }
}
