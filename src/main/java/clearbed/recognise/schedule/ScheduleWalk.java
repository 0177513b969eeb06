package clearbed.recognise.schedule;

import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.report.Fate;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.MarkEvidence;
import clearbed.recognise.schedule.column.NotedUnits;
import clearbed.recognise.schedule.grid.CalledCodes;
import clearbed.recognise.schedule.row.ItemRows;
import clearbed.recognise.schedule.row.RowReader;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.figure.FigureGaps;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** One pass down the rows of a grid. */
final class ScheduleWalk {
  /** A heading stands among so many rows from the top of a grid, */
  private static final int SEARCHED = 60;

  /**
   * or so close below a gap, or it repeats an earlier one: rows of data are not searched for it.
   */
  private static final int NEAR_START = 6;

  /** Rows among which a heading in words of its own is looked for. */
  private static final int FIRST = 60;

  private final ScheduleFinder means;
  private final Vocabulary vocabulary;
  private final RowReader rowReader;
  private final Table table;
  private final NamedPart parts;
  private final String over;
  private final MarkEvidence document;
  private final CalledCodes codes;
  private final List<ScheduleRow> rows = new ArrayList<>();
  private final List<Document.Gap> gaps = new ArrayList<>();
  private Header header;
  private int tagColumn = -1;

  private final Set<String> headingWords = new HashSet<>();

  /** Index of the row behind the last gap. */
  private int blockStart;

  private int lastRow;
  private Table.Row previous;
  private final NotedUnits units;
  private final RowGlass rowGlass;
  private final ItemRows items;

  /** True where the numbers of the rows count items, and the tiles have their marks in words. */
  private boolean counts;

  /** The tiles of such rows, by their numbers. */
  private final Map<String, List<String>> marksOfItems = new HashMap<>();

  private boolean schedule;

  /** True where each row is a card. */
  private boolean cards;

  private final TableLedger ledger;
  private final RowMarks marks;
  private final AsideRows asides;
  private final RoomRows rooms;
  private final RowsSetAside setAside;
  private final RowStatements statements;
  private final HeadedItems headed;

  /**
   * @param over the heading over the table, or empty
   */
  ScheduleWalk(
      ScheduleFinder means, Table table, String over, MarkEvidence document, CalledCodes codes) {
    this.means = means;
    this.vocabulary = means.vocabulary;
    this.rowReader = means.rowReader;
    this.table = table;
    this.document = document;
    this.codes = codes;
    this.units = document.units();
    this.parts = new NamedPart(means, table, over);
    this.over = over;
    this.rowGlass = new RowGlass(means);
    this.items = new ItemRows(vocabulary);
    this.ledger = new TableLedger(table, means.traces);
    this.marks = new RowMarks(means, items, gaps);
    this.asides = new AsideRows(means, table, units);
    this.rooms = new RoomRows(vocabulary, means.rowWords, table);
    this.setAside = new RowsSetAside(vocabulary);
    this.statements = new RowStatements(means, table, ledger, gaps);
    this.headed = new HeadedItems(means, table, rowGlass, statements, ledger, rows);
  }

  ScheduleFinder.Result run() {
    return run(null, -1);
  }

  /**
   * @param given header of a table that has none, or null
   * @param from index of its first row
   */
  ScheduleFinder.Result run(Header given, int from) {
    List<Table.Row> all = table.rows();
    for (int i = 0; i < all.size(); i++) {
      if (i == from) start(given, all, i);
      Table.Row row = all.get(i);
      if (row.cells().stream().allMatch(c -> c.text().isBlank())) {
        asides.remarks(row);
        continue;
      }
      if (row.number() > lastRow + 1) blockStart = i;
      boolean far = i > SEARCHED && i > blockStart + NEAR_START && !repeatsHeading(row);
      Header found =
          isData(row) || i < from || far
              ? null
              : means.headingRows.at(
                  all, i, header != null || i > FIRST, parts.named(asides.title()));
      if (found != null) {
        start(found, all, i);
        for (int r = i; r < i + found.rows(); r++) {
          all.get(r).cells().forEach(cell -> headingWords.add(cell.text().strip()));
          ledger.row(all.get(r), Fate.CONTEXT);
          asides.remarks(all.get(r));
        }
        i += found.rows() - 1;
      } else {
        row(row);
      }
      lastRow = row.number();
    }
    return new ScheduleFinder.Result(
        rows,
        rooms.uses(),
        asides.notes(marksOfItems),
        FigureGaps.shortened(gaps),
        schedule,
        List.of(ledger));
  }

  /** Names of what cards say, which head the columns. */
  void heads(List<Table.Row> names) {
    cards = true;
    for (Table.Row row : names) {
      ledger.row(row, Fate.CONTEXT);
      asides.remarks(row);
    }
  }

  /** The heading again, as at the top of another page. */
  private boolean repeatsHeading(Table.Row row) {
    return header != null
        && row.cells().stream().map(cell -> cell.text().strip()).allMatch(headingWords::contains);
  }

  private boolean isData(Table.Row row) {
    return header != null
        && tagColumn >= 0
        && row.at(tagColumn) != null
        && means.tagCells.areTags(row.at(tagColumn).text());
  }

  private void start(Header found, List<Table.Row> all, int at) {
    ledger.header(found);
    Header noting = units.of(found);
    int from = at + found.rows();
    header = document.under(noting, below(all, from));
    asides.start();
    previous = null;
    schedule = true;
    int taken = new MarkColumn(means, table).of(found, all, at + found.rows());
    tagColumn = codes.marks(table, below(all, from), found, taken);
    if (tagColumn != taken) header = header.marked(tagColumn, taken);
    header = codes.calling(table, below(all, from), header, tagColumn);
    marks.start(below(all, from), tagColumn);
    counts = tagColumn >= 0 && items.areItems(below(all, from), tagColumn);
    if (table.turned()) asides.title(found, all.subList(at + found.rows(), all.size()));
    statements.start(header, tagColumn);
    headed.start(header, tagColumn, below(all, from));
  }

  static List<Table.Row> below(List<Table.Row> all, int from) {
    return all.subList(Math.min(from, all.size()), all.size());
  }

  private void row(Table.Row row) {
    List<Table.Cell> filled = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
    boolean single =
        filled.size() == 1
            || filled.stream().map(Table.Cell::text).distinct().count() == 1
                && filled.get(0).columnSpan() > 1;
    if (header == null) {
      ledger.row(row, Fate.CONTEXT);
      if (filled.size() <= 2) asides.title(filled);
      else filled.forEach(asides::note);
      asides.remarks(row);
      return;
    }
    String mark = single ? headed.mark(row) : "";
    if (!mark.isEmpty()) {
      if (passedOver(row)) return;
      asides.saysNothing();
      headed.head(row, mark);
      return;
    }
    boolean group = !single && asides.isCountedGroup(filled, header, tagColumn);
    if (group || single && !means.tagCells.isTag(filled.get(0).text())) {
      ledger.row(row, Fate.CONTEXT);
      asides.aside(row, filled.get(filled.size() - 1), counts, lastRow);
      asides.remarks(row);
      return;
    }
    if (asides.isNote(filled)) {
      ledger.row(row, Fate.CONTEXT);
      asides.note(filled.get(filled.size() - 1));
      asides.remarks(row);
      return;
    }
    if (header.all(Header.Role.SURFACE).size() >= 1
        && (!header.has(Header.Role.MATERIAL) || RoomRows.are(header))
        && roomRow(row)) return;
    entry(row);
  }

  /** Sums of quantities, and rows that are no longer in force. */
  private boolean passedOver(Table.Row row) {
    String former = asides.says().former() ? asides.group() : null;
    String why = setAside.why(row, header, tagColumn, former);
    if (!why.isEmpty()) ledger.setAside(row, why);
    return !why.isEmpty();
  }

  private boolean roomRow(Table.Row row) {
    boolean any = rooms.add(row, header);
    if (any || tagColumn < 0) {
      ledger.rooms();
      ledger.row(row, any ? Fate.READ : Fate.CONTEXT);
    }
    return any || tagColumn < 0;
  }

  /** "Glass tile" over the marks themselves. */
  private String marksAreOf() {
    Header.Column own = header.columns().get(tagColumn);
    return own == null ? "" : own.text();
  }

  private String sheet() {
    return table.origin().sheet() == null ? "" : table.origin().sheet();
  }

  /** What stands over the table; "Table 1: glass tile" only over a table of what tiles are like. */
  private String heading() {
    if (table.origin().heading() != null) return table.origin().heading();
    boolean ofTiles =
        header.all(Header.Role.ATTRIBUTE).stream()
            .anyMatch(c -> c.attribute().id().equals("tile.size"));
    return ofTiles ? over : "";
  }

  private void entry(Table.Row written) {
    if (passedOver(written)) return;
    if (headed.item(written)) return;
    Table.Row row = rowReader.repeated(written, previous, tagColumn);
    Table.Cell tagCell = tagColumn < 0 ? null : row.at(tagColumn);
    String material = means.rowWords.material(header, row, tagColumn);
    String mark = tagCell == null ? "" : PlainText.line(tagCell.text()).strip();
    List<String> above = List.of(asides.group(), asides.title(), marksAreOf(), sheet(), heading());
    RowGlass.Judged glass = rowGlass.of(header, row, mark, material, above);
    boolean marked =
        tagCell != null && !tagCell.text().isBlank() && !vocabulary.list("empty").matches(mark);
    boolean numbered = marked && ItemRows.isNumber(tagCell.text());
    String called = marked && !numbered ? "" : items.named(material);
    boolean line = !called.isEmpty() && tagColumn >= 0;
    if (line && ItemRows.countsLines(called, row, table.rows(), tagColumn)) called = "";
    boolean item =
        numbered && (!called.isEmpty() || counts && !(glass.own() && items.isTile(material)));
    boolean tagged = marked && !item;
    if (!tagged && material.isBlank()) {
      ledger.unknown(written, header);
      gaps.add(
          new Document.Gap(
              table.origin(row.cells().get(0)),
              "row " + row.number() + " has neither tag nor material; not taken for an entry"));
      return;
    }
    boolean beside =
        !glass.own() || !items.isTile(material) || !tagged && !marks.named(row, tagCell).isEmpty();
    if (!tagged && !rows.isEmpty() && beside && called.isEmpty()) {
      ledger.row(written, Fate.CONTEXT);
      asides.remarkOnAll(written, header, marks.named(written, null));
      return;
    }
    if (!tagged && glass.is() && called.isEmpty()) {
      gaps.add(
          new Document.Gap(
              table.origin(row.cells().get(0)),
              "row " + row.number() + " is glass tile without a tag; named by its description"));
    }
    String named = tagged ? "" : called;
    String text = tagged ? means.once(tagCell.text()) : row.cells().get(0).text();
    Origin origin = table.origin(tagged ? tagCell : row.cells().get(0)).withText(text);
    boolean read = glass.is() || !glass.decided();
    List<String> tags =
        tagged
            ? marks.of(text, material, origin)
            : List.of(named.isEmpty() ? RowMarks.shortened(material) : named);
    if (!read) ledger.setAside(written, "not glass tile: " + glass.evidence());
    ledger.tags(tags);
    if (item) marksOfItems.put(PlainText.line(tagCell.text()).strip(), tags);
    List<Statement> said =
        read ? statements.of(row, glass.decided(), written, previous, asides.says()) : List.of();
    Map<String, Origin> blanks = read ? statements.blanks(row, cards) : Map.of();
    for (String tag : tags) {
      // "GT-101, CT-202": of letters that a legend explains, each says it of its own tile.
      RowGlass.Judged own =
          tags.size() == 1 ? glass : rowGlass.of(header, row, tag, material, above);
      rows.add(
          new ScheduleRow(
              tag,
              tagged || !named.isEmpty(),
              own.is(),
              own.decided(),
              own.evidence(),
              origin,
              said,
              blanks));
    }
    previous = row;
  }
}
