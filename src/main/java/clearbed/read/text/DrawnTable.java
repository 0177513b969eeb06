package clearbed.read.text;

import clearbed.model.Origin;
import clearbed.model.Table;
import clearbed.model.Table.Cell;
import clearbed.model.Table.Row;
import clearbed.read.layout.CleanText;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** A table drawn in plain text with bars between its columns, as in Markdown. */
final class DrawnTable {
  private static final Pattern RULE =
      Pattern.compile("^\\s*[|+]?\\s*:?[-=]+:?\\s*([|+]\\s*:?[-=]+:?\\s*)*[|+]?\\s*$");
  private static final Pattern BAR = Pattern.compile("(?<!\\\\)\\|");

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
    for (String line : lines) {
      if (isRule(line)) continue;
      List<Cell> cells = cells(line, ++number, framed);
      if (!cells.isEmpty()) rows.add(new Row(number, cells, false));
    }
    return new Table(origin, rows, false);
  }

  private static List<Cell> cells(String line, int row, boolean framed) {
    String inner = line.strip();
    if (framed && inner.startsWith("|")) inner = inner.substring(1);
    if (inner.endsWith("|") && !inner.endsWith("\\|"))
      inner = inner.substring(0, inner.length() - 1);
    List<Cell> cells = new ArrayList<>();
    String[] parts = BAR.split(inner, -1);
    for (int c = 0; c < parts.length; c++) {
      String text = parts[c].replace("\\|", "|").replaceAll("(?i)<br\\s*/?>", "\n");
      text = CleanText.of(text.replaceAll("(\\*\\*|__|`)(?=\\S)(.+?)(?<=\\S)\\1", "$2"));
      if (!text.isEmpty()) cells.add(Cell.of(row, c, text));
    }
    return cells;
  }
}
