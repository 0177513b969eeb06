package clearbed.calc.takeoff;

import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;

/**
 * What quantities are taken off from.
 *
 * @param groutWidth of the joints between tiles; {@code groutDepth} their depth, mostly the tile's
 *     thickness
 * @param bedThickness of the mortar once the tile is beaten in
 * @param jointLength of all movement joints together; zero when there are none
 * @param yields what the materials and the work yield
 */
public record TakeoffInputs(
    Given area,
    Given tileLength,
    Given tileWidth,
    Given groutWidth,
    Given groutDepth,
    Given bedThickness,
    Given jointLength,
    Given jointWidth,
    Given jointDepth,
    Yields yields) {

  public TakeoffInputs {
    area.positive("the area", Dimension.AREA);
    tileLength.positive("the tile length", Dimension.LENGTH);
    tileWidth.positive("the tile width", Dimension.LENGTH);
    groutWidth.notNegative("the grout width", Dimension.LENGTH);
    groutDepth.notNegative("the grout depth", Dimension.LENGTH);
    bedThickness.notNegative("the mortar bed", Dimension.LENGTH);
    jointLength.notNegative("the length of movement joints", Dimension.LENGTH);
    jointWidth.notNegative("the joint width", Dimension.LENGTH);
    jointDepth.notNegative("the sealant depth", Dimension.LENGTH);
  }

  /**
   * Yields; the maker's data sheet wins over every default.
   *
   * @param tileWaste for cuts and breakage, {@code otherWaste} for grout, mortar and sealant
   * @param groutDensity kilograms of dry grout for a litre of joint
   * @param mortarDensity kilograms of dry mortar for a litre of bed
   * @param cartridge volume of sealant in one
   */
  public record Yields(
      Given tileWaste,
      Given otherWaste,
      Given groutDensity,
      Given groutBag,
      Given mortarDensity,
      Given mortarBag,
      Given cartridge) {
    public Yields {
      tileWaste.notNegative("the waste of tile", Dimension.RATIO);
      otherWaste.notNegative("the waste", Dimension.RATIO);
      groutDensity.positive("the dry grout for a litre", Dimension.RATIO);
      groutBag.positive("the bag of grout", Dimension.MASS);
      mortarDensity.positive("the dry mortar for a litre", Dimension.RATIO);
      mortarBag.positive("the bag of mortar", Dimension.MASS);
      cartridge.positive("the cartridge", Dimension.VOLUME);
    }

    /** Common practice, no source, in bags as they are sold where figures are in inches. */
    public static Yields common() {
      return common(Measure.INCH);
    }

    /** Common practice, no source. */
    public static Yields common(Measure measure) {
      String practice = "common practice, no source; the maker's data sheet wins";
      boolean metric = measure.alone();
      return new Yields(
          Given.assumed(Quantity.of(10, Unit.PERCENT), practice),
          Given.assumed(Quantity.of(10, Unit.PERCENT), practice),
          Given.assumed(Quantity.of(1.6, Unit.ONE), practice),
          Given.assumed(
              metric ? Quantity.of(5, Unit.KILOGRAM) : Quantity.of(25, Unit.POUND), practice),
          Given.assumed(Quantity.of(1.4, Unit.ONE), practice),
          Given.assumed(
              metric ? Quantity.of(25, Unit.KILOGRAM) : Quantity.of(50, Unit.POUND), practice),
          Given.assumed(Quantity.of(300, Unit.MILLILITRE), practice));
    }
  }
}
