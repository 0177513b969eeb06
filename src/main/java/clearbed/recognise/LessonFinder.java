package clearbed.recognise;

import clearbed.model.Block;
import clearbed.model.Document;
import clearbed.model.Paragraph;
import clearbed.model.Table;
import clearbed.recognise.section.MarksBehind;
import clearbed.recognise.statement.Citations;
import clearbed.recognise.statement.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Lessons;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds what a document teaches of the ways of its office, before anything of it is understood: a
 * column of codes, no two alike, beside descriptions of which some are glass tile; and legends that
 * say which letters stand for glass tile.
 */
final class LessonFinder {
  /** "093023.A1", "B1-a", "24.GLT.01": letters and figures. */
  private static final Pattern CODE =
      Pattern.compile(
          "(?=.{2,14}$)(?=.*\\p{L})(?=.*\\d)[\\p{L}\\d]{1,8}(?:[-./_][\\p{L}\\d]{1,6}){0,3}");

  /** "Tile A", "BLUE 3": a word and what counts it. */
  private static final Pattern COUNTED =
      Pattern.compile("(?=.{3,16}$)\\p{Lu}\\p{L}{2,10} (?:\\p{Lu}|\\d{1,3}\\p{Ll}?)");

  private static final Pattern NUMBER = Pattern.compile("\\d{3,6}");

  /** "300x600", "12mm", "1st" are no codes. */
  private static final Pattern MEASURE =
      Pattern.compile("(?i)\\d.*?(?:x.*|mm|cm|m|m2|in|ft|sf|lf|st|nd|rd|th|k|kg)");

  private static final Pattern SHORT_NAME = Pattern.compile("\\p{Lu}{1,6}(?:-\\p{Lu}{1,4})?");

  /** "GLS = glass tile", and in one line "MOS-GL = glass mosaic, TIL-PO = porcelain tile". */
  private static final Pattern EXPLAINED =
      Pattern.compile(
          "(?<![\\p{L}\\d.-])(\\p{Lu}{1,6}(?:-\\p{Lu}{1,4})?)\\s*(=|:|\u2013|\u2014|-(?=\\s)|\\b(?:means|stands for|denotes)\\b)\\s*((?:(?!\\s\\p{Lu}{1,6}(?:-\\p{Lu}{1,4})?\\s*=)[^,;=\\n]){4,60})");

  /**
   * "Class: EP emulsion paint; GLS glass tile": name after name, each before what it stands for.
   */
  private static final Pattern LISTED =
      Pattern.compile(
          "(?:^|[;,:])\\s*(\\p{Lu}{2,6}(?:-\\p{Lu}{1,4})?)\\s+(\\p{Ll}[^;,]{3,50})(?=[;,.]|$)");

  /** "Tile C. Glass mosaic ...", "Type 3 glass", "GTX is the tall glass tile ...". */
  private static final Pattern OPENS_ITEM =
      Pattern.compile(
          "\\s*(?:[*\u2022\u00b7-]\\s+)?(?:(\\p{Lu}\\p{Ll}{2,9}) (\\p{Lu}|\\d{1,2})(?:[.:,]|\\s|$)|(\\p{Lu}{3,5}) (?:is|are) (?:the|a|an) )");

  private static final Pattern OPENS_WITH_MARK =
      Pattern.compile(
          "\\s*(?:[*\u2022\u00b7-]\\s+)?("
              + Tags.MARK
              + ")(?:\\s*[:\u2013\u2014]|\\s+-(?=\\s)|\\s{2,})\\s*(?=[\\p{L}\\d])");

  /** What an item is stands among its first words, in characters. */
  private static final int OPENING = 90;

  private static final Set<String> SAID_PLAINLY = Set.of("=", "means", "stands for", "denotes");

  /** Rows in which codes are looked for. */
  private static final int LOOKED_AT = 200;

  private static final int COLUMNS = 8;

  /** Fewer might be words of any kind. */
  private static final int FEWEST = 2;

  /** Of so many cells one may be something else: a remark, a total. */
  private static final int ODD_ONE = 5;

  /** Longer words explain nothing in a legend, in characters. */
  private static final int LONGEST_MEANING = 60;

  private final Vocabulary vocabulary;

  LessonFinder(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  Lessons in(Document document) {
    Set<String> marks = new TreeSet<>();
    Set<String> glass = new TreeSet<>();
    for (Block block : document.blocks()) {
      if (block instanceof Paragraph p) explained(p.text(), glass);
      if (!(block instanceof Table table) || !mayBeGlass(table)) continue;
      glass.addAll(explained(table));
      for (Table.Row row : table.rows().subList(0, Math.min(table.rows().size(), LOOKED_AT)))
        for (Table.Cell cell : row.cells()) explained(cell.text(), glass);
    }
    for (Block block : document.blocks())
      if (block instanceof Table table) marks.addAll(marks(table, glass));
    marks.addAll(ofItems(document));
    marks.addAll(ofMarkedItems(document));
    return new Lessons(List.copyOf(marks), List.copyOf(glass));
  }

  /** Words and letters that count the items of a text, where some of them are glass tile. */
  private Set<String> ofItems(Document document) {
    Map<String, Set<String>> alike = new TreeMap<>();
    Set<String> glass = new TreeSet<>();
    for (Block block : document.blocks()) {
      if (!(block instanceof Paragraph p)) continue;
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
    out.removeIf(this::isKnown);
    return out;
  }

  /** "W4: glass mosaic, 1 x 2" and "Glass mosaic, pearl [W4]", item after item. */
  private Set<String> ofMarkedItems(Document document) {
    Set<String> marks = new TreeSet<>();
    Set<String> glass = new TreeSet<>();
    for (Block block : document.blocks()) {
      if (!(block instanceof Paragraph p)) continue;
      Matcher m = OPENS_WITH_MARK.matcher(p.text());
      String mark = m.lookingAt() ? m.group(1) : MarksBehind.mark(p);
      if (mark.isEmpty()) continue;
      int from = m.lookingAt() ? m.end() : 0;
      marks.add(mark);
      String opening = p.text().substring(from, Math.min(p.text().length(), from + OPENING));
      if (vocabulary.describesGlassTile(opening)) glass.add(mark);
    }
    return glass.size() >= FEWEST ? marks : Set.of();
  }

  /** "Glass mosaic in sheets" of anything, "hand-cast glass" of what is called a tile. */
  private boolean saysGlass(String opening, String word) {
    if (vocabulary.describesGlassTile(opening)) return true;
    return TileWords.tile(word + " " + opening)
        && vocabulary.describesOtherTile(opening).isEmpty()
        && vocabulary.list("glassAlone").in(vocabulary.list("notTile").without(opening));
  }

  private boolean mayBeGlass(Table table) {
    return table.rows().stream()
        .limit(LOOKED_AT)
        .flatMap(row -> row.cells().stream())
        .anyMatch(
            cell ->
                vocabulary.list("glassTile").mayBeIn(cell.text())
                    || vocabulary.list("glassAlone").mayBeIn(cell.text()));
  }

  /** The codes of the first column that has such and nothing else. */
  private List<String> marks(Table table, Set<String> named) {
    if (named.isEmpty() && !mayBeGlass(table)) return List.of();
    List<Table.Row> rows = table.rows().stream().limit(LOOKED_AT).toList();
    for (int column = 0; column < COLUMNS; column++) {
      List<String> codes = codes(rows, column, named);
      if (codes.size() >= FEWEST) return codes.stream().filter(code -> !isKnown(code)).toList();
    }
    return List.of();
  }

  private List<String> codes(List<Table.Row> rows, int column, Set<String> named) {
    boolean properties = hasProperties(rows, column);
    Set<String> codes = new LinkedHashSet<>();
    Set<String> glass = new LinkedHashSet<>();
    int others = 0;
    int again = 0;
    String last = "";
    boolean under = false;
    for (Table.Row row : rows) {
      Table.Cell cell = row.at(column);
      List<Table.Cell> filled = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
      // "200 series: glass mosaic" over rows that do not say it again.
      if (filled.size() == 1) under = vocabulary.describesGlassTile(filled.get(0).text());
      boolean alone = filled.size() < FEWEST;
      if (cell == null || cell.continued() || cell.text().isBlank() || alone) continue;
      String text = PlainText.line(cell.text()).strip();
      // One property of a tile to a row.
      boolean goesOn = text.equals(last);
      last = text;
      boolean number = properties && NUMBER.matcher(text).matches();
      if (!number && !isCode(text) && !Tags.isMark(text)) {
        // What stands over the first code is a heading.
        if (!codes.isEmpty()) others++;
        continue;
      }
      if (!codes.add(text) && !goesOn) again++;
      if (under || isDescribed(row, column, named)) glass.add(text);
    }
    boolean all = (others + again) * ODD_ONE <= codes.size();
    return all && glass.size() >= FEWEST ? List.copyOf(codes) : List.of();
  }

  /** "0417 | Size | ...", "0417 | Colour | ...": a property of one thing to a row. */
  private static boolean hasProperties(List<Table.Row> rows, int column) {
    int again = 0;
    String last = "";
    for (Table.Row row : rows) {
      Table.Cell cell = row.at(column);
      String text = cell == null ? "" : cell.text().strip();
      if (!text.isEmpty() && text.equals(last)) again++;
      last = text;
    }
    return again * 2 > rows.size();
  }

  private boolean isDescribed(Table.Row row, int column, Set<String> named) {
    StringBuilder words = new StringBuilder();
    for (Table.Cell cell : row.cells()) {
      boolean code = cell.column() == column;
      if (!code && vocabulary.describesGlassTile(cell.text())) return true;
      if (!code && named.contains(cell.text().strip())) return true;
      words.append(cell.text()).append(" | ");
    }
    // "Tile B | glass"
    String all = words.toString();
    return TileWords.tile(all)
        && vocabulary.list("glassAlone").in(vocabulary.list("notTile").without(all));
  }

  private static boolean isCode(String text) {
    boolean code = CODE.matcher(text).matches() || COUNTED.matcher(text).matches();
    return code && !MEASURE.matcher(text).matches() && Citations.find(text).isEmpty();
  }

  private boolean isKnown(String code) {
    return Tags.isMark(code) || vocabulary.taught().isTag(code);
  }

  /** "Letter | Means": short names in the first column and what they mean in the only other. */
  private List<String> explained(Table table) {
    List<String> names = new ArrayList<>();
    List<String> glass = new ArrayList<>();
    for (Table.Row row : table.rows()) {
      List<Table.Cell> filled = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
      if (filled.size() < FEWEST) continue;
      if (filled.size() > FEWEST) return List.of();
      String name = PlainText.line(filled.get(0).text()).strip();
      String meaning = PlainText.line(filled.get(1).text()).strip();
      if (!SHORT_NAME.matcher(name).matches() || meaning.length() > LONGEST_MEANING) continue;
      names.add(name);
      if (isGlassTile(meaning)) glass.add(name);
    }
    return names.size() > glass.size() ? glass : List.of();
  }

  private void explained(String text, Set<String> glass) {
    if (!vocabulary.list("glassTile").mayBeIn(text)) return;
    Matcher m = EXPLAINED.matcher(PlainText.of(text));
    while (m.find()) {
      String meaning = m.group(3).strip();
      boolean plain = SAID_PLAINLY.contains(m.group(2));
      // "WALLS: glass tile" explains no letters; "GT: glass tile" does.
      boolean abbreviates = m.group(1).length() >= FEWEST && abbreviates(m.group(1), meaning);
      if (isGlassTile(meaning) && (plain || abbreviates)) glass.add(m.group(1));
    }
    List<MatchResult> listed =
        LISTED
            .matcher(PlainText.of(text))
            .results()
            .filter(r -> abbreviates(r.group(1), r.group(2)))
            .toList();
    for (MatchResult each : listed)
      if (listed.size() >= FEWEST && isGlassTile(each.group(2))) glass.add(each.group(1));
  }

  private boolean isGlassTile(String meaning) {
    return vocabulary.describesGlassTile(meaning)
        && vocabulary.describesOtherTile(meaning).isEmpty()
        && Set.of("", "tile").contains(vocabulary.family(meaning));
  }

  /** The letters stand in the words in their order, the first at the beginning. */
  private static boolean abbreviates(String name, String words) {
    String letters = name.replace("-", "").toLowerCase(Locale.ROOT);
    String in = words.toLowerCase(Locale.ROOT);
    if (in.charAt(0) != letters.charAt(0)) return false;
    int at = 0;
    for (char letter : letters.toCharArray()) {
      at = in.indexOf(letter, at) + 1;
      if (at == 0) return false;
    }
    return true;
  }
}
