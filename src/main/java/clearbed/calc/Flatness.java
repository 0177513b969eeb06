package clearbed.calc;

import clearbed.model.Calculation;
import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How flat the substrate must be for a tile (ANSI A108.02): 1/4 in in 10 ft and 1/16 in in 12 in
 * while every edge is under 15 in, else 1/8 in in 10 ft and 1/16 in in 24 in.
 *
 * @param allowance for the longest edge; the closer one where the edge may be either
 * @param fit of the stated flatness under a straightedge of 4 ft or more, judged by its slope;
 *     unknown when none is stated over such a length
 */
public record Flatness(Allowance allowance, Fit fit, Calculation calculation) {

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
  private static final String SOURCE = "ANSI A108.02, substrate tolerance [S]";

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
  public static Flatness of(Subject subject, Given longestEdge, Optional<Content.Flatness> stated) {
    longestEdge.positive("the longest edge", Dimension.LENGTH);
    List<Content.Deviation> under =
        stated.map(Content.Flatness::deviations).orElse(List.of()).stream()
            .filter(one -> one.over().compareTo(LONG_STRAIGHTEDGE) >= 0)
            .toList();
    Optional<Content.Deviation> flattest =
        under.stream().min(Comparator.comparing(Flatness::slope));
    Fit fit = flattest.map(one -> fit(longestEdge, one)).orElse(Fit.UNKNOWN);
    return new Flatness(
        allowance(longestEdge.high()), fit, calculation(subject, longestEdge, flattest));
  }

  private static Fit fit(Given edge, Content.Deviation stated) {
    if (meets(allowance(edge.high()), stated)) return Fit.MEETS;
    return meets(allowance(edge.low()), stated) ? Fit.DEPENDS : Fit.FALLS_SHORT;
  }

  private static boolean meets(Allowance allowance, Content.Deviation stated) {
    return slope(stated) <= slope(allowance.overall()) * ROUNDED;
  }

  private static double slope(Content.Deviation deviation) {
    return deviation.deviation().in(Unit.METRE) / deviation.over().in(Unit.METRE);
  }

  private static Content.Deviation deviation(double inches, double over) {
    return new Content.Deviation(Quantity.of(inches, Unit.INCH), Quantity.of(over, Unit.INCH));
  }

  private static Calculation calculation(
      Subject subject, Given longestEdge, Optional<Content.Deviation> stated) {
    Workings w = new Workings();
    Figure edge = w.high("edge", "Longest edge of the tile", longestEdge);
    Figure from = w.assumed("long_edge", "Closer allowance from", LONG_EDGE, SOURCE);
    Allowance allowance = allowance(edge.quantity());
    String test = "IF(" + edge.in(Unit.INCH) + "<{long_edge}-0.000000001,";
    Figure overall =
        w.step(
            "overall",
            "Departure allowed in 10 ft",
            "1/4 in for shorter edges, else 1/8 in",
            test + "0.25,0.125)",
            allowance.overall().deviation());
    stated.ifPresent(one -> margin(w, overall, one));
    w.step(
        "local_over",
        "Length of the short straightedge",
        "12 in for shorter edges, else 24 in",
        "IF(" + edge.in(from.quantity().unit()) + "<{long_edge}-0.000000001,12,24)",
        allowance.local().over());
    w.step(
        "local",
        "Departure allowed under the short straightedge",
        "1/16 in for all edges",
        "0.0625",
        allowance.local().deviation());
    return w.done(subject, "Flatness of the substrate");
  }

  private static void margin(Workings w, Figure overall, Content.Deviation stated) {
    Given words = Given.stated(stated.deviation(), null, "as stated");
    Figure departure = w.high("stated", "Departure as stated", words);
    Figure over =
        w.low(
            "stated_over",
            "Straightedge as stated",
            Given.stated(stated.over(), null, "as stated"));
    Figure rounded =
        w.assumed(
            "rounded",
            "Room for rounded figures",
            Quantity.of(ROUNDED, Unit.ONE),
            "metric figures for the same flatness are rounded: 3.2 mm in 3 m is 1/8 in in 10 ft");
    Figure carried =
        w.step(
            "carried",
            "Departure as stated, carried to 10 ft",
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
