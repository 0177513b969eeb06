package clearbed.calc.surface;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.WorkedFigure;
import clearbed.calc.figure.Workings;
import clearbed.model.report.Calculation;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How flat the substrate must be for a tile (ANSI A108.02): 1/4 in in 10 ft and 1/16 in in 12 in
 * while every edge is under 15 in, else 1/8 in in 10 ft and 1/16 in in 24 in.
 *
 * @param allowance for the longest edge; the closer one where the edge may be either
 * @param fit of the stated flatness under both straightedges, judged by slope; unknown when none is
 *     stated over 4 ft or more
 */
public record SubstrateFlatness(Allowance allowance, Fit fit, Calculation calculation) {

  /**
   * @param overall under a long straightedge
   * @param local under a short one
   */
  public record Allowance(Content.Deviation overall, Content.Deviation local) {}

  /** The edge from which the closer allowance holds. */
  public static final Quantity LONG_EDGE = Quantity.of(15, Unit.INCH);

  /** From here on a straightedge is the long one of the two. */
  private static final Quantity LONG_STRAIGHTEDGE = Quantity.of(4, Unit.FOOT);

  /**
   * Figures are rounded as they go from one system to the other: 1/8 in in 10 ft is written 3.2 mm
   * in 3 m, which is a steeper slope.
   */
  private static final double ROUNDED = 1.06;

  private static final Allowance SHORT =
      new Allowance(deviation(1.0 / 4, 120), deviation(1.0 / 16, 12));
  private static final Allowance LONG =
      new Allowance(deviation(1.0 / 8, 120), deviation(1.0 / 16, 24));
  private static final String SOURCE =
      "ANSI A108.01, until 2023 A108.02, substrate tolerance, as trade journals report it [R]";

  /** The allowance for a tile by its longest edge. */
  public static Allowance allowance(Quantity longestEdge) {
    return longestEdge.compareTo(LONG_EDGE) < 0 ? SHORT : LONG;
  }

  /**
   * Judges a stated flatness. Any of several statements over a long straightedge may satisfy it, as
   * documents give one for each class of tile size.
   *
   * @param stated empty when not stated
   */
  public static SubstrateFlatness of(
      CalculationSubject subject, Given longestEdge, Optional<Content.Flatness> stated) {
    longestEdge.positive("the longest edge", Dimension.LENGTH);
    List<Content.Deviation> all = stated.map(Content.Flatness::deviations).orElse(List.of());
    Optional<Content.Deviation> overall = flattest(all, true);
    Optional<Content.Deviation> local = flattest(all, false);
    Fit fit = overall.map(one -> fit(longestEdge, one, local)).orElse(Fit.UNKNOWN);
    return new SubstrateFlatness(
        allowance(longestEdge.high()), fit, calculation(subject, longestEdge, overall, local));
  }

  /** Of what is stated under the long straightedge, or under the short one. */
  private static Optional<Content.Deviation> flattest(List<Content.Deviation> all, boolean under) {
    return all.stream()
        .filter(one -> one.over().compareTo(LONG_STRAIGHTEDGE) >= 0 == under)
        .min(Comparator.comparing(SubstrateFlatness::slope));
  }

  private static Fit fit(Given edge, Content.Deviation overall, Optional<Content.Deviation> local) {
    if (meets(allowance(edge.high()), overall, local)) return Fit.MEETS;
    return meets(allowance(edge.low()), overall, local) ? Fit.DEPENDS : Fit.FALLS_SHORT;
  }

  private static boolean meets(
      Allowance allowance, Content.Deviation overall, Optional<Content.Deviation> local) {
    return slope(overall) <= slope(allowance.overall()) * ROUNDED
        && local.map(one -> slope(one) <= slope(allowance.local()) * ROUNDED).orElse(true);
  }

  private static double slope(Content.Deviation deviation) {
    return deviation.deviation().in(Unit.METRE) / deviation.over().in(Unit.METRE);
  }

  private static Content.Deviation deviation(double inches, double over) {
    return new Content.Deviation(Quantity.of(inches, Unit.INCH), Quantity.of(over, Unit.INCH));
  }

  private static Calculation calculation(
      CalculationSubject subject,
      Given longestEdge,
      Optional<Content.Deviation> stated,
      Optional<Content.Deviation> statedLocal) {
    Workings w = new Workings();
    WorkedFigure edge = w.high("edge", "Longest edge of the tile", longestEdge);
    WorkedFigure from = w.assumed("long_edge", "Closer allowance from", LONG_EDGE, SOURCE);
    Allowance allowance = allowance(edge.quantity());
    String test = "IF(" + edge.in(Unit.INCH) + "<{long_edge}-0.000000001,";
    WorkedFigure overall =
        w.step(
            "overall",
            "Deviation allowed in 10 ft",
            "1/4 in for shorter edges, else 1/8 in",
            test + "0.25,0.125)",
            allowance.overall().deviation());
    stated.ifPresent(one -> margin(w, overall, one));
    WorkedFigure shortEdge =
        w.step(
            "local_over",
            "Length of the short straightedge",
            "12 in for shorter edges, else 24 in",
            "IF(" + edge.in(from.quantity().unit()) + "<{long_edge}-0.000000001,12,24)",
            allowance.local().over());
    WorkedFigure local =
        w.step(
            "local",
            "Deviation allowed under the short straightedge",
            "1/16 in for all edges",
            "0.0625",
            allowance.local().deviation());
    statedLocal.ifPresent(one -> shortMargin(w, local, shortEdge, one));
    return w.done(subject, "Flatness of the substrate");
  }

  private static void shortMargin(
      Workings w, WorkedFigure local, WorkedFigure shortEdge, Content.Deviation stated) {
    WorkedFigure departure =
        w.high(
            "stated_local",
            "Deviation as stated, short straightedge",
            Given.stated(stated.deviation(), null, "as stated"));
    WorkedFigure over =
        w.low(
            "stated_local_over",
            "Short straightedge as stated",
            Given.stated(stated.over(), null, "as stated"));
    double carried = slope(stated) * shortEdge.as(Unit.INCH);
    WorkedFigure there =
        w.step(
            "local_carried",
            "Deviation as stated, carried to the short straightedge",
            "stated departure × short straightedge ÷ straightedge",
            departure.in(Unit.INCH) + "*" + shortEdge.in(Unit.INCH) + "/" + over.in(Unit.INCH),
            Quantity.of(carried, Unit.INCH));
    w.step(
        "local_room",
        "Room left under the short straightedge",
        "allowed × room for rounding - stated; negative: not flat enough",
        local.in(Unit.INCH) + "*" + ROUNDED + "-" + there.in(Unit.INCH),
        Quantity.of(local.as(Unit.INCH) * ROUNDED - carried, Unit.INCH));
  }

  private static void margin(Workings w, WorkedFigure overall, Content.Deviation stated) {
    Given words = Given.stated(stated.deviation(), null, "as stated");
    WorkedFigure departure = w.high("stated", "Deviation as stated", words);
    WorkedFigure over =
        w.low(
            "stated_over",
            "Straightedge as stated",
            Given.stated(stated.over(), null, "as stated"));
    WorkedFigure rounded =
        w.assumed(
            "rounded",
            "Room for rounded figures",
            Quantity.of(ROUNDED, Unit.ONE),
            "metric figures for the same flatness are rounded: 3.2 mm in 3 m is 1/8 in in 10 ft");
    WorkedFigure carried =
        w.step(
            "carried",
            "Deviation as stated, carried to 10 ft",
            "stated departure × 10 ft ÷ straightedge",
            departure.in(Unit.INCH) + "*120/" + over.in(Unit.INCH),
            Quantity.of(slope(stated) * 120, Unit.INCH));
    w.step(
        Calculation.MARGIN,
        "Room left under what is allowed",
        "allowed × room for rounding - stated; negative: not flat enough",
        overall.in(Unit.INCH) + "*" + rounded.in(Unit.ONE) + "-" + carried.in(Unit.INCH),
        Quantity.of(overall.as(Unit.INCH) * ROUNDED - carried.as(Unit.INCH), Unit.INCH));
  }
}
