package clearbed.calc.takeoff;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.WorkedFigure;
import clearbed.calc.figure.Workings;
import clearbed.model.report.Calculation;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.List;

/**
 * How much of one product all tiles together take, and in how many bags or cartridges; rounded up
 * once, not for each tile.
 *
 * @param packages whole ones
 */
public record ProductTotal(int packages, Calculation calculation) {
  /** Tiles that are listed one by one; of more the sum stands as one figure. */
  private static final int LISTED = 60;

  /**
   * What one tile takes of it, with waste.
   *
   * @param tag of the tile
   */
  public record TileAmount(String tag, Quantity amount) {}

  /**
   * Adds up.
   *
   * @param product as documents call it: {@code mortar, C2, white}
   * @param parts at least one, all in one unit
   * @param each what a bag or a cartridge holds
   * @param packaging "Bags" or "Cartridges"
   */
  public static ProductTotal of(
      CalculationSubject subject,
      String product,
      List<TileAmount> parts,
      Given each,
      String packaging) {
    Unit unit = parts.get(0).amount().unit();
    double sum = parts.stream().mapToDouble(part -> part.amount().in(unit)).sum();
    Workings w = new Workings();
    WorkedFigure all =
        parts.size() > LISTED ? oneFigure(w, parts, sum, unit) : added(w, parts, sum, unit);
    WorkedFigure content = w.low("each", "Content of each", each);
    double content1 = content.as(unit);
    int packages = (int) Math.ceil(Math.max(0, sum / content1 - 1e-9));
    w.step(
        "packages",
        packaging + " in all",
        "all together ÷ content of each, rounded up",
        "ROUNDUP(MAX(0," + all.in(unit) + "/" + content.in(unit) + "-0.000000001),0)",
        Quantity.of(packages, Unit.ONE));
    return new ProductTotal(packages, w.done(subject, "Total"));
  }

  private static WorkedFigure added(Workings w, List<TileAmount> parts, double sum, Unit unit) {
    StringBuilder expression = new StringBuilder();
    for (int i = 0; i < parts.size(); i++) {
      TileAmount part = parts.get(i);
      WorkedFigure one =
          w.high(
              "part" + (i + 1),
              part.tag(),
              Given.assumed(part.amount(), "as computed for " + part.tag() + ", with waste"));
      expression.append(i == 0 ? "" : "+").append(one.in(unit));
    }
    return w.step(
        "all", "All together", "sum over the tiles", expression.toString(), Quantity.of(sum, unit));
  }

  private static WorkedFigure oneFigure(Workings w, List<TileAmount> parts, double sum, Unit unit) {
    return w.high(
        "all",
        "All together",
        Given.assumed(
            Quantity.of(sum, unit), "sum of what is computed for " + parts.size() + " tiles"));
  }
}
