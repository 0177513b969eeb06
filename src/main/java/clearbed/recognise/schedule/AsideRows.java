package clearbed.recognise.schedule;

import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.NotedUnits;
import clearbed.recognise.schedule.row.GroupRows;
import clearbed.recognise.text.PlainText;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Rows that are no entries: titles over a table, groups between its rows, notes and remarks. */
final class AsideRows {
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

  /** Fewer characters behind what looks like the number of a note are a cell of a row. */
  private static final int LONGEST_UNNOTED = 30;

  private final ScheduleFinder means;
  private final Table table;
  private final NotedUnits units;
  private final List<Paragraph> notes = new ArrayList<>();
  private String title = "";
  private String group = "";
  private GroupRows.Group says = GroupRows.Group.NOTHING;

  AsideRows(ScheduleFinder means, Table table, NotedUnits units) {
    this.means = means;
    this.table = table;
    this.units = units;
  }

  /** Below another heading no group goes on. */
  void start() {
    group = "";
    says = GroupRows.Group.NOTHING;
  }

  /** What a group says is not said of the rows below, which have a line of their own. */
  void saysNothing() {
    says = GroupRows.Group.NOTHING;
  }

  String title() {
    return title;
  }

  String group() {
    return group;
  }

  GroupRows.Group says() {
    return says;
  }

  /**
   * The notes of the table.
   *
   * @param marksOfItems the tiles of its items, by their numbers
   */
  List<Paragraph> notes(Map<String, List<String>> marksOfItems) {
    return notes.stream().map(note -> ofItems(note, marksOfItems)).toList();
  }

  /** "Items A and B: movement joints ..." is said of the tiles of these items. */
  private static Paragraph ofItems(Paragraph note, Map<String, List<String>> marksOfItems) {
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

  /**
   * "24.02 | Glass tile", across the columns of a bill or with none of its marks: the number is
   * that of the group.
   */
  boolean isCountedGroup(List<Table.Cell> filled, Header header, int tagColumn) {
    if (filled.size() != 2 || !GROUP_NUMBER.matcher(filled.get(0).text().strip()).matches())
      return false;
    Table.Cell title = filled.get(1);
    boolean unmarked =
        tagColumn >= 0
            && filled.stream().noneMatch(c -> c.column() == tagColumn)
            && header.columns().size() >= COLUMNS_OF_A_BILL;
    return (title.columnSpan() > 1 || unmarked)
        && !means.tagCells.isTag(title.text())
        && !title.continued();
  }

  /** A note that stands in a row of the table, behind its number or by itself. */
  boolean isNote(List<Table.Cell> filled) {
    return NOTE.matcher(filled.get(0).text().trim()).matches()
        && filled.size() <= 2
        && filled.get(filled.size() - 1).text().length() > LONGEST_UNNOTED;
  }

  /** Comments on cells that are no entry's. */
  void remarks(Table.Row row) {
    for (Table.Cell cell : row.cells()) Paragraph.remark(table, cell).ifPresent(notes::add);
  }

  void title(List<Table.Cell> filled) {
    filled.forEach(cell -> units.note(cell.text()));
    for (Table.Cell cell : filled) {
      boolean note = NOTE.matcher(cell.text().trim()).matches();
      boolean sentence =
          cell.text().length() > LONGEST_TITLE || SENTENCE.matcher(cell.text()).find();
      if (note || cell.text().length() > LONGEST_NAMELESS) note(cell);
      if (!note && !sentence) title = (title + " " + cell.text()).trim();
    }
  }

  /** Turned round, what stood in a line of its own heads a column of nothing. */
  void title(Header found, List<Table.Row> below) {
    for (Header.Column column : found.columns().values()) {
      boolean heads =
          below.stream()
              .map(row -> row.at(column.index()))
              .allMatch(cell -> cell == null || cell.continued() || cell.text().isBlank());
      if (heads && !SENTENCE.matcher(column.text()).find())
        title = (title + " " + column.text()).trim();
    }
  }

  /** A row with one text: a group heading between rows, or a note below them. */
  void aside(Table.Row row, Table.Cell cell, boolean counts, int lastRow) {
    String text = cell.text().trim();
    if (counts && isDescription(text)) {
      group = PlainText.line(text).strip();
      Origin origin = table.origin(cell);
      says = means.groupRows.describing(means.rowReader.described(text, origin));
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
      says = means.groupRows.of(text, table.origin(cell));
    }
  }

  /** "Glass mosaic; paper-faced sheets; bedding in white C2TE; ..." over the items of a bill. */
  private boolean isDescription(String text) {
    String[] parts = PARTED.split(PlainText.line(text));
    return parts.length >= PARTS && means.known(parts[0]).result().decided();
  }

  void note(Table.Cell cell) {
    units.note(cell.text());
    notes.add(Paragraph.body(table.origin(cell), cell.text()));
  }

  /** A row without a tag among others that have one says something of all of them. */
  void remarkOnAll(Table.Row row, Header header, Set<String> named) {
    // "Waterproofing | Membrane to EN 14891. Areas: GF-01, GM-01": all of the row is of those.
    String of = named.isEmpty() ? "" : String.join(", ", named) + ": ";
    for (Table.Cell cell : row.cells()) {
      if (cell.text().isBlank() || cell.continued()) continue;
      Header.Column column = header.columns().get(cell.column());
      String under = column == null || column.text().isBlank() ? "" : column.text() + ": ";
      notes.add(
          Paragraph.body(table.origin(cell), (of.isEmpty() ? under : of) + cell.text().strip()));
    }
  }
}
