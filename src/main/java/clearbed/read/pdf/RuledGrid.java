package clearbed.read.pdf;

import clearbed.read.layout.Ruling;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/** The cells that the lines of one frame make; an edge that is not drawn joins two cells. */
final class RuledGrid {
  private static final double NEAR = 3;

  private final List<Ruling> levels;
  private final List<Ruling> uprights;
  private final List<Double> xs;
  private final List<Double> ys;

  RuledGrid(List<Ruling> frame) {
    levels = frame.stream().filter(Ruling::isLevel).toList();
    uprights = frame.stream().filter(r -> !r.isLevel()).toList();
    // Tables are often drawn without the lines at their sides, top or bottom.
    xs =
        distinct(
            DoubleStream.concat(
                uprights.stream().mapToDouble(Ruling::x),
                levels.stream().flatMapToDouble(r -> DoubleStream.of(r.x0(), r.x1()))));
    ys =
        distinct(
            DoubleStream.concat(
                levels.stream().mapToDouble(Ruling::y),
                uprights.stream().flatMapToDouble(r -> DoubleStream.of(r.y0(), r.y1()))));
  }

  private static List<Double> distinct(DoubleStream values) {
    List<Double> distinct = new ArrayList<>();
    values
        .sorted()
        .forEach(
            v -> {
              int n = distinct.size();
              if (n == 0 || v - distinct.get(n - 1) > NEAR) distinct.add(v);
            });
    return distinct;
  }

  int columns() {
    return xs.size() - 1;
  }

  int rows() {
    return ys.size() - 1;
  }

  double top() {
    return ys.get(0);
  }

  double bottom() {
    return ys.get(ys.size() - 1);
  }

  double right() {
    return xs.get(xs.size() - 1);
  }

  /** Square points that a cell covers, with those it is merged with. */
  double area(int row, int column) {
    double width = xs.get(column + columnSpan(row, column)) - xs.get(column);
    return width * (ys.get(row + rowSpan(row, column)) - ys.get(row));
  }

  int columnSpan(int row, int column) {
    int span = 1;
    while (!isSplitAfterColumn(row, column + span - 1)) span++;
    return span;
  }

  int rowSpan(int row, int column) {
    int span = 1;
    while (!isSplitAfterRow(row + span - 1, column)) span++;
    return span;
  }

  List<Double> lefts() {
    return List.copyOf(xs.subList(0, columns()));
  }

  /** Index of the column, or -1 outside the grid. */
  int column(double x) {
    return between(xs, x);
  }

  int row(double y) {
    return between(ys, y);
  }

  private static int between(List<Double> edges, double value) {
    for (int i = 0; i + 1 < edges.size(); i++) {
      if (value >= edges.get(i) && value < edges.get(i + 1)) return i;
    }
    return -1;
  }

  /** Whether a line is drawn between a column and the next, in a row. */
  boolean isSplitAfterColumn(int row, int column) {
    if (column + 1 >= columns()) return true;
    double x = xs.get(column + 1);
    double y = (ys.get(row) + ys.get(row + 1)) / 2;
    return uprights.stream()
        .anyMatch(r -> Math.abs(r.x() - x) <= NEAR && r.y0() <= y && r.y1() >= y);
  }

  /** Whether a line is drawn between a row and the next, in a column. */
  boolean isSplitAfterRow(int row, int column) {
    if (row + 1 >= rows()) return true;
    double y = ys.get(row + 1);
    double x = (xs.get(column) + xs.get(column + 1)) / 2;
    return levels.stream().anyMatch(r -> Math.abs(r.y() - y) <= NEAR && r.x0() <= x && r.x1() >= x);
  }
}
