package clearbed.recognise;

import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.UnitWords;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The rows of a table that schedules no tile, as clauses: "Improved mortar: Standard ANSI A118.15;
 * Colour white; Used for GT-1". Where marks of joints or mortars have a column of the tiles that
 * they are for, the tiles lead: "GT-1, GT-2 (dry): Spacing 16 ft; Width 1/4 in".
 */
final class RowText {
  private static final Pattern FOR =
      Pattern.compile("\\b(?:for|used?|tiles?|applies|where)\\b", Pattern.CASE_INSENSITIVE);

  /** {@code 645.611}, {@code 24.31.01 A}. */
  private static final Pattern POSITION =
      Pattern.compile("\\d{1,4}(?:\\.\\d{1,4}){1,3}(?: ?[A-Z])?");

  private static final Pattern UNIT =
      Pattern.compile("(.*?\\p{L}.*?)[\\s,(\\[]+(" + UnitWords.PATTERN + ")[)\\].]*");

  private static final Pattern FIGURE = Pattern.compile("\\d{1,4}(?:[.,/]\\d{1,4})?");

  private static final Pattern MARKED = Pattern.compile("^(?:" + Tags.MARK + ")[ ,:]");

  /** "Mortar contact with back of tile, least", in characters. */
  private static final int LONGEST_HEADING = 50;

  private final Table table;
  private final Vocabulary vocabulary;
  private final Table.Row names;

  /** Column of the tiles that the rows are for, or -1. */
  private final int tiles;

  RowText(Table table, Vocabulary vocabulary) {
    this.table = table;
    this.vocabulary = vocabulary;
    this.names = names(table);
    this.tiles = names == null ? -1 : tiles(table);
  }

  /** True when most of its rows name by tag the tiles that they are for. */
  boolean callsTiles() {
    return tiles >= 0;
  }

  /** "645.611 | GT-1 Glass mosaic ...": the number counts the work, and the mark is in the text. */
  static boolean hasPositions(Table table, Vocabulary vocabulary) {
    int positions = 0;
    int marked = 0;
    for (Table.Row row : table.rows()) {
      if (position(row) == null) continue;
      positions++;
      boolean mark =
          row.cells().stream()
              .anyMatch(c -> c.column() > 0 && opensWithMark(c.text().strip(), vocabulary));
      if (mark) marked++;
    }
    return positions > 0 && positions * 2 >= table.rows().size() && marked * 2 >= positions;
  }

  private static boolean opensWithMark(String text, Vocabulary vocabulary) {
    int end = endOfMark(text, vocabulary);
    // A column of marks by themselves is that of a schedule.
    return end > 0 && end < text.length();
  }

  /** Where the mark ends that a text opens with; 0 where it opens with none. */
  private static int endOfMark(String text, Vocabulary vocabulary) {
    Matcher m = MARKED.matcher(text);
    if (m.find()) return m.end() - 1;
    return vocabulary.taught().tagsIn(text).stream()
        .filter(hit -> hit.start() == 0)
        .mapToInt(Phrases.Hit::end)
        .max()
        .orElse(0);
  }

  /** "GT-1 - Glass mosaic" is said of GT-1. */
  private String led(String text) {
    int end = endOfMark(text, vocabulary);
    String rest = text.substring(end).replaceFirst("^[\\s:\u2013\u2014-]+", "");
    return end == 0 || rest.isEmpty() || Character.isDigit(rest.charAt(0))
        ? text
        : text.substring(0, end) + ": " + rest;
  }

  private static Table.Cell position(Table.Row row) {
    Table.Cell first =
        row.cells().stream().filter(c -> !c.text().isBlank()).findFirst().orElse(null);
    return first != null && POSITION.matcher(first.text().strip()).matches() ? first : null;
  }

  void into(List<Paragraph> running) {
    for (Table.Row row : table.rows()) add(row, running);
  }

  /** A first row of names without figures heads the columns; null when there is none. */
  private static Table.Row names(Table t) {
    if (t.rows().size() < 2 || t.rows().get(0).cells().size() < 3) return null;
    Table.Row first = t.rows().get(0);
    boolean heads =
        first.cells().stream()
            .allMatch(
                c -> !c.text().matches(".*\\d.*") && c.text().trim().length() < LONGEST_HEADING);
    return heads ? first : null;
  }

  /** "MJ-1 | GT-1, GT-2 (dry)": behind the mark the tags of other things, in most rows. */
  private static int tiles(Table t) {
    List<Table.Row> rows = t.rows().subList(1, t.rows().size());
    int columns = t.rows().get(0).cells().size();
    for (int column = 1; column < columns; column++) {
      int at = column;
      Table.Cell head = t.rows().get(0).at(column);
      // A column of sealants in a table of tiles has marks, too.
      if (head == null || !FOR.matcher(head.text()).find()) continue;
      long calls = rows.stream().filter(row -> calls(row, at)).count();
      if (calls * 3 >= rows.size() * 2L) return column;
    }
    return -1;
  }

  private static boolean calls(Table.Row row, int column) {
    Table.Cell first = row.at(0);
    Table.Cell cell = row.at(column);
    if (first == null || cell == null || !Tags.isMark(first.text().strip())) return false;
    TagFinder.TagsAt tags = TagFinder.firstTags(cell.text().strip());
    if (tags == null || tags.start() > 0) return false;
    TreeSet<String> prefixes = new TreeSet<>();
    tags.tags().forEach(tag -> prefixes.add(Tags.prefix(Tags.key(tag))));
    return !prefixes.contains(Tags.prefix(Tags.key(first.text().strip())));
  }

  private void add(Table.Row row, List<Paragraph> running) {
    Table.Row heads = row == names ? null : names;
    List<Table.Cell> filled = row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
    if (filled.isEmpty()) return;
    if (position(row) != null && filled.size() > 1) {
      String words =
          filled.stream()
              .skip(1)
              .map(c -> led(c.text().trim()))
              .reduce((a, b) -> a + "; " + b)
              .get();
      String number = filled.get(0).text().strip();
      running.add(
          new Paragraph(
              table.origin(filled.get(0)).withText(words),
              number,
              0,
              -1,
              words,
              Paragraph.Region.BODY));
      for (Table.Cell cell : row.cells()) Paragraph.remark(table, cell).ifPresent(running::add);
      return;
    }
    boolean called = heads != null && callsTiles() && calls(row, tiles);
    Table.Cell lead = called ? row.at(tiles) : filled.get(0);
    List<String> rest =
        filled.stream()
            .filter(c -> c != lead && c != filled.get(0))
            .map(c -> named(heads, c))
            .toList();
    String text = corner(heads, lead) + lead.text().trim();
    if (heads != null || !rest.isEmpty()) text = text.replaceAll(":$", "");
    if (!rest.isEmpty()) text += ": " + String.join("; ", rest);
    Table.Cell first =
        heads != null
            ? filled.get(0)
            : row.cells().stream().filter(c -> !c.text().isBlank()).findFirst().orElseThrow();
    running.add(Paragraph.body(table.origin(first).withText(text), text));
    for (Table.Cell cell : row.cells()) Paragraph.remark(table, cell).ifPresent(running::add);
  }

  /** "Waiting time" over "laying to grouting" says what the figures beside it are of. */
  private String corner(Table.Row heads, Table.Cell lead) {
    Table.Cell corner = heads == null ? null : heads.at(lead.column());
    boolean measures =
        corner != null && vocabulary.list("schedule.measured").matches(corner.text().strip());
    return measures ? corner.text().strip() + ", " : "";
  }

  /** "Gap mm" over "2" is a gap of 2 mm. */
  private String named(Table.Row heads, Table.Cell cell) {
    String name = of(heads, name(heads, cell));
    String value = cell.text().trim();
    Matcher unit = UNIT.matcher(name.trim());
    return unit.matches() && FIGURE.matcher(value).matches()
        ? unit.group(1) + " " + value + " " + unit.group(2)
        : name + value;
  }

  /** "Class" beside a column that is headed "Sealant" is of the sealant, whatever else it names. */
  private String of(Table.Row heads, String name) {
    Table.Cell key = heads == null ? null : heads.at(0);
    String family = key == null || name.isEmpty() ? "" : vocabulary.family(key.text());
    boolean own = FOR.matcher(name).find() || !vocabulary.family(name).isEmpty();
    return own || !WorkFamilies.MATERIALS.contains(family) ? name : family + " " + name;
  }

  private static String name(Table.Row names, Table.Cell cell) {
    Table.Cell head = names == null ? null : names.at(cell.column());
    return head == null || head.text().isBlank() ? "" : head.text().trim() + " ";
  }
}
