package clearbed.recognise;

import clearbed.base.Memo;
import clearbed.model.Document;
import clearbed.model.Fate;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import clearbed.model.Placed;
import clearbed.model.Table;
import clearbed.model.Unit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Finds the schedules on a grid of cells, wherever they stand, and the notes around them. */
final class ScheduleFinder {
  private static final Pattern TAG =
      Pattern.compile("[A-Z]{1,5}[- ./]?\\d{1,4}[A-Za-z]?(?:[-.]\\d{1,2})?|[A-Z]{2,4}-[A-Z]");
  private static final Pattern NOTE =
      Pattern.compile(
          "(?i)^(?:(?:general |sheet |schedule )?(?:notes?|remarks|legend)\\b.*|\\(?\\d{1,2}[.)]\\s.*|[A-Z][.)]\\s.*|\\*.*)");

  private static final Placed.Place<Statement> PLACE =
      new Placed.Place<>(Statement::origin, Statement::movedTo);

  /** What was found on one grid. */
  record Result(
      List<ScheduleRow> rows,
      List<RoomUse> rooms,
      List<Paragraph> notes,
      List<Document.Gap> gaps,
      boolean schedule,
      List<TableLedger> ledgers) {

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

  private final Vocabulary vocabulary;
  private final RowReader rowReader;
  private final StatementFinder finder;
  private final GlassTest glassTest;

  // By their words, as tables have many in common.
  private final Memo<String, Header.Column> columns = Memo.ofTexts();
  private final Memo<String, Material> materials = Memo.ofTexts();
  private final Memo<String, String> words = Memo.ofTexts();
  private final CellMemo memo = new CellMemo();
  private final SideBySide sideBySide;

  ScheduleFinder(Vocabulary vocabulary, StatementFinder finder) {
    this.vocabulary = vocabulary;
    this.rowReader = new RowReader(vocabulary, finder);
    this.finder = finder;
    this.glassTest = new GlassTest(vocabulary);
    this.sideBySide = new SideBySide(vocabulary, columns);
  }

  /** The words are interned: many rows say the same. */
  private record Material(String words, GlassTest.Result result) {}

  private Material known(String words) {
    return materials.get(words, () -> new Material(interned(words), glassTest.of(words)));
  }

  /** The equal text that is held already, or this one from now on. */
  private String interned(String text) {
    return words.get(text, () -> text);
  }

  static boolean looksLikeTag(String text) {
    return TAG.matcher(text.trim()).matches();
  }

  /** The same of a list or a range of tags. */
  private static boolean looksLikeTags(String text) {
    return looksLikeTag(text) || TagList.inCell(text) != null;
  }

  /**
   * @param heading that the table stands under; empty when there is none
   * @param document what its figures show of the way they are written
   */
  Result find(Table table, String heading, MarkEvidence document) {
    String family = finder.familyIn(heading);
    List<Result> results = new ArrayList<>();
    for (Table part : sideBySide.of(table)) results.add(findOne(part, family, document));
    return results.size() == 1 ? results.get(0) : Result.joined(results);
  }

  private Result findOne(Table table, String family, MarkEvidence document) {
    Result result = new Walk(table, family, document).run();
    boolean tagged =
        result.rows().stream().anyMatch(ScheduleRow::tagged) || !result.rooms().isEmpty();
    if (tagged || table.rows().size() < 4) return result;
    Table turned = Transposed.of(table);
    if (turned == null) return result;
    Result other = new Walk(turned, family, document).run();
    return tagsAcross(other) >= (result.schedule() ? 2 : 1) ? other : result;
  }

  /** Some line of a grid looks like a heading by chance; tags in the other direction do not. */
  private static long tagsAcross(Result turned) {
    return turned.rows().stream().filter(r -> r.tagged() && looksLikeTag(r.tag())).count();
  }

  private static final Pattern UNIT_NOTED =
      Pattern.compile(
          "\\b(?:dimensions|sizes|measurements)\\b[^.;]{0,20}\\b(?:in|are)\\s+(millimetres|millimeters|mm|inches)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern CENTRES_NOTED =
      Pattern.compile(
          "\\b(?:centres|centers|spacings?)\\b[^.;]{0,20}\\b(?:in|are)\\s+(metres|meters|feet|foot)\\b",
          Pattern.CASE_INSENSITIVE);

  /** What is cut short or passed over is not told of rows that are read so late. */
  private List<Statement> late(Table places, Header under, Table.Row row, int tagColumn) {
    return rowReader.statements(
        places, under, row, null, tagColumn, memo, new ArrayList<>(), RowReader.CellFates.NOBODY);
  }

  /** Schedules that were kept, with so many unread rows in all. */
  List<LaterSchedule> later(List<LaterSchedule.Marks> schedules, int rows) {
    Placed.Packer<Statement> packer = new Placed.Packer<>(PLACE, rows);
    return schedules.stream()
        .map(marks -> LaterSchedule.of(marks, vocabulary, this::late, packer))
        .toList();
  }

  /** One pass down the rows of a grid. */
  private final class Walk {
    private final Table table;
    private final String family;
    private final MarkEvidence document;
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
    private String group = "";
    private String title = "";
    private int lastRow;
    private Table.Row previous;
    private Unit noted;
    private Unit notedCentres;
    private boolean schedule;
    private final TableLedger ledger;

    /**
     * @param family part of the work that the heading over the table speaks of, or empty
     */
    Walk(Table table, String family, MarkEvidence document) {
      this.table = table;
      this.document = document;
      this.places = new Table(table.origin(), List.of(), table.sheet(), table.turned());
      this.family = family;
      this.ledger = new TableLedger(table);
      this.packer = new Placed.Packer<>(PLACE, table.rows().size());
    }

    Result run() {
      List<Table.Row> all = table.rows();
      for (int i = 0; i < all.size(); i++) {
        Table.Row row = all.get(i);
        Table.Row next = i + 1 < all.size() ? all.get(i + 1) : null;
        if (row.cells().stream().allMatch(c -> c.text().isBlank())) {
          remarks(row);
          continue;
        }
        Header found = isData(row) ? null : Header.at(vocabulary, row, next, columns);
        if (found != null) {
          start(found, all, i);
          for (int r = i; r < i + found.rows(); r++) {
            ledger.row(all.get(r), Fate.CONTEXT);
            remarks(all.get(r));
          }
          i += found.rows() - 1;
        } else {
          row(row);
        }
        lastRow = row.number();
      }
      return new Result(rows, rooms, notes, FigureGaps.shortened(gaps), schedule, List.of(ledger));
    }

    private boolean isData(Table.Row row) {
      return header != null
          && tagColumn >= 0
          && row.at(tagColumn) != null
          && looksLikeTags(row.at(tagColumn).text());
    }

    private void start(Header found, List<Table.Row> all, int at) {
      Header known = family.equals("movement") ? found.ofMovementJoints(vocabulary) : found;
      ledger.header(known);
      Header noting =
          noted == null
              ? known
              : known.withDefault(noted, notedCentres == null ? noted : notedCentres);
      int from = at + found.rows();
      header = document.under(noting, all.subList(Math.min(from, all.size()), all.size()));
      blankColumns.clear();
      group = "";
      previous = null;
      schedule = true;
      tagColumn = tagColumn(found, all, at + found.rows());
      later = new LaterSchedule(places, header, tagColumn, ScheduleFinder.this::late, packer);
    }

    private int tagColumn(Header found, List<Table.Row> all, int from) {
      int best = -1;
      long most = 0;
      for (Header.Column column : found.columns().values()) {
        boolean named =
            vocabulary
                .list("schedule.tag")
                .matches(column.text().toLowerCase(Locale.ROOT).replaceAll("[.:#]", "").trim());
        if (column.role() == Header.Role.SURFACE
            || (column.role() == Header.Role.ATTRIBUTE && !named)) continue;
        long tags =
            all.stream()
                .skip(from)
                .limit(60)
                .filter(
                    r -> r.at(column.index()) != null && looksLikeTags(r.at(column.index()).text()))
                .count();
        long score = tags * 2 + (named ? 1 : 0);
        if (score > most && (named || tags >= 2 || tags * 2 >= Math.min(60, all.size() - from))) {
          best = column.index();
          most = score;
        }
      }
      return best;
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
      if (single && !looksLikeTag(filled.get(0).text())) {
        ledger.row(row, Fate.CONTEXT);
        aside(row, filled.get(0));
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

    /** "Room | Name | Floor | Walls": there the name is the room's. */
    private boolean namesRooms() {
      boolean rooms =
          header.all(Header.Role.ATTRIBUTE).stream()
              .anyMatch(c -> c.attribute().id().equals("location.room"));
      return rooms
          && header.all(Header.Role.SURFACE).size() >= 2
          && header.all(Header.Role.MATERIAL).stream()
              .allMatch(c -> c.text().toLowerCase(Locale.ROOT).contains("name"));
    }

    /** Comments on cells that are no entry's. */
    private void remarks(Table.Row row) {
      for (Table.Cell cell : row.cells()) Paragraph.remark(table, cell).ifPresent(notes::add);
    }

    private void title(List<Table.Cell> filled) {
      filled.forEach(cell -> noteUnit(cell.text()));
      for (Table.Cell cell : filled) {
        if (cell.text().length() > 50 || NOTE.matcher(cell.text().trim()).matches()) note(cell);
        else title = (title + " " + cell.text()).trim();
      }
    }

    /** A row with one text: a group heading between rows, or a note below them. */
    private void aside(Table.Row row, Table.Cell cell) {
      String text = cell.text().trim();
      boolean noteLike =
          text.length() > 45
              || text.endsWith(".")
              || NOTE.matcher(text).matches()
              || (row.number() > lastRow + 1 && text.length() > 25);
      if (noteLike) note(cell);
      else group = text;
    }

    /** "Dimensions in millimetres unless noted" gives the unit of columns that name none. */
    private void noteUnit(String text) {
      Matcher c = CENTRES_NOTED.matcher(PlainText.of(text));
      if (c.find())
        notedCentres = c.group(1).toLowerCase(Locale.ROOT).startsWith("m") ? Unit.METRE : Unit.FOOT;
      Matcher m = UNIT_NOTED.matcher(PlainText.of(text));
      if (m.find())
        noted = m.group(1).toLowerCase(Locale.ROOT).startsWith("m") ? Unit.MILLIMETRE : Unit.INCH;
    }

    private void note(Table.Cell cell) {
      noteUnit(cell.text());
      notes.add(Paragraph.body(table.origin(cell), cell.text()));
    }

    private boolean roomRow(Table.Row row) {
      String room = rowReader.room(header, row);
      String exposure = rowReader.exposure(header, row);
      boolean any = false;
      for (Header.Column column : header.all(Header.Role.SURFACE)) {
        Table.Cell cell = row.at(column.index());
        if (cell == null) continue;
        for (String tag : LimitFinder.tags(PlainText.of(cell.text()))) {
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

    private void entry(Table.Row written) {
      Table.Row row = rowReader.repeated(written, previous, tagColumn);
      Table.Cell tagCell = tagColumn < 0 ? null : row.at(tagColumn);
      String material = rowReader.material(header, row, tagColumn);
      Glass glass = glass(row, material);
      boolean tagged =
          tagCell != null
              && !tagCell.text().isBlank()
              && !vocabulary.list("empty").matches(tagCell.text().trim());
      if (!tagged && material.isBlank()) {
        ledger.unknown(written, header);
        gaps.add(
            new Document.Gap(
                table.origin(row.cells().get(0)),
                "row " + row.number() + " has neither tag nor material; not taken for an entry"));
        return;
      }
      if (!tagged && glass.is()) {
        gaps.add(
            new Document.Gap(
                table.origin(row.cells().get(0)),
                "row " + row.number() + " is glass tile without a tag; named by its description"));
      }
      String text = tagged ? interned(tagCell.text()) : row.cells().get(0).text();
      Origin origin = table.origin(tagged ? tagCell : row.cells().get(0)).withText(text);
      boolean read = glass.is() || !glass.decided();
      List<String> tags = tagged ? tags(text, origin) : List.of(shortened(material));
      if (!read) ledger.setAside(written, "not glass tile: " + glass.evidence());
      ledger.tags(tags);
      List<Statement> statements = read ? statements(row, glass.decided(), written) : List.of();
      Map<String, Origin> blanks = read ? blanks(row) : Map.of();
      for (String tag : tags) {
        rows.add(
            new ScheduleRow(
                tag,
                tagged,
                glass.is(),
                glass.decided(),
                glass.evidence(),
                origin,
                statements,
                blanks));
      }
      previous = row;
    }

    /** The empty cells under headers that are understood. */
    private Map<String, Origin> blanks(Table.Row row) {
      List<Header.Column> columns = rowReader.blankColumns(header, row);
      if (columns.isEmpty()) return Map.of();
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
      if (decided || rowReader.isUnusual(row)) {
        ledger.columnless(written, header, tagColumn);
        return statements(row, header, tagColumn, previous);
      }
      ledger.undecided(written, header, tagColumn);
      return later.statements(sparing(row));
    }

    /** The same row; words that other rows have, too, are kept once. */
    private Table.Row sparing(Table.Row row) {
      List<Table.Cell> cells =
          row.cells().stream().map(c -> c.withText(interned(c.text()))).toList();
      return new Table.Row(row.number(), cells, row.hidden());
    }

    private List<Statement> statements(Table.Row row, Header under, int tags, Table.Row above) {
      return packer.pack(
          rowReader.statements(table, under, row, above, tags, memo, gaps, ledger::cell));
    }

    /** One cell may hold several tags: {@code GT-1, GT-2}, {@code GT-5 thru GT-8}. */
    private List<String> tags(String cell, Origin origin) {
      String text = PlainText.of(cell).trim().replaceAll("\\s+", " ");
      TagList.Found list = TagList.inCell(cell);
      if (list != null && list.tags().size() > 1) {
        if (!list.unspelt().isEmpty()) gaps.add(TagList.gap(list.unspelt(), origin));
        return list.tags();
      }
      if (looksLikeTag(text)) return List.of(text);
      List<String> parts = List.of(text.split("\\s*[,;&/]\\s*|\\s+and\\s+|\\n"));
      return parts.size() > 1 && parts.stream().allMatch(ScheduleFinder::looksLikeTag)
          ? parts
          : List.of(text);
    }

    private String shortened(String material) {
      String text = material.replaceAll("\\s+", " ").trim();
      return text.length() <= 40 ? text : text.substring(0, 40).trim();
    }

    private record Glass(boolean is, boolean decided, String evidence) {}

    private Glass glass(Table.Row row, String material) {
      String standard = rowReader.tileStandard(header, row);
      Material known = known(material);
      GlassTest.Result own = known.result();
      if (own.decided()) return new Glass(own.glass(), true, known.words());
      if (standard.contains("A137.2")) return new Glass(true, true, standard);
      if (standard.contains("A137.1")) return new Glass(false, true, standard);
      for (String around :
          List.of(
              group,
              title,
              table.origin().sheet() == null ? "" : table.origin().sheet(),
              table.origin().heading() == null ? "" : table.origin().heading())) {
        GlassTest.Result said = known(around).result();
        if (said.decided()) return new Glass(said.glass(), true, around);
      }
      return new Glass(false, false, material.isBlank() ? "no material stated" : known.words());
    }
  }
}
