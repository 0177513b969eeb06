package clearbed.recognise.schedule;

import clearbed.base.Memo;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Placed;
import clearbed.model.document.Table;
import clearbed.model.report.Fate;
import clearbed.recognise.statement.Citations;
import clearbed.recognise.statement.SpanFinder;
import clearbed.recognise.statement.Statement;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.TagList;
import clearbed.recognise.statement.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

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

  String family(String heading) {
    return vocabulary.family(heading);
  }

  static boolean looksLikeTag(String text) {
    return Tags.isMark(text);
  }

  private static final Pattern LETTERS = Pattern.compile("\\p{Lu}{1,6}");

  private static final Pattern NAMED =
      Pattern.compile(
          "(?:type|tile|mark|ref|code|mix)\\.?\\s+(?=\\S{1,8}$)", Pattern.CASE_INSENSITIVE);

  /** "GM-A" of "Type GM-A". */
  static String unnamed(String tag) {
    return NAMED.matcher(tag.trim()).replaceFirst("");
  }

  /** The same, or of a form that was taught. */
  boolean isTag(String text) {
    return Tags.isMark(text, vocabulary);
  }

  /**
   * The tags of a cell that is no list of them as people write such; its words where it has none.
   */
  List<String> tags(String cell) {
    String text = PlainText.of(cell).trim().replaceAll("\\s+", " ");
    if (isTag(text)) return List.of(text);
    String bare = unnamed(text);
    if (isTag(bare)) return List.of(bare);
    List<String> parts = List.of(text.split("\\s*[,;&/]\\s*|\\s+and\\s+|\\n"));
    return parts.size() > 1 && parts.stream().allMatch(this::isTag) ? parts : List.of(text);
  }

  /** The same of a list or a range of tags, too. */
  boolean areTags(String text) {
    return looksLikeTags(text) || vocabulary.taught().isTag(text);
  }

  /** The same of a list or a range of tags. */
  static boolean looksLikeTags(String text) {
    return looksLikeTag(text) || TagList.inCell(text) != null;
  }

  /**
   * @param heading that the table stands under; empty when there is none
   * @param document what its figures show of the way they are written
   * @param codes by which tables of the document call rows of others
   */
  public Result find(Table table, String heading, MarkEvidence document, CalledCodes codes) {
    List<Result> results = new ArrayList<>();
    for (Table part : sideBySide.of(table)) results.add(ticked(part, heading, document, codes));
    if (results.size() != 1) return Result.joined(results);
    Result only = results.get(0);
    return only.isCard() ? only.in(groupRows.of(heading, table.origin().withText(heading))) : only;
  }

  private Result ticked(Table table, String heading, MarkEvidence document, CalledCodes codes) {
    TickedColumns.Read read = TickedColumns.of(table);
    SidesApart.Read sized = sidesApart.of(read.table());
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
              .filter(cell -> cell != null && !cell.continued() && isTag(cell.text()))
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
        result.rows().stream().anyMatch(r -> r.tagged() && areTags(unnamed(r.tag())))
            || !result.rooms().isEmpty();
    Table uncounted = Transposed.measured(Transposed.uncounted(table));
    if (tagged && !mayBeTurned(uncounted)) return result;
    boolean mayTurn = table.rows().size() >= 4 && !isKey(table) && namesTiles(table);
    Table turned = mayTurn ? Transposed.of(uncounted) : null;
    if (turned != null) {
      Result other = new ScheduleWalk(this, turned, heading, document, codes).run();
      double more = other.evidence() - result.evidence();
      boolean across = tagsAcross(other) >= (result.schedule() ? 2 : 1);
      if (across && (more > 0 || !result.schedule()) || tagsAcross(other) > 0 && more >= MUCH_MORE)
        return other;
      if (result.rows().stream().anyMatch(ScheduleRow::tagged)) return result;
    }
    return result.schedule() ? result : headless(table, heading, document, result);
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
    return TagList.inCell(cell) != null || tags(cell).stream().anyMatch(this::isTag);
  }

  private boolean mayBeGlass(String text) {
    String plain = PlainText.of(text);
    return vocabulary.mayNameGlass(plain)
        || Citations.mayCite(plain)
            && Citations.find(plain).stream()
                .anyMatch(f -> RowGlass.isGlass(f.standard().designation()));
  }

  /** Beside a word, or nothing, stand tags that are all different. */
  private boolean mayBeTurned(Table table) {
    if (Transposed.isTooLong(table)) return false;
    int names = Transposed.first(table);
    for (Table.Row row : table.rows().subList(0, Math.min(table.rows().size(), MOST_TITLES))) {
      List<Table.Cell> filled =
          row.cells().stream().filter(c -> c.column() > names && !c.text().isBlank()).toList();
      boolean tags =
          filled.size() >= 2
              && filled.stream().allMatch(c -> isTag(unnamed(c.text())))
              && filled.stream().map(Table.Cell::text).distinct().count() == filled.size();
      Table.Cell first = row.at(names);
      if (tags && (first == null || first.text().chars().noneMatch(Character::isDigit)))
        return true;
    }
    return false;
  }

  /** A table without headings, whose cells tell what they are. */
  private Result headless(Table table, String heading, MarkEvidence document, Result none) {
    String family = vocabulary.family(heading);
    List<Table.Row> rows = table.rows();
    for (int i = 0; i < Math.min(rows.size(), MOST_TITLES); i++) {
      if (rows.get(i).cells().stream().noneMatch(c -> areTags(c.text()))) continue;
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
    return turned.rows().stream().filter(r -> r.tagged() && (isTag(r.tag()) || r.glass())).count();
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
