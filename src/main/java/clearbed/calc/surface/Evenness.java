package clearbed.calc.surface;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.WorkedFigure;
import clearbed.calc.figure.Workings;
import clearbed.model.report.Calculation;
import clearbed.model.value.Content;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * How even a substrate must be, in millimetres under a straightedge; between two lengths of it in
 * proportion.
 *
 * @param fit of what is stated; what only the lesser of two rows allows depends on the tile
 */
public record Evenness(Fit fit, Calculation calculation) {

  /** Millimetres that are allowed under a straightedge of that many metres. */
  private record Point(double metres, double millimetres) {}

  /** What the evenness of a place is held against. */
  public enum EvennessStandard {
    STRAIGHTEDGE(
        "3 mm under a straightedge of 2 m",
        "3 mm under 2 m: British practice for tile, 4 mm: Australian; from memory [M]",
        List.of(new Point(0.1, 1), new Point(1, 2), new Point(2, 3), new Point(4, 5)),
        List.of(
            new Point(0.1, 2), new Point(1, 3), new Point(2, 4), new Point(3, 6), new Point(4, 8))),
    DIN_FLOOR(
        "DIN 18202, table 3, row 4: 3 mm in 1 m and 9 mm in 4 m",
        "DIN 18202, table 3, rows 3 and 4, as a handbook of the German building trade reports them [R]",
        List.of(new Point(0.1, 1), new Point(1, 3), new Point(4, 9), new Point(10, 12)),
        List.of(new Point(0.1, 2), new Point(1, 4), new Point(4, 10), new Point(10, 12))),
    DIN_WALL(
        "DIN 18202, table 3, row 7: 3 mm in 1 m and 8 mm in 4 m",
        "DIN 18202, table 3, rows 6 and 7, as a handbook of the German building trade reports them [R]",
        List.of(new Point(0.1, 2), new Point(1, 3), new Point(4, 8), new Point(10, 15)),
        List.of(new Point(0.1, 3), new Point(1, 5), new Point(4, 10), new Point(10, 20)));

    private final String words;
    private final String source;
    private final List<Point> allowed;
    private final List<Point> lesser;

    EvennessStandard(String words, String source, List<Point> allowed, List<Point> lesser) {
      this.words = words;
      this.source = source;
      this.allowed = allowed;
      this.lesser = lesser;
    }

    /** What it asks for, in words. */
    public String words() {
      return words;
    }
  }

  /** Figures are rounded to whole millimetres: half of one is no difference on a long edge. */
  private static final double ROUNDED_MM = 0.25;

  /**
   * Judges a stated evenness by the closest deviation under a long and under a short straightedge.
   *
   * @param large a side of 380 mm or more: the lesser of two rows will not do for it
   * @param stated at least one deviation
   */
  public static Evenness of(
      CalculationSubject subject,
      EvennessStandard standard,
      boolean large,
      Content.Flatness stated) {
    List<Content.Deviation> all = stated.deviations();
    Optional<Content.Deviation> worst =
        Stream.of(closest(standard, all, true), closest(standard, all, false))
            .flatMap(Optional::stream)
            .max(Comparator.comparing(one -> excess(one, standard.allowed)));
    Content.Deviation judged = worst.orElseThrow();
    Fit fit =
        excess(judged, standard.allowed) <= ROUNDED_MM
            ? Fit.MEETS
            : !large && excess(judged, standard.lesser) <= ROUNDED_MM
                ? Fit.DEPENDS
                : Fit.FALLS_SHORT;
    return new Evenness(fit, calculation(subject, standard, judged));
  }

  private static Optional<Content.Deviation> closest(
      EvennessStandard standard, List<Content.Deviation> all, boolean underLong) {
    return all.stream()
        .filter(one -> one.over().in(Unit.METRE) > 1.2 == underLong)
        .min(Comparator.comparing(one -> excess(one, standard.allowed)));
  }

  private static double excess(Content.Deviation stated, List<Point> points) {
    return stated.deviation().in(Unit.MILLIMETRE) - allowed(points, stated.over().in(Unit.METRE));
  }

  private static double allowed(List<Point> points, double metres) {
    int i = upper(points, metres);
    Point low = points.get(i - 1);
    Point high = points.get(i);
    double share = Math.max(0, Math.min(1, (metres - low.metres) / (high.metres - low.metres)));
    return low.millimetres + (high.millimetres - low.millimetres) * share;
  }

  /** The row that ends the stretch which the length falls in. */
  private static int upper(List<Point> points, double metres) {
    int i = 1;
    while (i < points.size() - 1 && points.get(i).metres < metres) i++;
    return i;
  }

  private static Calculation calculation(
      CalculationSubject subject, EvennessStandard standard, Content.Deviation stated) {
    Workings w = new Workings();
    int i = upper(standard.allowed, stated.over().in(Unit.METRE));
    WorkedFigure departure =
        w.high(
            "stated", "Deviation as stated", Given.stated(stated.deviation(), null, "as stated"));
    WorkedFigure over =
        w.low(
            "stated_over",
            "Straightedge as stated",
            Given.stated(stated.over(), null, "as stated"));
    WorkedFigure[] low = row(w, "lower", "Shorter straightedge of the table", standard, i - 1);
    WorkedFigure[] high = row(w, "upper", "Longer straightedge of the table", standard, i);
    Unit m = Unit.METRE;
    Unit mm = Unit.MILLIMETRE;
    String share =
        "MAX(0,MIN(1,(%s-%s)/(%s-%s)))"
            .formatted(over.in(m), low[0].in(m), high[0].in(m), low[0].in(m));
    WorkedFigure allowed =
        w.step(
            "allowed",
            "Deviation allowed under the stated straightedge",
            "between the two lengths of the table in proportion",
            low[1].in(mm) + "+(" + high[1].in(mm) + "-" + low[1].in(mm) + ")*" + share,
            Quantity.of(allowed(standard.allowed, stated.over().in(m)), mm));
    w.step(
        Calculation.MARGIN,
        "Room left under what is allowed",
        "allowed + a quarter of a millimetre for rounded figures - stated; negative: not even enough",
        allowed.in(mm) + "+" + ROUNDED_MM + "-" + departure.in(mm),
        Quantity.of(allowed.as(mm) + ROUNDED_MM - departure.as(mm), mm));
    return w.done(subject, "Evenness of the substrate");
  }

  /** Length and departure of a row. */
  private static WorkedFigure[] row(
      Workings w, String name, String label, EvennessStandard standard, int i) {
    Point point = standard.allowed.get(i);
    return new WorkedFigure[] {
      w.assumed(name, label, Quantity.of(point.metres, Unit.METRE), standard.source),
      w.assumed(
          name + "_allowed",
          "Deviation allowed under it",
          Quantity.of(point.millimetres, Unit.MILLIMETRE),
          standard.source)
    };
  }
}
