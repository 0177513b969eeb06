package clearbed.recognise.schedule;

import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Placed;
import clearbed.model.document.Table;
import clearbed.model.report.Fate;
import clearbed.recognise.statement.FigureGaps;
import clearbed.recognise.statement.LimitFinder;
import clearbed.recognise.statement.Statement;
import clearbed.recognise.statement.TagList;
import clearbed.recognise.statement.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** One pass down the rows of a grid. */
final class ScheduleWalk {
  /** A heading stands among so many rows from the top of a grid, */
  private static final int SEARCHED = 60;

  /**
   * or so close below a gap, or it repeats an earlier one: rows of data are not searched for it.
   */
  private static final int NEAR_START = 6;

  private static final Pattern NOTE =
      Pattern.compile(
          "(?i)^(?:(?:general |sheet |schedule )?(?:notes?|remarks|legend)\\b.*|\\(?\\d{1,2}[.)]\\s.*|[A-Z][.)]\\s.*|\\*.*)");

  /** As bills count their groups. */
  private static final Pattern GROUP_NUMBER =
      Pattern.compile("[A-Z]{0,3}\\d{0,4}(?:[-./]\\d{1,4}){0,3}[.)]?");

  /** Number, mark, description and what is counted. */
  private static final int COLUMNS_OF_A_BILL = 4;

  private static final String BETWEEN_ITEMS = ",? and |, | & ";

  private static final Pattern OF_ITEMS =
      Pattern.compile(
          "(?i:items?) ((?:[A-Z]|\\d{1,3})(?:(?:" + BETWEEN_ITEMS + ")(?:[A-Z]|\\d{1,3}))*):\\s+");

  private static final Pattern PARTED = Pattern.compile(";\\s+");

  /** Fewer parts describe no work. */
  private static final int PARTS = 3;

  /** A title that is longer may be a note as well, in characters. */
  private static final int LONGEST_NAMELESS = 50;

  private static final int LONGEST_TITLE = 100;
  private static final Pattern SENTENCE = Pattern.compile("[;.](?:\\s|$)");

  private static final Pattern SECTION =
      Pattern.compile("(?:(?i:division|section) )?\\d\\d[ -]?\\d\\d[ -]?\\d\\d(?:\\.\\d\\d)?");

  private static final Pattern TOTAL =
      Pattern.compile("(?:sub-?|grand )?totals?\\b.{0,40}|sum\\b.{0,20}", Pattern.CASE_INSENSITIVE);

  /** Rows whose tags others may name. */
  private static final int KEYS = 400;

  /** Rows among which a heading in words of its own is looked for. */
  private static final int FIRST = 60;

  private final ScheduleFinder means;
  private final Vocabulary vocabulary;
  private final RowReader rowReader;
  private final Table table;
  private final String family;
  private final String over;
  private final MarkEvidence document;
  private final CalledCodes codes;
  private final List<ScheduleRow> rows = new ArrayList<>();
  private final List<RoomUse> rooms = new ArrayList<>();
  private final List<Paragraph> notes = new ArrayList<>();
  private final List<Document.Gap> gaps = new ArrayList<>();
  private final Table places;
  private final Map<List<Integer>, List<Header.Column>> blankColumns = new HashMap<>();
  private Header header;
  private final Placed.Packer<Statement> packer;
  private LaterSchedule later;
  private int tagColumn = -1;

  /** Of the tags of its first rows. */
  private final Set<String> keys = new HashSet<>();

  private String group = "";
  private String title = "";
  private final Set<String> headingWords = new HashSet<>();

  /** Index of the row behind the last gap. */
  private int blockStart;

  private int lastRow;
  private Table.Row previous;
  private final NotedUnits units;
  private GroupRows.Group groupSays = GroupRows.Group.NOTHING;
  private final RowGlass rowGlass;
  private final ItemRows items;

  /** True where the numbers of the rows count items, and the tiles have their marks in words. */
  private boolean counts;

  private final BillHeads heads;

  /** The tiles of such rows, by their numbers. */
  private final Map<String, List<String>> marksOfItems = new HashMap<>();

  /** True where lines without a number describe the tiles of the counted items below them. */
  private boolean headed;

  /** The last such line; null before the first. */
  private ScheduleRow head;

  private boolean schedule;

  /** True where each row is a card. */
  private boolean cards;

  private final TableLedger ledger;

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
    this.places =
        new Table(table.origin(), List.of(), table.sheet(), table.turned(), table.apart());
    this.family = means.family(over);
    this.over = over;
    this.rowGlass = new RowGlass(means);
    this.items = new ItemRows(vocabulary);
    this.heads = new BillHeads(vocabulary);
    this.ledger = new TableLedger(table, means.traces);
    this.packer = new Placed.Packer<>(ScheduleFinder.PLACE, table.rows().size());
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
        remarks(row);
        continue;
      }
      if (row.number() > lastRow + 1) blockStart = i;
      boolean far = i > SEARCHED && i > blockStart + NEAR_START && !repeatsHeading(row);
      Header found =
          isData(row) || i < from || far
              ? null
              : means.headingRows.at(all, i, header != null || i > FIRST, family());
      if (found != null) {
        start(found, all, i);
        for (int r = i; r < i + found.rows(); r++) {
          all.get(r).cells().forEach(cell -> headingWords.add(cell.text().strip()));
          ledger.row(all.get(r), Fate.CONTEXT);
          remarks(all.get(r));
        }
        i += found.rows() - 1;
      } else {
        row(row);
      }
      lastRow = row.number();
    }
    notes.replaceAll(this::ofItems);
    return new ScheduleFinder.Result(
        rows, rooms, notes, FigureGaps.shortened(gaps), schedule, List.of(ledger));
  }

  /** "Items A and B: movement joints ..." is said of the tiles of these items. */
  private Paragraph ofItems(Paragraph note) {
    Matcher m = OF_ITEMS.matcher(note.text());
    if (marksOfItems.isEmpty() || !m.lookingAt()) return note;
    List<String> marks = new ArrayList<>();
    for (String number : m.group(1).split(BETWEEN_ITEMS)) {
      List<String> of = marksOfItems.get(number.strip());
      if (of == null) return note;
      marks.addAll(of);
    }
    String words = String.join(", ", marks) + ": " + note.text().substring(m.end());
    return Paragraph.body(note.origin(), words);
  }

  /** Names of what cards say, which head the columns. */
  void heads(List<Table.Row> names) {
    cards = true;
    for (Table.Row row : names) {
      ledger.row(row, Fate.CONTEXT);
      remarks(row);
    }
  }

  /** The heading again, as at the top of another page. */
  private boolean repeatsHeading(Table.Row row) {
    return header != null
        && row.cells().stream().map(cell -> cell.text().strip()).allMatch(headingWords::contains);
  }

  /** The part of the work that the table is about, by the heading over it or its title. */
  private String family() {
    return family.isEmpty() && !title.isEmpty() ? means.family(title) : family;
  }

  private boolean isData(Table.Row row) {
    return header != null
        && tagColumn >= 0
        && row.at(tagColumn) != null
        && means.areTags(row.at(tagColumn).text());
  }

  private void start(Header found, List<Table.Row> all, int at) {
    ledger.header(found);
    Header noting = units.of(found);
    int from = at + found.rows();
    header = document.under(noting, below(all, from));
    blankColumns.clear();
    group = "";
    groupSays = GroupRows.Group.NOTHING;
    previous = null;
    schedule = true;
    int taken = new MarkColumn(means, table).of(found, all, at + found.rows());
    tagColumn = codes.marks(table, below(all, from), found, taken);
    if (tagColumn != taken) header = header.marked(tagColumn, taken);
    header = codes.calling(table, below(all, from), header, tagColumn);
    keys.clear();
    if (tagColumn >= 0) keys(below(all, from));
    headed = tagColumn >= 0 && heads.are(below(all, from), tagColumn);
    head = null;
    counts = tagColumn >= 0 && items.areItems(below(all, from), tagColumn);
    if (table.turned()) title(found, all.subList(at + found.rows(), all.size()));
    later = new LaterSchedule(places, header, tagColumn, means::late, packer);
  }

  /** What the tag column calls the first rows. */
  private void keys(List<Table.Row> below) {
    for (Table.Row row : below.subList(0, Math.min(below.size(), KEYS))) {
      Table.Cell cell = row.at(tagColumn);
      if (cell != null && means.isTag(cell.text())) keys.add(Tags.key(cell.text().strip()));
    }
  }

  /** Turned round, what stood in a line of its own heads a column of nothing. */
  private void title(Header found, List<Table.Row> below) {
    for (Header.Column column : found.columns().values()) {
      boolean heads =
          below.stream()
              .map(row -> row.at(column.index()))
              .allMatch(cell -> cell == null || cell.continued() || cell.text().isBlank());
      if (heads && !SENTENCE.matcher(column.text()).find())
        title = (title + " " + column.text()).trim();
    }
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
      if (filled.size() <= 2) title(filled);
      else filled.forEach(this::note);
      remarks(row);
      return;
    }
    String mark = headed && single ? heads.mark(row) : "";
    if (!mark.isEmpty()) {
      head(row, mark);
      return;
    }
    boolean group = !single && isCountedGroup(filled);
    if (group || single && !means.isTag(filled.get(0).text())) {
      ledger.row(row, Fate.CONTEXT);
      aside(row, filled.get(filled.size() - 1));
      remarks(row);
      return;
    }
    if (NOTE.matcher(filled.get(0).text().trim()).matches()
        && filled.size() <= 2
        && filled.get(filled.size() - 1).text().length() > 30) {
      ledger.row(row, Fate.CONTEXT);
      note(filled.get(filled.size() - 1));
      remarks(row);
      return;
    }
    if (header.all(Header.Role.SURFACE).size() >= 1
        && (!header.has(Header.Role.MATERIAL) || namesRooms())
        && roomRow(row)) return;
    entry(row);
  }

  /**
   * "24.02 | Glass tile", across the columns of a bill or with none of its marks: the number is
   * that of the group.
   */
  private boolean isCountedGroup(List<Table.Cell> filled) {
    if (filled.size() != 2 || !GROUP_NUMBER.matcher(filled.get(0).text().strip()).matches())
      return false;
    Table.Cell title = filled.get(1);
    boolean unmarked =
        tagColumn >= 0
            && filled.stream().noneMatch(c -> c.column() == tagColumn)
            && header.columns().size() >= COLUMNS_OF_A_BILL;
    return (title.columnSpan() > 1 || unmarked) && !means.isTag(title.text()) && !title.continued();
  }

  /** "Room | Name | Floor | Walls", "Unit type | Room | Floor | Walls": neither is a product's. */
  private boolean namesRooms() {
    boolean rooms =
        header.all(Header.Role.ATTRIBUTE).stream()
            .anyMatch(c -> c.attribute().id().equals("location.room"));
    return rooms
        && header.all(Header.Role.SURFACE).size() >= 2
        && (!header.has(Header.Role.TAG)
            || header.all(Header.Role.MATERIAL).stream()
                .allMatch(c -> c.text().toLowerCase(Locale.ROOT).contains("name")));
  }

  /** Comments on cells that are no entry's. */
  private void remarks(Table.Row row) {
    for (Table.Cell cell : row.cells()) Paragraph.remark(table, cell).ifPresent(notes::add);
  }

  private void title(List<Table.Cell> filled) {
    filled.forEach(cell -> units.note(cell.text()));
    for (Table.Cell cell : filled) {
      boolean note = NOTE.matcher(cell.text().trim()).matches();
      boolean sentence =
          cell.text().length() > LONGEST_TITLE || SENTENCE.matcher(cell.text()).find();
      if (note || cell.text().length() > LONGEST_NAMELESS) note(cell);
      if (!note && !sentence) title = (title + " " + cell.text()).trim();
    }
  }

  /** A row with one text: a group heading between rows, or a note below them. */
  private void aside(Table.Row row, Table.Cell cell) {
    String text = cell.text().trim();
    if (counts && isDescription(text)) {
      group = PlainText.line(text).strip();
      Origin origin = table.origin(cell);
      groupSays = means.groupRows.describing(rowReader.described(text, origin));
      return;
    }
    boolean noteLike =
        text.length() > 45
            || text.endsWith(".")
            || NOTE.matcher(text).matches()
            || (row.number() > lastRow + 1 && text.length() > 25);
    if (noteLike) note(cell);
    else {
      group = text;
      groupSays = means.groupRows.of(text, table.origin(cell));
    }
  }

  /** "Glass mosaic; paper-faced sheets; bedding in white C2TE; ..." over the items of a bill. */
  private boolean isDescription(String text) {
    String[] parts = PARTED.split(PlainText.line(text));
    return parts.length >= PARTS && means.known(parts[0]).result().decided();
  }

  private void note(Table.Cell cell) {
    units.note(cell.text());
    notes.add(Paragraph.body(table.origin(cell), cell.text()));
  }

  private boolean roomRow(Table.Row row) {
    String room = means.rowWords.room(header, row);
    String exposure = means.rowWords.exposure(header, row);
    boolean any = false;
    for (Header.Column column : header.all(Header.Role.SURFACE)) {
      Table.Cell cell = row.at(column.index());
      if (cell == null) continue;
      Set<String> tags = LimitFinder.tags(PlainText.of(cell.text()));
      if (vocabulary.taught().isTag(cell.text())) tags.add(PlainText.line(cell.text()));
      for (String tag : tags) {
        rooms.add(new RoomUse(tag, room, exposure, column.surface(), table.origin(cell)));
        any = true;
      }
    }
    if (any || tagColumn < 0) {
      ledger.rooms();
      ledger.row(row, any ? Fate.READ : Fate.CONTEXT);
    }
    return any || tagColumn < 0;
  }

  /** Sums of quantities, and rows that are no longer in force. */
  private boolean passedOver(Table.Row row) {
    List<Table.Cell> filled = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
    boolean total =
        filled.stream().limit(2).anyMatch(c -> TOTAL.matcher(c.text().trim()).matches());
    if (total) ledger.setAside(row, "a row of totals");
    if (total) return true;
    Table.Cell mark = tagColumn < 0 ? null : row.at(tagColumn);
    // "Section 09 30 20 | Glass tiling" stands over keynotes of that section, and is no tile.
    boolean section = mark != null && SECTION.matcher(PlainText.line(mark.text())).matches();
    if (section) ledger.setAside(row, "the title of a section");
    if (section) return true;
    String former = groupSays.former() ? group : former(filled);
    if (!former.isEmpty()) ledger.setAside(row, "no longer in force: " + former);
    return !former.isEmpty();
  }

  private String former(List<Table.Cell> filled) {
    for (Table.Cell cell : filled) {
      Header.Column c = header.columns().get(cell.column());
      boolean free =
          c == null
              || c.role() == Header.Role.OTHER
              || c.role() == Header.Role.TAG
              || c.describes()
              || c.attribute() != null && c.attribute().id().equals("notes");
      if (free && vocabulary.list("schedule.struck").matches(PlainText.line(cell.text()).trim()))
        return PlainText.line(cell.text()).trim();
    }
    return "";
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

  /** A line that describes a tile by its mark, over the items that say where it goes. */
  private void head(Table.Row row, String mark) {
    if (passedOver(row)) return;
    String material = means.rowWords.material(header, row, tagColumn);
    RowGlass.Result glass = rowGlass.of(header, row, mark, material, List.of());
    boolean repeats = head != null && !glass.decided() && heads.repeats(row);
    if (repeats) glass = new RowGlass.Result(head.glass(), head.decided(), head.evidence());
    boolean read = glass.is() || !glass.decided();
    Origin origin = table.origin(row.cells().get(0)).withText(mark);
    if (!read) ledger.setAside(row, "not glass tile: " + glass.evidence());
    ledger.tags(List.of(mark));
    groupSays = GroupRows.Group.NOTHING;
    List<Statement> said = read ? statements(row, header, tagColumn, null) : List.of();
    if (read && repeats)
      said = packer.pack(means.groupRows.describing(head.statements()).with(said));
    head =
        new ScheduleRow(
            mark,
            true,
            glass.is(),
            glass.decided(),
            glass.evidence(),
            origin,
            said,
            Map.of(),
            false);
    rows.add(head);
  }

  /** An item under such a line; false where it is none. */
  private boolean item(Table.Row row) {
    Table.Cell number = row.at(tagColumn);
    if (number == null || !ItemRows.isNumber(number.text())) return false;
    if (!head.glass()) {
      ledger.setAside(row, "not glass tile: " + head.evidence());
      return true;
    }
    ledger.tags(List.of(head.tag()));
    ledger.columnless(row, header, tagColumn);
    List<Statement> said = statements(row, header, tagColumn, null);
    rows.add(head.withStatements(packer.pack(heads.of(table, row, header, said))));
    return true;
  }

  private void entry(Table.Row written) {
    if (passedOver(written)) return;
    if (head != null && item(written)) return;
    Table.Row row = rowReader.repeated(written, previous, tagColumn);
    Table.Cell tagCell = tagColumn < 0 ? null : row.at(tagColumn);
    String material = means.rowWords.material(header, row, tagColumn);
    String mark = tagCell == null ? "" : PlainText.line(tagCell.text()).strip();
    RowGlass.Result glass =
        rowGlass.of(header, row, mark, material, List.of(group, title, sheet(), heading()));
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
        !glass.own() || !items.isTile(material) || !tagged && !named(row, tagCell).isEmpty();
    if (!tagged && !rows.isEmpty() && beside && called.isEmpty()) {
      remarkOnAll(written);
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
            ? tags(text, material, origin)
            : List.of(named.isEmpty() ? shortened(material) : named);
    if (!read) ledger.setAside(written, "not glass tile: " + glass.evidence());
    ledger.tags(tags);
    if (item) marksOfItems.put(PlainText.line(tagCell.text()).strip(), tags);
    List<Statement> statements = read ? statements(row, glass.decided(), written) : List.of();
    Map<String, Origin> blanks = read ? blanks(row) : Map.of();
    for (String tag : tags) {
      rows.add(
          new ScheduleRow(
              tag,
              tagged || !named.isEmpty(),
              glass.is(),
              glass.decided(),
              glass.evidence(),
              origin,
              statements,
              blanks,
              false));
    }
    previous = row;
  }

  /**
   * The tiles of the table that the other cells of a row name; "sample areas for GF-01 to GF-03" is
   * none itself.
   */
  private Set<String> named(Table.Row row, Table.Cell own) {
    Set<String> out = new LinkedHashSet<>();
    if (keys.isEmpty()) return out;
    for (Table.Cell cell : row.cells())
      if (cell != own && !cell.text().isBlank())
        for (String tag : LimitFinder.tags(PlainText.of(cell.text())))
          if (keys.contains(Tags.key(tag))) out.add(tag);
    return out;
  }

  /** A row without a tag among others that have one says something of all of them. */
  private void remarkOnAll(Table.Row row) {
    ledger.row(row, Fate.CONTEXT);
    // "Waterproofing | Membrane to EN 14891. Areas: GF-01, GM-01": all of the row is of those.
    Set<String> named = named(row, null);
    String of = named.isEmpty() ? "" : String.join(", ", named) + ": ";
    for (Table.Cell cell : row.cells()) {
      if (cell.text().isBlank() || cell.continued()) continue;
      Header.Column column = header.columns().get(cell.column());
      String under = column == null || column.text().isBlank() ? "" : column.text() + ": ";
      notes.add(
          Paragraph.body(table.origin(cell), (of.isEmpty() ? under : of) + cell.text().strip()));
    }
  }

  /** The empty cells under headers that are understood. */
  private Map<String, Origin> blanks(Table.Row row) {
    List<Header.Column> columns = rowReader.blankColumns(header, row);
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

  /** What an undecided row states is read when somebody asks for it. */
  private List<Statement> statements(Table.Row row, boolean decided, Table.Row written) {
    // Places that no number of a row and a column tells are not kept for later.
    if (decided
        || !table.apart().isEmpty()
        || rowReader.isUnusual(row)
        || !groupSays.statements().isEmpty()) {
      ledger.columnless(written, header, tagColumn);
      return groupSays.with(statements(row, header, tagColumn, previous));
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

  private List<Statement> statements(Table.Row row, Header under, int tags, Table.Row above) {
    return packer.pack(
        rowReader.statements(table, under, row, above, tags, means.memo, gaps, ledger::cell));
  }

  /** One cell may hold several tags: {@code GT-1, GT-2}, {@code GT-5 thru GT-8}. */
  private List<String> tags(String cell, String material, Origin origin) {
    // "M40 MG1" beside "Glass mosaic MG1": the section that it is in, and its mark.
    String last = cell.strip().replaceFirst("^.*\\s", "");
    boolean behind = !last.equals(cell.strip()) && ScheduleFinder.looksLikeTag(last);
    if (behind && Tags.key(last).equals(Tags.key(items.named(material)))) return List.of(last);
    TagList.Found list = TagList.inCell(cell);
    if (list != null && list.tags().size() > 1) {
      if (!list.unspelt().isEmpty()) gaps.add(TagList.gap(list.unspelt(), origin));
      return list.tags();
    }
    return means.tags(cell);
  }

  private String shortened(String material) {
    String text = material.replaceAll("\\s+", " ").trim();
    return text.length() <= 40 ? text : text.substring(0, 40).trim();
  }
}
