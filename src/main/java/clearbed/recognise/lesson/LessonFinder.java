package clearbed.recognise.lesson;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.section.MarksBehind;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import clearbed.recognise.vocabulary.taught.Lessons;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds what a document teaches of the ways of its office, before anything of it is understood: a
 * column of codes, no two alike, beside descriptions of which some are glass tile; and legends that
 * say which letters stand for glass tile.
 */
public final class LessonFinder {
  /** "Tile C. Glass mosaic ...", "Type 3 glass", "GTX is the tall glass tile ...". */
  private static final Pattern OPENS_ITEM =
      Pattern.compile(
          "\\s*(?:"
              + MarksBehind.BULLET
              + ")?(?:(\\p{Lu}\\p{Ll}{2,9}) (\\p{Lu}|\\d{1,2})(?:[.:,]|\\s|$)|(\\p{Lu}{3,5}) (?:is|are) (?:the|a|an) )");

  /** A word and its letter or number: "Grout B: ...", "MEMBRANE 2", "310 ADHESIVE A". */
  private static final Pattern LETTERED_PRODUCT =
      Pattern.compile(
          "(?:^\\s*(?:"
              + MarksBehind.BULLET
              + ")?(?:\\d{1,3}(?:\\.\\d{1,2}){0,3}\\.?\\s+)?|[.;]\\s+)(\\p{Lu}\\p{L}{3,14}(?: \\p{L}{4,14})?) (\\p{Lu}\\d{0,2}|\\d{1,2})(?: \\([^()]{2,40}\\))?(?:\\s*[:.=\u2013\u2014](?=\\s|$)|\\s+-(?=\\s)|\\s+(?:is|means|shall be)\\b|\\s*$)");

  private static final Pattern OPENS_WITH_MARK =
      Pattern.compile(
          "\\s*(?:"
              + MarksBehind.BULLET
              + ")?("
              + Tags.MARK
              + ")(?:\\s*[:\u2013\u2014]|\\s+-(?=\\s)|\\s{2,})\\s*(?=[\\p{L}\\d])");

  /** What an item is stands among its first words, in characters. */
  private static final int OPENING = 90;

  /** Fewer might be words of any kind. */
  private static final int FEWEST = 2;

  /** Longer words over a table are no title, in characters. */
  private static final int LONGEST_TITLE = 90;

  /** Rows in which glass tile is looked for. */
  private static final int LOOKED_AT = 200;

  private final Vocabulary vocabulary;
  private final Legends legends;
  private final LegendWords explaining;
  private final CodeColumns codes;
  private final ProductCodes productCodes;
  private final LabelledProducts labelledProducts;

  public LessonFinder(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.legends = new Legends(vocabulary);
    this.explaining = new LegendWords(vocabulary);
    this.codes = new CodeColumns(vocabulary);
    this.productCodes = new ProductCodes(vocabulary);
    this.labelledProducts = new LabelledProducts(vocabulary);
  }

  public Lessons in(Document document) {
    Set<String> glass = new TreeSet<>();
    List<Paragraph> paragraphs = new ArrayList<>();
    // A table for each room or floor has the same headings as the next.
    Map<List<String>, List<CodeColumns.Grid>> tables = new LinkedHashMap<>();
    Set<String> behind = new TreeSet<>();
    Set<String> products = new TreeSet<>();
    List<Lessons.Explained> explained = new ArrayList<>();
    String over = "";
    for (Block block : document.blocks()) {
      if (block instanceof Paragraph p) {
        paragraphs.add(p);
        over = p.text().strip();
        legends.into(p.text(), glass);
        explaining.into(p.text(), explained);
      }
      if (!(block instanceof Table table)) continue;
      List<Table.Row> first = table.rows().subList(0, Math.min(table.rows().size(), LOOKED_AT));
      tables
          .computeIfAbsent(headings(table), any -> new ArrayList<>())
          .add(new CodeColumns.Grid(first, title(table, over)));
      over = "";
      explained.addAll(explaining.in(table).words());
      explaining.lettered(table, explained);
      List<String> cells = new ArrayList<>();
      for (Table.Row row : first) for (Table.Cell cell : row.cells()) cells.add(cell.text());
      cells.forEach(cell -> explaining.into(cell, explained));
      cells.forEach(cell -> letteredProduct(cell, products));
      products.addAll(productCodes.in(first));
      if (!mayBeGlass(first)) continue;
      glass.addAll(legends.in(table));
      cells.forEach(cell -> legends.into(cell, glass));
      behind.addAll(behind(cells));
    }
    Set<String> marks = new TreeSet<>(behind);
    // Where a legend says what letters mean, a schedule may never say glass.
    for (List<CodeColumns.Grid> alike : tables.values())
      if (!glass.isEmpty() || alike.stream().anyMatch(this::mayBeGlass))
        marks.addAll(codes.in(alike, glass));
    marks.addAll(ofItems(paragraphs));
    marks.addAll(ofMarkedItems(paragraphs));
    for (Paragraph p : paragraphs) letteredProduct(p.text(), products);
    products.addAll(labelledProducts.in(paragraphs));
    marks.addAll(products);
    return new Lessons(List.copyOf(marks), List.copyOf(glass), explained);
  }

  /** The rows of a table that say for which words letters stand, and nothing of a tile. */
  public List<Table.Row> explained(Table table) {
    return explaining.in(table).rows().stream().filter(row -> !isOfTags(row)).toList();
  }

  private boolean isOfTags(Table.Row row) {
    return row.cells().stream().anyMatch(c -> Tags.isMark(c.text().strip(), vocabulary));
  }

  private static List<String> headings(Table table) {
    if (table.rows().isEmpty()) return List.of();
    return table.rows().get(0).cells().stream().map(cell -> cell.text().strip()).toList();
  }

  private static String title(Table table, String over) {
    String sheet = table.origin().sheet();
    return (over.length() > LONGEST_TITLE ? "" : over) + (sheet == null ? "" : " " + sheet);
  }

  /** Words and letters that count the items of a text, where some of them are glass tile. */
  private Set<String> ofItems(List<Paragraph> paragraphs) {
    Map<String, Set<String>> alike = new TreeMap<>();
    Set<String> glass = new TreeSet<>();
    for (Paragraph p : paragraphs) {
      Matcher m = OPENS_ITEM.matcher(p.text());
      if (!m.lookingAt()) continue;
      boolean counted = m.group(1) != null;
      String word = counted ? m.group(1) : "";
      if (counted && !vocabulary.list("schedule.tag").matches(word.toLowerCase(Locale.ROOT)))
        continue;
      String mark = counted ? word + " " + m.group(2) : m.group(3);
      alike.computeIfAbsent(word, any -> new TreeSet<>()).add(mark);
      String opening = p.text().substring(m.end(), Math.min(p.text().length(), m.end() + OPENING));
      if (saysGlass(opening, word)) glass.add(word);
    }
    Set<String> out = new TreeSet<>();
    alike.forEach(
        (word, marks) -> {
          if (marks.size() >= FEWEST && glass.contains(word)) out.addAll(marks);
        });
    out.removeIf(mark -> Tags.isMark(mark, vocabulary));
    return out;
  }

  /** "Mortar A: ...", "ADHESIVE 2": what other documents call by that name, as they please. */
  private void letteredProduct(String text, Set<String> marks) {
    Matcher m = LETTERED_PRODUCT.matcher(text);
    while (m.find()) {
      String word = m.group(1);
      if (!WorkFamilies.MATERIALS.contains(vocabulary.family(word))) continue;
      String low = word.toLowerCase(Locale.ROOT);
      for (String written :
          List.of(word, low, upper(low.substring(0, 1)) + low.substring(1), upper(word)))
        marks.add(written + " " + m.group(2));
    }
  }

  private static String upper(String word) {
    return word.toUpperCase(Locale.ROOT);
  }

  /** "W4: glass mosaic, 1 x 2" and "Glass mosaic, pearl [W4]", item after item. */
  private Set<String> ofMarkedItems(List<Paragraph> paragraphs) {
    Set<String> marks = new TreeSet<>();
    Set<String> glass = new TreeSet<>();
    for (Paragraph p : paragraphs) {
      Matcher m = OPENS_WITH_MARK.matcher(p.text());
      String mark = m.lookingAt() ? m.group(1) : MarksBehind.mark(p);
      if (mark.isEmpty()) continue;
      int from = m.lookingAt() ? m.end() : 0;
      marks.add(mark);
      String opening = p.text().substring(from, Math.min(p.text().length(), from + OPENING));
      if (vocabulary.glass().describesTile(opening)) glass.add(mark);
    }
    return glass.size() >= FEWEST ? marks : Set.of();
  }

  /** "Mosaico de vidrio «MV-a»", cell after cell. */
  private Set<String> behind(List<String> cells) {
    Set<String> marks = new TreeSet<>();
    Set<String> glass = new TreeSet<>();
    for (String cell : cells) {
      String mark = MarksBehind.mark(cell);
      if (mark.isEmpty()) continue;
      marks.add(mark);
      if (vocabulary.glass().describesTileAnywhere(cell)) glass.add(mark);
    }
    marks.removeIf(mark -> Tags.isMark(mark, vocabulary));
    return glass.size() >= FEWEST ? marks : Set.of();
  }

  /** "Glass mosaic in sheets" of anything, "hand-cast glass" of what is called a tile. */
  private boolean saysGlass(String opening, String word) {
    if (vocabulary.glass().describesTile(opening)) return true;
    return TileWords.tile(word + " " + opening)
        && vocabulary.glass().describesOtherTile(opening).isEmpty()
        && vocabulary.glass().isNamed(opening);
  }

  private boolean mayBeGlass(CodeColumns.Grid grid) {
    return vocabulary.glass().mayBeNamed(grid.title()) || mayBeGlass(grid.rows());
  }

  private boolean mayBeGlass(List<Table.Row> rows) {
    return rows.stream()
        .flatMap(row -> row.cells().stream())
        .anyMatch(cell -> vocabulary.glass().mayBeNamed(cell.text()));
  }
}
