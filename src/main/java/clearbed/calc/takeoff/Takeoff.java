package clearbed.calc.takeoff;

import clearbed.calc.figure.CalculationSubject;
import clearbed.model.report.Calculation;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;

/**
 * What a bidder prices: pieces and quantities with waste.
 *
 * @param tiles whole tiles
 * @param grout volume of the grout joints
 * @param groutMass dry grout for it
 * @param groutBags whole bags
 * @param mortar volume of the mortar bed
 * @param mortarMass dry mortar for it
 * @param mortarBags whole bags
 * @param sealant volume of the movement joints
 * @param cartridges whole cartridges
 */
public record Takeoff(
    int tiles,
    Quantity grout,
    Quantity groutMass,
    int groutBags,
    Quantity mortar,
    Quantity mortarMass,
    int mortarBags,
    Quantity sealant,
    int cartridges,
    Calculation calculation) {

  /** Quantities for an area of tile. */
  public static Takeoff of(CalculationSubject subject, TakeoffInputs inputs) {
    return new TakeoffWorkings(inputs).takeoff(subject);
  }

  static Quantity litres(double litres) {
    return Quantity.of(litres, Unit.LITRE);
  }
}
