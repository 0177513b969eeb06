package clearbed.read.text;

import clearbed.read.layout.AlignedTables;
import clearbed.read.layout.CleanText;
import clearbed.read.layout.Line;
import clearbed.read.layout.LineKind;
import java.util.ArrayList;
import java.util.Collections;
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

  /** Where each of the lines stands in the text, which has empty ones too. */
  private final List<Integer> places = new ArrayList<>();

  private final AlignedTables tables;

  SpacedTables(List<String> text) {
    for (int i = 0; i < text.size(); i++) {
      List<Line.Segment> segments = segments(text.get(i), i * LINE_HEIGHT);
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
  AlignedTables.Found at(int line) {
    int start = Collections.binarySearch(places, line);
    if (start < 0 || lines.get(start).segments().size() < FEWEST_COLUMNS) return null;
    String words = lines.get(start).text();
    if (words.indexOf('|') >= 0 || LineKind.opensItem(words)) return null;
    AlignedTables.Found found = tables.at(start);
    if (found == null
        || found.table().lefts().size() < FEWEST_COLUMNS
        || found.table().rows().size() < FEWEST_ROWS) return null;
    return new AlignedTables.Found(found.table(), places.get(found.end() - 1) + 1);
  }
}
