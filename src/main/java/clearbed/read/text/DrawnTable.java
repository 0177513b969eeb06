package clearbed.read.text;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.document.Table.Cell;
import clearbed.model.document.Table.Row;
import clearbed.read.block.CleanText;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A table drawn in plain text with bars between its columns, as in Markdown. */
final class DrawnTable {
  private static final Pattern RULE =
      Pattern.compile("^\\s*[|+]?\\s*:?[-=]+:?\\s*([|+]\\s*:?[-=]+:?\\s*)*[|+]?\\s*$");
  private static final Pattern BAR = Pattern.compile("(?<!\\\\)\\|");

  /** Over, below and under the heading. */
  private static final int FEWEST_RULES = 4;

  private DrawnTable() {}

  /**
   * Index after the last line of the table that begins at a line; the index itself when none does.
   */
  static int end(List<String> lines, int start) {
    int end = start;
    int rows = 0;
    boolean ruled = false;
    while (end < lines.size() && isLine(lines.get(end))) {
      if (isRule(lines.get(end))) ruled = true;
      else rows++;
      end++;
    }
    boolean framed = rows >= 2 && lines.subList(start, end).stream().allMatch(DrawnTable::isFramed);
    return rows >= 1 && (ruled && end - start >= 2 || framed) ? end : start;
  }

  private static boolean isLine(String line) {
    return isRule(line) || BAR.matcher(line).find();
  }

  private static boolean isRule(String line) {
    boolean crossed = line.indexOf('|') >= 0 || line.indexOf('+') >= 0;
    return crossed && RULE.matcher(line).matches();
  }

  private static boolean isFramed(String line) {
    String words = line.strip();
    return isRule(line) || words.startsWith("|") && words.endsWith("|") && words.length() > 1;
  }

  static Table of(List<String> lines, Origin origin) {
    List<Row> rows = new ArrayList<>();
    int number = 0;
    // "        | GT-1 | GT-2": a bar before the first words frames nothing where others lack it.
    boolean framed =
        lines.stream().filter(line -> !isRule(line)).allMatch(line -> line.strip().startsWith("|"));
    boolean boxed = isBoxed(lines);
    List<List<String>> open = new ArrayList<>();
    for (String line : lines) {
      if (!isRule(line)) {
        open.add(parts(line, framed));
        if (boxed) continue;
      }
      List<Cell> cells = cells(open, number + 1);
      if (!open.isEmpty()) number++;
      if (!cells.isEmpty()) rows.add(new Row(number, cells, false));
      open.clear();
    }
    List<Cell> cells = cells(open, number + 1);
    if (!cells.isEmpty()) rows.add(new Row(number + 1, cells, false));
    return new Table(origin, rows, false);
  }

  /** A rule below each row, whose cells may have several lines; the first cell has but one. */
  private static boolean isBoxed(List<String> lines) {
    int rules = 0;
    int wrapped = 0;
    boolean begun = false;
    for (String line : lines) {
      if (isRule(line)) {
        rules++;
        begun = false;
        continue;
      }
      boolean headless = parts(line, true).get(0).isEmpty();
      if (begun && !headless) return false;
      if (begun) wrapped++;
      begun = true;
    }
    return rules >= FEWEST_RULES && wrapped > 0;
  }

  private static List<String> parts(String line, boolean framed) {
    String inner = line.strip();
    if (framed && inner.startsWith("|")) inner = inner.substring(1);
    if (inner.endsWith("|") && !inner.endsWith("\\|"))
      inner = inner.substring(0, inner.length() - 1);
    List<String> out = new ArrayList<>();
    for (String part : BAR.split(inner, -1)) {
      String text = part.replace("\\|", "|").replaceAll("(?i)<br\\s*/?>", "\n");
      out.add(CleanText.of(text.replaceAll("(\\*\\*|__|`)(?=\\S)(.+?)(?<=\\S)\\1", "$2")));
    }
    return out;
  }

  /** The cells of a row, line below line. */
  private static List<Cell> cells(List<List<String>> lines, int row) {
    int columns = lines.stream().mapToInt(List::size).max().orElse(0);
    List<Cell> cells = new ArrayList<>();
    for (int c = 0; c < columns; c++) {
      int column = c;
      String text =
          lines.stream()
              .filter(parts -> column < parts.size() && !parts.get(column).isEmpty())
              .map(parts -> parts.get(column))
              .collect(Collectors.joining("\n"));
      if (!text.isEmpty()) cells.add(Cell.of(row, c, text));
    }
    return cells;
  }
}
