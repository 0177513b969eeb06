package clearbed.read.text;

import clearbed.read.block.CleanText;
import clearbed.read.layout.AlignedTables;
import clearbed.read.layout.Line;
import clearbed.read.layout.LineKind;
import clearbed.read.layout.PdfTable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tables in plain text whose columns are set apart by blanks alone. */
final class SpacedTables {
  /** Words set apart by three blanks or more, or a tab, stand in another column. */
  private static final Pattern WORDS = Pattern.compile("\\S+(?:[ \\u00a0]{1,2}\\S+)*");

  /** Two columns are a table only where they are a card of names and values. */
  private static final int FEWEST_COLUMNS = 3;

  /** Names above one another on a card. */
  private static final int FEWEST_NAMES = 4;

  /** The same where dots lead from each to its value. */
  private static final int FEWEST_LED = 3;

  /** "Low-temperature coating" is a name, what is longer a sentence; in words. */
  private static final int LONGEST_NAME = 4;

  /** Two lines may stand in line by chance. */
  private static final int FEWEST_ROWS = 3;

  private static final Pattern NAMED = Pattern.compile(" *(\\S+(?: \\S+)*) {2,}(\\S.*)");

  /** "GT-1" */
  static final String ONE_MARK = "[A-Z]{1,5}[-. ]?\\d{1,4}[A-Z]?";

  /** "GT-1", and in parts "24.GLT.01". */
  private static final Pattern MARK =
      Pattern.compile(ONE_MARK + "|(?:[A-Z0-9]{1,5}[-./]){1,3}[A-Z0-9]{1,5}");

  /** "Substrate ........ cement board": dots lead to the value. */
  private static final Pattern LEADER = Pattern.compile("(?<=\\S) ?[.\u2026_]{3,} ?:?(?= )");

  /** "KEY: R-01" over the names and values of a card. */
  private static final Pattern OVER_CARD =
      Pattern.compile(" *(\\p{Lu}\\S*(?: \\S+){0,2}?):? +(" + MARK.pattern() + ")\\s*");

  private static final double LINE_HEIGHT = 1.2;

  private final List<String> text;

  /** The same lines with blanks in place of the dots that lead to a value. */
  private final List<String> plain;

  private final List<Line> lines = new ArrayList<>();

  /** Where each of the lines stands in the text, which has empty ones too. */
  private final List<Integer> places = new ArrayList<>();

  private final AlignedTables tables;

  SpacedTables(List<String> text) {
    this.text = text;
    this.plain = text.stream().map(SpacedTables::withoutLeaders).toList();
    for (int i = 0; i < text.size(); i++) {
      List<Line.Segment> segments = segments(plain.get(i), i * LINE_HEIGHT);
      if (segments.isEmpty()) continue;
      lines.add(new Line(segments, i * LINE_HEIGHT));
      places.add(i);
    }
    tables = new AlignedTables(lines, List.of(), 0);
  }

  private static List<Line.Segment> segments(String line, double baseline) {
    List<Line.Segment> segments = new ArrayList<>();
    Matcher words = WORDS.matcher(line.replace("\t", "    ").replace('\f', ' '));
    while (words.find()) {
      String text = CleanText.of(words.group());
      if (!text.isEmpty())
        segments.add(new Line.Segment(text, words.start(), words.end(), baseline, 1, false));
    }
    return segments;
  }

  /** The table that begins at a line of the text, or null. */
  AlignedTables.FoundTable at(int line) {
    int start = Collections.binarySearch(places, line);
    if (start < 0) return null;
    String words = lines.get(start).text();
    if (words.indexOf('|') >= 0 || LineKind.opensItem(words)) return null;
    if (lines.get(start).segments().size() < FEWEST_COLUMNS) return card(line);
    AlignedTables.FoundTable found = tables.at(start);
    if (found == null
        || found.table().lefts().size() < FEWEST_COLUMNS
        || found.table().rows().size() < FEWEST_ROWS) return null;
    return new AlignedTables.FoundTable(found.table(), places.get(found.end() - 1) + 1);
  }

  /**
   * A name and its value on each line, all values at the same place; a line with a value alone goes
   * on with the one above. An empty line ends it. "Name: value" is read line by line instead.
   */
  private AlignedTables.FoundTable card(int line) {
    Matcher over = OVER_CARD.matcher(text.get(line));
    boolean titled = over.matches() && line + 1 < text.size() && hasLeader(line + 1);
    if (titled)
      return card(line + 1, List.of(List.of(piece(0, over.group(1)), piece(1, over.group(2)))));
    return card(line, List.of());
  }

  /**
   * @param over what stands over the first line, as rows of the card
   */
  private AlignedTables.FoundTable card(int line, List<List<PdfTable.PdfCell>> over) {
    Matcher opening = NAMED.matcher(plain.get(line));
    if (!opening.matches()) return null;
    int names = opening.start(1);
    int values = opening.start(2);
    List<List<PdfTable.PdfCell>> rows = new ArrayList<>(over);
    int end = line;
    for (; end < text.size() && !text.get(end).isBlank(); end++) {
      String words = plain.get(end);
      boolean apart = words.length() > values && words.startsWith("  ", values - 2);
      if (!apart || words.charAt(values) == ' ') break;
      String name = words.substring(0, values).strip();
      String value = CleanText.of(words.substring(values));
      if (name.isEmpty() && !rows.isEmpty()) {
        List<PdfTable.PdfCell> above = rows.remove(rows.size() - 1);
        rows.add(List.of(above.get(0), piece(1, above.get(1).text() + " " + value)));
      } else if (isName(name) && words.charAt(names) == name.charAt(0)) {
        rows.add(List.of(piece(0, CleanText.of(name)), piece(1, value)));
      } else {
        break;
      }
    }
    int fewest = hasLeader(line) ? FEWEST_LED : FEWEST_NAMES;
    if (rows.size() < fewest || !isMarked(rows)) return null;
    double top = (line - over.size() - 1) * LINE_HEIGHT;
    List<Double> lefts = List.of((double) names, (double) values);
    PdfTable table = new PdfTable(top, (end - 1) * LINE_HEIGHT, lefts, values + LINE_HEIGHT, rows);
    return new AlignedTables.FoundTable(table, end);
  }

  private boolean hasLeader(int line) {
    return !plain.get(line).equals(text.get(line));
  }

  private static String withoutLeaders(String line) {
    return LEADER.matcher(line).replaceAll(dots -> " ".repeat(dots.group().length()));
  }

  /** A list of mortars has names and values, too, but no mark among its first values. */
  private static boolean isMarked(List<List<PdfTable.PdfCell>> rows) {
    return rows.stream().limit(2).anyMatch(row -> MARK.matcher(row.get(1).text()).matches());
  }

  private static boolean isName(String text) {
    return Character.isUpperCase(text.charAt(0))
        && text.split("\\s+").length <= LONGEST_NAME
        && !LineKind.opensItem(text)
        && !text.endsWith(":");
  }

  private static PdfTable.PdfCell piece(int column, String text) {
    return new PdfTable.PdfCell(column, 1, 1, text, 0);
  }
}
