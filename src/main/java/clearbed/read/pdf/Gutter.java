package clearbed.read.pdf;

import clearbed.read.layout.Line;
import clearbed.read.layout.Line.Segment;
import clearbed.read.layout.ListMark;
import clearbed.read.layout.TextFlow;
import java.util.ArrayList;
import java.util.List;

/**
 * A blank that runs down between lines, and what speaks for its being the one between two columns
 * of text: paragraphs begin on one side of it in the middle of paragraphs of the other. The cells
 * of a row begin together.
 */
final class Gutter {
  /** Mean letters in the lines of a column of text. */
  private static final int LETTERS = 18;

  private final List<Line> lines;
  private final TextFlow flow;
  private final double x;
  private final List<Segment> left = new ArrayList<>();
  private final List<Segment> right = new ArrayList<>();
  private Agreement agreement;

  /**
   * @param lines none of which crosses x
   */
  Gutter(List<Line> lines, TextFlow flow, double x) {
    this.lines = lines;
    this.flow = flow;
    this.x = x;
    for (Line line : lines) {
      for (Segment s : line.segments()) (s.middle() < x ? left : right).add(s);
    }
  }

  /** Counted when it is asked for: most blanks on a page are none. */
  private Agreement agreement() {
    if (agreement == null) agreement = new Agreement(lines, flow, x);
    return agreement;
  }

  /** Lines that it runs down beside. */
  int length() {
    return lines.size();
  }

  List<Line> side(boolean toLeft) {
    List<Line> side = new ArrayList<>();
    for (Line line : lines) {
      List<Segment> own = line.segments().stream().filter(s -> s.middle() < x == toLeft).toList();
      if (!own.isEmpty()) side.add(Line.apart(own));
    }
    return side;
  }

  double leftOfRight() {
    return right.stream().mapToDouble(Segment::x0).min().orElse(x);
  }

  double leftOfLeft() {
    return left.stream().mapToDouble(Segment::x0).min().orElse(x);
  }

  double width() {
    return leftOfRight() - left.stream().mapToDouble(Segment::x1).max().orElse(x);
  }

  boolean hasBothSides() {
    return !left.isEmpty() && !right.isEmpty();
  }

  /** Whether it lies between the marks of a list and their words. */
  boolean partsMarks() {
    for (Line line : lines) {
      for (int k = 0; k + 1 < line.segments().size(); k++) {
        Segment before = line.segments().get(k);
        Segment after = line.segments().get(k + 1);
        boolean here = before.middle() < x && after.middle() > x;
        if (here && flow.isMark(before) && !flow.isMark(after)) return true;
      }
    }
    return false;
  }

  /** Rows of cells on both sides that begin together. */
  boolean partsCells() {
    int together = agreement().together();
    return together >= 3 && agreement().apart() * 4 <= together && !isContents();
  }

  /** A table of contents or an index: dots lead to the numbers of pages. */
  private boolean isContents() {
    return lines.stream().filter(l -> l.text().contains("....")).count() * 2 > lines.size();
  }

  boolean partsRows() {
    boolean full = agreement().shared() * 5 >= lines.size() * 3;
    return partsCells() && agreement().apart() == 0 && full && !partsLists();
  }

  /** Running text on one side at least, which pays no heed to what begins on the other. */
  boolean partsText() {
    boolean text = flow.isText(left) || flow.isText(right);
    boolean apart = text && agreement().apart() >= 2;
    return apart && agreement().apart() > agreement().together() || partsLists();
  }

  /** Each side has a list of its own, or text is beside a list. */
  private boolean partsLists() {
    return isList(false) && (isList(true) || flow.isText(left));
  }

  private boolean isList(boolean toLeft) {
    double edge = toLeft ? leftOfLeft() : leftOfRight();
    List<ListMark> articles = new ArrayList<>();
    List<ListMark> letters = new ArrayList<>();
    List<ListMark> figures = new ArrayList<>();
    for (Segment s : toLeft ? left : right) {
      if (Math.abs(s.x0() - edge) > s.size()) continue;
      ListMark mark = flow.isMark(s) ? ListMark.of(s.text()) : null;
      ListMark article = ListMark.ofArticle(s.text());
      if (article != null) articles.add(article);
      else if (mark != null) (mark.letter() ? letters : figures).add(mark);
    }
    return ListMark.isSequence(articles)
        || ListMark.isSequence(letters)
        || ListMark.isSequence(figures);
  }

  /** Notes that go on below what stands beside the first of them, such as a legend. */
  boolean partsNotesFromShorter() {
    int last = 0;
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).segments().stream().anyMatch(s -> s.middle() > x)) last = i + 1;
    }
    List<Segment> words = left.stream().filter(s -> !flow.isMark(s)).toList();
    boolean notes = words.size() <= 1.1 * side(true).size() && letters(words) >= LETTERS;
    return notes && last * 5 <= lines.size() * 3 && isList(true);
  }

  /** Where a column is known to begin on this page or another, less is asked of it. */
  boolean mayPartColumns() {
    boolean text = letters(left) >= LETTERS && letters(right) >= LETTERS;
    return text && agreement().apart() >= agreement().together();
  }

  private static double letters(List<Segment> segments) {
    return segments.stream().mapToInt(s -> s.text().length()).average().orElse(0);
  }
}
