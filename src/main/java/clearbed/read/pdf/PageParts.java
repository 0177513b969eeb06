package clearbed.read.pdf;

import clearbed.model.document.Paragraph.Region;
import clearbed.read.layout.AlignedTables;
import clearbed.read.layout.HangingMarks;
import clearbed.read.layout.Hyphens;
import clearbed.read.layout.Line;
import clearbed.read.layout.LineKind;
import clearbed.read.layout.ListMark;
import clearbed.read.layout.PdfTable;
import clearbed.read.pdf.PageColumns.PageColumn;
import java.util.ArrayList;
import java.util.List;

/** The paragraphs and tables of one page, in reading order. */
final class PageParts {
  /** Points by which the lines of a paragraph may differ in where they begin. */
  private static final double ALIGNED = 3;

  private final PdfPage page;
  private final List<Double> columnEdges;
  private final List<PagePart> parts = new ArrayList<>();

  /** The lines of the last paragraph. */
  private List<Line> last = List.of();

  /** Text with its page and region, or a table. */
  record PagePart(int page, Region region, String text, PdfTable table) {
    /** Whether the next paragraph is the rest of a sentence that is not ended here. */
    boolean runsOnTo(PagePart next) {
      return !isEnded()
          && Character.isLowerCase(next.text().charAt(0))
          && !LineKind.opensItem(next.text());
    }

    boolean isEnded() {
      return text.matches("(?s).*[.:;!?]$");
    }

    /** The two as one paragraph. */
    PagePart with(PagePart next) {
      StringBuilder whole = new StringBuilder(text);
      Hyphens.append(whole, next.text());
      return new PagePart(page, region, whole.toString(), null);
    }
  }

  /**
   * @param columnEdges left edges of columns of text found before, to which those of this page are
   *     added
   */
  PageParts(PdfPage page, List<Double> columnEdges) {
    this.page = page;
    this.columnEdges = columnEdges;
  }

  /**
   * Lines in columns or in none.
   *
   * @param drawn tables with drawn cells, from the top, whose words are not in the lines
   */
  List<PagePart> of(List<Line> lines, List<PdfTable> drawn) {
    parts.clear();
    List<PdfTable> tables = new ArrayList<>(drawn);
    List<PageColumn> columns = new PageColumns(drawn, columnEdges).of(lines);
    List<Line> before = List.of();
    for (int i = 0; i < columns.size(); i++) {
      PageColumn column = columns.get(i);
      List<PdfTable> own = columns.get(i).tables(columns.subList(i + 1, columns.size()), tables);
      tables.removeAll(own);
      List<Line> lastBefore = last;
      int start = parts.size();
      column(column.lines(), own);
      if (column.goesOn()) joinToColumnBefore(start, lastBefore, before, column.lines());
      before = column.lines();
    }
    for (PdfTable table : tables) add(table);
    return List.copyOf(parts);
  }

  List<PagePart> ofOneColumn(List<Line> lines) {
    parts.clear();
    column(lines, new ArrayList<>());
    return List.copyOf(parts);
  }

  private void column(List<Line> column, List<PdfTable> tables) {
    AlignedTables aligned =
        new AlignedTables(HangingMarks.joined(column), page.rulings(), page.number());
    List<Line> lines = aligned.lines();
    PdfParagraphs paragraphs = new PdfParagraphs(lines);
    for (int i = 0; i < lines.size(); i++) {
      Line line = lines.get(i);
      while (!tables.isEmpty() && isDue(tables.get(0), line, paragraphs)) {
        add(paragraphs.end());
        add(tables.remove(0));
      }
      AlignedTables.FoundTable found = aligned.at(i);
      if (found != null) {
        add(paragraphs.end());
        add(found.table());
        i = found.end() - 1;
      } else {
        for (Line part : ListMark.titles(line)) add(paragraphs.next(part));
      }
    }
    add(paragraphs.end());
    for (PdfTable table : tables) add(table);
  }

  /** A table beside a paragraph comes after it. */
  private static boolean isDue(PdfTable table, Line line, PdfParagraphs paragraphs) {
    boolean beside = table.left() > line.x1() || table.right() < line.x0();
    return table.top() < line.baseline() && !(beside && paragraphs.goesOnWith(line));
  }

  private void add(PdfTable table) {
    parts.add(new PagePart(page.number(), Region.BODY, null, table));
    last = List.of();
  }

  private void add(List<Line> paragraph) {
    if (paragraph == null) return;
    StringBuilder text = new StringBuilder();
    for (Line line : paragraph) Hyphens.append(text, line.text());
    parts.add(new PagePart(page.number(), Region.BODY, text.toString(), null));
    last = paragraph;
  }

  /** Joins a paragraph that goes on from the foot of the column to the left. */
  private void joinToColumnBefore(
      int start, List<Line> left, List<Line> leftColumn, List<Line> column) {
    if (start == 0 || start >= parts.size() || left.isEmpty()) return;
    PagePart end = parts.get(start - 1);
    PagePart next = parts.get(start);
    if (end.text() == null || next.text() == null) return;
    boolean goesOn = end.runsOnTo(next) || !end.isEnded() && hangsOn(left, leftColumn, column);
    if (!goesOn) return;
    parts.set(start - 1, end.with(next));
    parts.remove(start);
  }

  /** Begins where the wrapped lines of an item do, and has no mark. */
  private static boolean hangsOn(List<Line> left, List<Line> leftColumn, List<Line> column) {
    Line item = left.get(0);
    Line next = column.get(0);
    double hang = item.hang() - leftOf(leftColumn);
    return item.hasMark()
        && next.segments().size() == 1
        && next.isBold() == item.isBold()
        && !LineKind.opensItem(next.text())
        && Math.abs(next.x0() - leftOf(column) - hang) <= ALIGNED;
  }

  private static double leftOf(List<Line> column) {
    return column.stream().mapToDouble(Line::x0).min().orElse(0);
  }
}
