package clearbed.recognise.schedule.card;

import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.cell.GlassTest;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A table that gives the properties of a tile one to a row: "What it is | Cast glass", "Size |
 * ...", under the title of a card that names the tile, or beside a column of tags that each run
 * over several rows. It is read as a title with paragraphs.
 */
public final class PropertySheet {
  /** Fewer rows whose first words name an attribute make no property sheet. */
  private static final int FEWEST = 3;

  /** Of a table that stands under the mark of what it describes. */
  private static final int FEWEST_OF_CARD = 2;

  /** What a tile is stands in its first row, below the heading of the columns. */
  private static final int FIRST_ROWS = 2;

  /** The first rows tell: of long schedules the others would take time. */
  private static final int SEARCHED = 60;

  private static final int LONGEST_NAME = 40;

  /** Before the mark in "2.3 GT-1 Washbasin wall". */
  private static final Pattern NUMBERED = Pattern.compile("(?:\\d{1,2}(?:\\.\\d{1,2})*\\.?\\s+)?");

  /** What a card calls a property. */
  private static final Pattern NAME = Pattern.compile("\\p{L}[^\\d.;]{1,39}");

  private static final Pattern NAMED =
      Pattern.compile(
          "\\p{L}{3,14} (?:(?i:no)\\.?"
              + " ?)?(\\S{2,10})(?:\\s*(?:[|:,\u2013\u2014]|\\s-)\\s+(.{3,80}))?");

  /**
   * What a property sheet says.
   *
   * @param paragraphs a title for each tile, and a paragraph for each of its properties
   * @param rows that schedule the tiles; what they state is in the paragraphs
   */
  public record Sheet(List<Paragraph> paragraphs, List<ScheduleRow> rows) {
    public boolean isEmpty() {
      return paragraphs.isEmpty();
    }
  }

  public static final Sheet NONE = new Sheet(List.of(), List.of());

  private final Vocabulary vocabulary;
  private final GlassTest glassTest;

  public PropertySheet(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.glassTest = new GlassTest(vocabulary);
  }

  /**
   * What the table says; empty when it is no property sheet.
   *
   * @param heading that it stands under; empty when there is none
   */
  public Sheet read(Table table, String heading) {
    TagFinder.TagsAt over = TagFinder.firstTags(heading);
    boolean card = over != null && NUMBERED.matcher(heading).region(0, over.start()).matches();
    int fewest = card ? FEWEST_OF_CARD : FEWEST;
    boolean ofPairs = PropertyPairs.are(table, columns(table), vocabulary, this::isName);
    int names = isCard(table) ? columns(table).getMin() : ofPairs ? 0 : nameColumn(table, fewest);
    if (names < 0 || isTypesAcross(table, names, ofPairs)) return NONE;
    boolean tagged = table.rows().stream().anyMatch(row -> tag(row, names, ofPairs) != null);
    if (!tagged && over == null) return NONE;
    List<Paragraph> out = new ArrayList<>();
    List<ScheduleRow> rows = new ArrayList<>();
    Map<String, String> said = said(table, names, ofPairs);
    if (!tagged) {
      Table.Cell first = table.rows().get(0).cells().get(0);
      title(out, table, first, heading);
      String words = heading + " " + said.getOrDefault("", "");
      for (String tag : over.tags()) rows.add(row(tag, words, table.origin(first)));
    }
    String last = "";
    for (Table.Row row : table.rows()) {
      Table.Cell tag = tag(row, names, ofPairs);
      if (tag != null && !mark(tag).equals(last)) {
        last = mark(tag);
        title(out, table, tag, tag.column() == names ? card(row, names) : last);
        rows.add(row(last, said.getOrDefault(last, ""), table.origin(tag)));
      }
      if (tag != null && tag.column() == names) continue;
      int second = PropertyPairs.SECOND;
      boolean pair = ofPairs && row.at(second) != null;
      // "Item | GT-1" is the title.
      int from = tag != null && tag.column() == 1 ? second : 0;
      int to = tag != null && tag.column() > second ? second : Integer.MAX_VALUE;
      if (from == 0) property(out, table, row, names, 0, pair ? second : Integer.MAX_VALUE);
      if (pair && to > second) property(out, table, row, second, second, to);
    }
    return new Sheet(out, rows);
  }

  private ScheduleRow row(String tag, String words, Origin origin) {
    return ScheduleRow.told(tag, words, glassTest.of(words), origin);
  }

  /** The first properties of each tile by its tag, which say what it is; of one without by "". */
  private Map<String, String> said(Table table, int names, boolean ofPairs) {
    Map<String, List<String>> first = new HashMap<>();
    String last = "";
    for (Table.Row row : table.rows()) {
      Table.Cell tag = tag(row, names, ofPairs);
      if (tag != null) last = mark(tag);
      Table.Cell value = row.at(names + 1);
      if (value == null || value.text().isBlank() || isLook(row.at(names))) continue;
      List<String> said = first.computeIfAbsent(last, any -> new ArrayList<>());
      if (said.size() < FIRST_ROWS) said.add(value.text().strip());
    }
    Map<String, String> out = new HashMap<>();
    first.forEach((tag, said) -> out.put(tag, String.join("; ", said) + "; "));
    return out;
  }

  /** Slate may be a colour. */
  private boolean isLook(Table.Cell name) {
    return name != null && vocabulary.list("schedule.looks").matches(name.text().strip());
  }

  private static void title(List<Paragraph> out, Table table, Table.Cell cell, String words) {
    Origin at = table.origin(cell).withText(words);
    out.add(new Paragraph(at, "", 2, -1, words, Paragraph.Region.BODY));
  }

  /**
   * @param names the column of the name
   * @param from the first column that belongs to it
   * @param to the column behind the last
   */
  private static void property(
      List<Paragraph> out, Table table, Table.Row row, int names, int from, int to) {
    Table.Cell name = row.at(names);
    List<String> said = new ArrayList<>();
    for (Table.Cell cell : row.cells()) {
      if (cell.column() < from || cell.column() >= to) continue;
      if (cell.column() > names && cell.hasOwnWords()) said.add(cell.text().strip());
      Paragraph.remark(table, cell).ifPresent(out::add);
    }
    if (said.isEmpty()) return;
    String of = name == null ? "" : name.text().strip().replaceAll("[:?]+$", "");
    String text = of.isEmpty() ? String.join("; ", said) : of + ": " + String.join("; ", said);
    Table.Cell at = name == null ? row.cells().get(0) : name;
    out.add(Paragraph.body(table.origin(at).withText(text), text));
  }

  /** "GT-1 | Glass mosaic, showers" over its properties, and GT-2 below them. */
  private String card(Table.Row row, int names) {
    StringBuilder out = new StringBuilder();
    for (Table.Cell cell : row.cells()) {
      if (cell.column() >= names && cell.hasOwnWords())
        out.append(out.isEmpty() ? "" : " ").append(titled(cell));
    }
    return out.toString();
  }

  private Table.Cell tag(Table.Row row, int names, boolean ofPairs) {
    for (Table.Cell cell : row.cells()) {
      if (cell.column() <= names && !mark(cell).isEmpty()) return cell;
    }
    return ofPairs ? PropertyPairs.tag(row, vocabulary, this::mark) : null;
  }

  /** "GT-1" of a cell, also of "Card GT-1" and "FICHE V.01"; empty where it is none. */
  private String mark(Table.Cell cell) {
    String text = cell.text().strip();
    if (Tags.isMark(text, vocabulary)) return text;
    Matcher m = NAMED.matcher(text);
    return m.matches() && Tags.isMark(m.group(1), vocabulary) ? m.group(1) : "";
  }

  /** "CARD GT-1 | GLASS TILE | Lobby" without the word for what it is. */
  private String titled(Table.Cell cell) {
    String text = cell.text().strip();
    if (mark(cell).isEmpty()) return text;
    Matcher m = NAMED.matcher(text);
    return m.matches() ? (m.group(1) + " " + (m.group(2) == null ? "" : m.group(2))).strip() : text;
  }

  private boolean isName(Table.Cell cell) {
    String words = cell.text().strip().replaceAll("[:?]+$", "");
    return words.length() <= LONGEST_NAME && HeadingWords.named(vocabulary, words) != null;
  }

  /**
   * "STN-1 | Limestone ledge" over "Family | Stone slab" and "Piece | 3/4 in thick", and maybe more
   * such below: nothing in it is said of other tiles, whatever the names are.
   */
  private boolean isCard(Table table) {
    IntSummaryStatistics columns = columns(table);
    int first = columns.getMin();
    if (columns.getCount() == 0 || columns.getMax() != first + 1) return false;
    if (table.rows().size() > SEARCHED || !isMarked(table.rows().get(0), first)) return false;
    int marks = 0;
    int names = 0;
    for (Table.Row row : table.rows()) {
      Table.Cell cell = row.at(first);
      if (cell == null || cell.text().isBlank()) continue;
      String text = cell.text().strip();
      if (isMarked(row, first)) marks++;
      else if (NAME.matcher(text).matches()) names++;
      else return false;
    }
    return names >= FEWEST_OF_CARD * marks;
  }

  private boolean isMarked(Table.Row row, int first) {
    Table.Cell cell = row.at(first);
    return cell != null && Tags.isMark(cell.text().strip(), vocabulary);
  }

  /** The column of names of attributes, of few others; -1 when there is none. */
  private int nameColumn(Table table, int fewest) {
    IntSummaryStatistics columns = columns(table);
    if (columns.getCount() == 0) return -1;
    // Beside the names there are few columns.
    for (int column = columns.getMin(); column <= columns.getMin() + 1; column++) {
      if (columns.getMax() - column >= 3) continue;
      int filled = 0;
      int known = 0;
      for (Table.Row row : table.rows().subList(0, Math.min(table.rows().size(), SEARCHED))) {
        Table.Cell cell = row.at(column);
        if (cell == null || cell.text().isBlank() || cell.continued()) continue;
        filled++;
        if (isName(cell)) known++;
      }
      if (known >= fewest && known * 5 >= filled * 2) return column;
    }
    return -1;
  }

  /** Of the columns that hold something. */
  private static IntSummaryStatistics columns(Table table) {
    return table.rows().stream()
        .flatMap(row -> row.cells().stream())
        .filter(cell -> !cell.text().isBlank())
        .mapToInt(Table.Cell::column)
        .summaryStatistics();
  }

  /** Types side by side are a turned schedule. */
  private boolean isTypesAcross(Table table, int names, boolean ofPairs) {
    return table.rows().stream()
        .limit(2)
        .anyMatch(
            row -> {
              Table.Cell own = tag(row, names, ofPairs);
              return row.cells().stream()
                  .filter(cell -> cell.column() > names)
                  .filter(cell -> own == null || cell.column() != own.column())
                  .anyMatch(cell -> Tags.isMark(cell.text().strip(), vocabulary));
            });
  }
}
