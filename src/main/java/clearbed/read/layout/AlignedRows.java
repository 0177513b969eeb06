package clearbed.read.layout;

import clearbed.read.layout.Line.Segment;
import clearbed.read.layout.PdfTable.PdfCell;
import clearbed.read.layout.TextFlow.Turn;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Tells rows from wrapped lines in a table without drawn cells: by lines drawn between rows if
 * there are any, else a value in the first column begins a row.
 */
final class AlignedRows {
  /** Longer tables are those of text files, a line for each row. */
  private static final int LINES_OF_A_PAGE = 1_000;

  private final List<Line> lines;
  private final AlignedColumns columns;
  private final List<Double> rules;
  private final int page;
  private final TextFlow flow;
  private final boolean setApart;
  private final double usualGap;

  AlignedRows(List<Line> lines, AlignedColumns columns, List<Ruling> levels, int page) {
    this.lines = lines;
    this.columns = columns;
    this.page = page;
    this.rules = rules(levels);
    this.flow = new TextFlow(lines.size() > LINES_OF_A_PAGE ? List.of() : lines);
    this.setApart = areSetApart();
    this.usualGap = usualGap();
  }

  PdfTable table() {
    List<List<Line>> rows = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      if (i == 0 || isNewRow(i, rows)) rows.add(new ArrayList<>());
      rows.get(rows.size() - 1).add(lines.get(i));
    }
    Line first = lines.get(0);
    double bottom = lines.get(lines.size() - 1).baseline();
    List<List<PdfCell>> pieces = rows.stream().map(this::pieces).toList();
    double right = lines.stream().mapToDouble(Line::x1).max().orElse(0);
    return new PdfTable(first.baseline() - first.size(), bottom, columns.lefts(), right, pieces);
  }

  /** Lines drawn across most of the table, between its first and last words. */
  private List<Double> rules(List<Ruling> levels) {
    double x0 = lines.stream().mapToDouble(Line::x0).min().orElse(0);
    double x1 = lines.stream().mapToDouble(Line::x1).max().orElse(0);
    double top = lines.get(0).baseline();
    double bottom = lines.get(lines.size() - 1).baseline();
    return levels.stream()
        .filter(r -> Math.min(r.x1(), x1) - Math.max(r.x0(), x0) > 0.6 * (x1 - x0))
        .map(Ruling::y)
        .filter(y -> y > top && y < bottom)
        .sorted()
        .toList();
  }

  private double usualGap() {
    double[] gaps = new double[lines.size()];
    int n = 0;
    for (int i = 1; i < lines.size(); i++) {
      if (hasFirst(i) && lines.get(i).segments().size() > 1) gaps[n++] = gap(i);
    }
    if (n == 0) return Double.MAX_VALUE;
    Arrays.sort(gaps, 0, n);
    return gaps[n / 2];
  }

  private double gap(int i) {
    return lines.get(i).baseline() - lines.get(i - 1).baseline();
  }

  private boolean hasFirst(int i) {
    Segment s = lines.get(i).segments().get(0);
    return columns.covered(s)[0] == 0;
  }

  private boolean isNewRow(int i, List<List<Line>> rows) {
    boolean ruled = isRuledBefore(i);
    // One line is under the head only; from three on they part the rows.
    if (rules.size() >= 3) return ruled;
    if (ruled) return true;
    if (!hasFirst(i)) return isRowWithoutFirst(i);
    if (isHeadWithoutFirst(i, rows) || isWrapped(i)) return false;
    boolean alone = lines.get(i).segments().size() == 1;
    return !(alone && gap(i) < 0.85 * usualGap && spans(i) == 1);
  }

  /** The next line of every cell in it, in a table whose rows are set apart. */
  private boolean isWrapped(int i) {
    return setApart && lines.get(i).segments().stream().allMatch(flow::runsOn);
  }

  /** No words begin anything right below others. */
  private boolean areSetApart() {
    return lines.size() <= LINES_OF_A_PAGE
        && lines.stream()
            .flatMap(line -> line.segments().stream())
            .noneMatch(s -> flow.turn(s) == Turn.AFTER_SHORT);
  }

  private int spans(int i) {
    int[] covered = columns.covered(lines.get(i).segments().get(0));
    return covered[1] - covered[0] + 1;
  }

  /** The upper lines of a heading row may lack the first column, whose heading stands lowest. */
  private boolean isHeadWithoutFirst(int i, List<List<Line>> rows) {
    if (rows.size() != 1 || gap(i) > 1.6 * lines.get(i).size()) return false;
    for (int k = 0; k < i; k++) if (hasFirst(k)) return false;
    return true;
  }

  /** Nothing in the first column, but as far from the row above as rows are, and well filled. */
  private boolean isRowWithoutFirst(int i) {
    int filled = lines.get(i).segments().size();
    boolean apart = usualGap != Double.MAX_VALUE && gap(i) > 0.85 * usualGap;
    boolean tight = usualGap < 1.5 * lines.get(i).size();
    return apart && filled * 2 > columns.count() && !(tight && filled < columns.count() - 1);
  }

  private boolean isRuledBefore(int i) {
    double from = lines.get(i - 1).baseline();
    double to = lines.get(i).baseline();
    return rules.stream().anyMatch(y -> y > from && y < to);
  }

  private List<PdfCell> pieces(List<Line> row) {
    StringBuilder[] texts = new StringBuilder[columns.count()];
    int[] spans = new int[columns.count()];
    for (Line line : row) {
      StringBuilder last = null;
      for (Segment s : line.segments()) {
        int[] covered = columns.covered(s);
        int c = covered[0];
        if (texts[c] == null) texts[c] = new StringBuilder();
        if (texts[c] == last) last.append(' ').append(s.text());
        else Hyphens.append(texts[c], s.text());
        spans[c] = Math.max(spans[c], covered[1] - c + 1);
        last = texts[c];
      }
    }
    List<PdfCell> pieces = new ArrayList<>();
    for (int c = 0; c < texts.length; c++) {
      if (texts[c] == null) continue;
      pieces.add(new PdfCell(c, free(texts, c, spans[c]), 1, texts[c].toString(), page));
    }
    return pieces;
  }

  /** The span, ended where the next filled column begins. */
  private static int free(StringBuilder[] texts, int column, int span) {
    int n = 1;
    while (n < span && texts[column + n] == null) n++;
    return n;
  }
}
