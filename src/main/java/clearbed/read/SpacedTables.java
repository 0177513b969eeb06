package clearbed.read;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tables in plain text whose columns are set apart by blanks alone. */
final class SpacedTables {
  /** Words set apart by three blanks or more, or a tab, stand in another column. */
  private static final Pattern WORDS = Pattern.compile("\\S+(?:[ \\u00a0]{1,2}\\S+)*");

  /** With two columns it might be a list of names and values, which is read line by line. */
  private static final int FEWEST_COLUMNS = 3;

  /** Two lines may stand in line by chance. */
  private static final int FEWEST_ROWS = 3;

  private static final double LINE_HEIGHT = 1.2;

  private final List<Line> lines = new ArrayList<>();
  private final int[] lineOf;
  private final List<Integer> rowOf = new ArrayList<>();
  private final AlignedTables tables;

  /**
   * A table and the lines it takes.
   *
   * @param end index after its last line
   */
  record Found(PdfTable table, int end) {}

  SpacedTables(List<String> text) {
    lineOf = new int[text.size()];
    for (int i = 0; i < text.size(); i++) {
      List<Line.Segment> segments = segments(text.get(i), i * LINE_HEIGHT);
      lineOf[i] = segments.isEmpty() ? -1 : lines.size();
      if (segments.isEmpty()) continue;
      lines.add(new Line(segments, i * LINE_HEIGHT));
      rowOf.add(i);
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

  /** The table that begins at a line, or null. */
  Found at(int line) {
    int start = lineOf[line];
    if (start < 0 || lines.get(start).segments().size() < FEWEST_COLUMNS) return null;
    String words = lines.get(start).text();
    if (words.indexOf('|') >= 0 || LineKind.opensItem(words)) return null;
    AlignedTables.Found found = tables.at(start);
    if (found == null
        || found.table().lefts().size() < FEWEST_COLUMNS
        || found.table().rows().size() < FEWEST_ROWS) return null;
    int end = found.end() < rowOf.size() ? rowOf.get(found.end()) : lineOf.length;
    return new Found(found.table(), end);
  }
}
