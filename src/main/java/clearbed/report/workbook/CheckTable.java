package clearbed.report.workbook;

import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import clearbed.report.workbook.cell.Charts;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.PageRows;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.Styles;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** Unresolved findings by check, as a chart and as a table. */
final class CheckTable {
  private static final int MOST_CHARTED = 20;

  private final XSSFSheet sheet;
  private final Pen pen;
  private Charts.ChartRows drawn;
  private String alt;

  CheckTable(XSSFSheet sheet, Pen pen) {
    this.sheet = sheet;
    this.pen = pen;
  }

  private record CheckCounts(String check, Map<Level, Integer> counts) {
    int all() {
      return counts.values().stream().mapToInt(Integer::intValue).sum();
    }

    int of(Level level) {
      return counts.getOrDefault(level, 0);
    }
  }

  /**
   * Writes a section.
   *
   * @return the row of its heading
   */
  int fill(PageRows rows, List<Finding> findings, List<Report.CheckInfo> checks) {
    List<CheckCounts> lines = lines(findings);
    int heading = rows.section("By check (what is resolved is not counted)").getRowNum();
    if (lines.isEmpty()) {
      pen.text(rows.add(), 0, "No findings.", Styles.Look.SUBTITLE);
      return heading;
    }
    header(rows.add());
    int first = rows.next();
    Map<String, String> titles = new HashMap<>();
    for (Report.CheckInfo check : checks) titles.put(check.id(), check.title());
    for (CheckCounts line : lines) row(rows.add(), line, titles.getOrDefault(line.check(), ""));
    int charted = Math.min(lines.size(), MOST_CHARTED);
    drawn = new Charts.ChartRows(first, first + charted - 1);
    alt = alt(lines);
    return heading;
  }

  /** Draws the table that was written, from a row on; nothing where there are no findings. */
  void draw(int from) {
    if (drawn == null) return;
    int height = drawn.last() - drawn.first() + 8;
    Charts.bars(sheet, drawn, from, from + height, alt);
  }

  private void header(Row row) {
    List<String> words = List.of("Check", "What it looks at", "error", "warning", "note", "all");
    for (int column = 0; column < words.size(); column++) {
      Styles.Look look = column < 2 ? Styles.Look.HEADER : Styles.Look.HEADER_COUNT;
      pen.text(row, column, words.get(column), look);
    }
  }

  private void row(Row row, CheckCounts line, String title) {
    pen.text(row, 0, line.check(), Styles.Look.STRONG);
    pen.text(row, 1, title, Styles.Look.TEXT);
    int column = 2;
    for (Level level : Level.values()) pen.count(row, column++, line.of(level));
    pen.count(row, column, line.all());
    Heights.fit(row, sheet);
  }

  private static List<CheckCounts> lines(List<Finding> findings) {
    Map<String, Map<Level, Integer>> counts = new TreeMap<>();
    for (Finding finding : findings) {
      if (finding.state() == State.RESOLVED) continue;
      counts
          .computeIfAbsent(finding.check(), check -> new EnumMap<>(Level.class))
          .merge(finding.level(), 1, Integer::sum);
    }
    return counts.entrySet().stream()
        .map(entry -> new CheckCounts(entry.getKey(), entry.getValue()))
        .sorted(
            Comparator.comparingInt((CheckCounts line) -> -line.of(Level.ERROR))
                .thenComparingInt(line -> -line.all())
                .thenComparing(CheckCounts::check))
        .toList();
  }

  private static String alt(List<CheckCounts> lines) {
    StringBuilder text = new StringBuilder("Bar chart of findings by check. ");
    for (CheckCounts line : lines.subList(0, Math.min(lines.size(), MOST_CHARTED))) {
      text.append(line.check()).append(": ").append(line.of(Level.ERROR)).append(" error, ");
      text.append(line.of(Level.WARNING)).append(" warning, ");
      text.append(line.of(Level.NOTE)).append(" note. ");
    }
    return text.toString().strip();
  }
}
