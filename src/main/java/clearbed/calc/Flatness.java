package clearbed.calc;

import clearbed.model.Calculation;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import java.util.Optional;

/**
 * How flat the substrate must be for a tile (ANSI A108.02): 1/4 in in 10 ft and 1/16 in in 12 in
 * while every edge is under 15 in, else 1/8 in in 10 ft and 1/16 in in 24 in.
 *
 * @param allowance for the longest edge; the closer one where the edge may be either
 * @param fit of the stated flatness, judged by its slope where it is stated over another length
 */
public record Flatness(Allowance allowance, Fit fit, Calculation calculation) {

  /** Departure from the plane allowed over a length. */
  public record Variation(Quantity departure, Quantity over) {
    public Variation {
      if (departure.number() < 0 || over.number() <= 0) {
        throw new IllegalArgumentException(
            departure + " in " + over + ": a flatness has a length above zero");
      }
    }

    private double slope() {
      return departure.in(Unit.METRE) / over.in(Unit.METRE);
    }

    @Override
    public String toString() {
      return departure + " in " + over;
    }
  }

  /**
   * @param overall under a long straightedge
   * @param local under a short one
   */
  public record Allowance(Variation overall, Variation local) {}

  /** The edge from which the closer allowance holds. */
  public static final Quantity LONG_EDGE = Quantity.of(15, Unit.INCH);

  private static final Allowance SHORT =
      new Allowance(variation(1.0 / 4, 120), variation(1.0 / 16, 12));
  private static final Allowance LONG =
      new Allowance(variation(1.0 / 8, 120), variation(1.0 / 16, 24));
  private static final String SOURCE = "ANSI A108.02, substrate tolerance [S]";

  /** The allowance for a tile by its longest edge. */
  public static Allowance allowance(Quantity longestEdge) {
    return longestEdge.compareTo(LONG_EDGE) < 0 ? SHORT : LONG;
  }

  /**
   * Judges a stated flatness.
   *
   * @param stated over the longer of the lengths that the documents give; empty when not stated
   */
  public static Flatness of(Subject subject, Given longestEdge, Optional<Variation> stated) {
    longestEdge.positive("the longest edge", Dimension.LENGTH);
    Allowance allowance = allowance(longestEdge.high());
    Fit fit = stated.map(one -> fit(longestEdge, one)).orElse(Fit.UNKNOWN);
    return new Flatness(allowance, fit, calculation(subject, longestEdge));
  }

  private static Fit fit(Given edge, Variation stated) {
    boolean closer = meets(allowance(edge.high()), stated);
    boolean wider = meets(allowance(edge.low()), stated);
    if (closer) return Fit.MEETS;
    return wider ? Fit.DEPENDS : Fit.FALLS_SHORT;
  }

  private static boolean meets(Allowance allowance, Variation stated) {
    // A length nearer the short straightedge than the long one is judged as local.
    boolean local = stated.over().compareTo(allowance.local().over().times(2)) <= 0;
    Variation by = local ? allowance.local() : allowance.overall();
    return stated.slope() <= by.slope() * (1 + 1e-9);
  }

  private static Variation variation(double inches, double over) {
    return new Variation(Quantity.of(inches, Unit.INCH), Quantity.of(over, Unit.INCH));
  }

  private static Calculation calculation(Subject subject, Given longestEdge) {
    Workings w = new Workings();
    Figure edge = w.high("edge", "Longest edge of the tile", longestEdge);
    Figure from = w.assumed("long_edge", "Closer allowance from", LONG_EDGE, SOURCE);
    Allowance allowance = allowance(edge.quantity());
    String test = "IF(" + edge.in(Unit.INCH) + "<{long_edge}-0.000000001,";
    w.step(
        "overall",
        "Departure allowed in 10 ft",
        "1/4 in for shorter edges, else 1/8 in",
        test + "0.25,0.125)",
        allowance.overall().departure());
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
        allowance.local().departure());
    return w.done(subject, "Flatness of the substrate");
  }
}
