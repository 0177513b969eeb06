package clearbed.read.pdf;

import clearbed.read.layout.Ruling;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.util.Matrix;

/** Follows the path operators of a page and keeps the level and upright lines that are painted. */
final class PathRulings {
  static final List<String> OPERATORS =
      List.of(
          "m", "l", "c", "v", "y", "h", "re", "S", "s", "f", "F", "f*", "B", "B*", "b", "b*", "n");

  /** Drawings have more; their lines make no tables. */
  private static final int MOST = 20_000;

  private final List<Ruling> path = new ArrayList<>();
  private final List<Ruling> painted = new ArrayList<>();
  private double originX;
  private double originY;
  private Point2D.Double start;
  private Point2D.Double current;
  private int strokes;

  void start(double x, double y) {
    path.clear();
    painted.clear();
    originX = x;
    originY = y;
    start = null;
    current = null;
    strokes = 0;
  }

  int strokes() {
    return strokes;
  }

  void operator(String name, List<COSBase> operands, Matrix matrix) {
    double[] n = numbers(operands);
    strokes++;
    switch (name) {
      case "m" -> {
        if (n.length >= 2) start = current = point(matrix, n[0], n[1]);
      }
      case "l" -> {
        if (n.length >= 2) to(point(matrix, n[0], n[1]));
      }
      case "c", "v", "y" -> {
        if (n.length >= 4) current = point(matrix, n[n.length - 2], n[n.length - 1]);
      }
      case "h" -> {
        if (start != null) to(start);
      }
      case "re" -> {
        if (n.length >= 4) box(matrix, n[0], n[1], n[2], n[3]);
      }
      case "s", "b", "b*" -> {
        if (start != null) to(start);
        paint(false);
      }
      case "S", "B", "B*" -> paint(false);
      case "f", "F", "f*" -> paint(true);
      default -> path.clear();
    }
  }

  private Point2D.Double point(Matrix matrix, double x, double y) {
    Point2D.Float p = matrix.transformPoint((float) x, (float) y);
    return new Point2D.Double(p.getX() - originX, p.getY() - originY);
  }

  private void to(Point2D.Double end) {
    if (current != null) keep(Ruling.between(current.x, current.y, end.x, end.y));
    current = end;
  }

  private void keep(Ruling ruling) {
    if (path.size() < MOST) path.add(ruling);
  }

  private void box(Matrix matrix, double x, double y, double width, double height) {
    Point2D.Double a = point(matrix, x, y);
    Point2D.Double b = point(matrix, x + width, y + height);
    Ruling whole = Ruling.between(a.x, a.y, b.x, b.y);
    start = current = a;
    if (whole.isLevel() || whole.isUpright()) {
      keep(whole);
      return;
    }
    keep(new Ruling(whole.x0(), whole.y0(), whole.x1(), whole.y0()));
    keep(new Ruling(whole.x0(), whole.y1(), whole.x1(), whole.y1()));
    keep(new Ruling(whole.x0(), whole.y0(), whole.x0(), whole.y1()));
    keep(new Ruling(whole.x1(), whole.y0(), whole.x1(), whole.y1()));
  }

  private void paint(boolean filled) {
    // A filled area is shading, unless it is so thin that it can only be a line.
    for (Ruling r : path) {
      boolean line = filled ? isThinBox(r) : r.isLevel() || r.isUpright();
      if (line && painted.size() < MOST) painted.add(r);
    }
    path.clear();
  }

  private static boolean isThinBox(Ruling r) {
    return (r.isLevel() && r.y1() > r.y0()) || (r.isUpright() && r.x1() > r.x0());
  }

  private static double[] numbers(List<COSBase> operands) {
    return operands.stream()
        .filter(COSNumber.class::isInstance)
        .mapToDouble(o -> ((COSNumber) o).floatValue())
        .toArray();
  }

  /** The painted lines as seen when text of the direction (degrees) reads upright. */
  List<Ruling> turned(int direction, double width, double height) {
    return painted.stream().map(r -> turned(r, direction, width, height)).toList();
  }

  /** What is measured from the foot of the page, as {@link #turned(int, double, double)}. */
  static Ruling turned(Ruling r, int direction, double width, double height) {
    return switch (direction) {
      case 90 -> Ruling.between(r.y0(), r.x0(), r.y1(), r.x1());
      case 180 -> Ruling.between(width - r.x0(), r.y0(), width - r.x1(), r.y1());
      case 270 -> Ruling.between(height - r.y0(), width - r.x0(), height - r.y1(), width - r.x1());
      default -> Ruling.between(r.x0(), height - r.y0(), r.x1(), height - r.y1());
    };
  }
}
