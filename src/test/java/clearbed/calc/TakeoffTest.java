package clearbed.calc;

import static clearbed.calc.Cases.SUBJECT;
import static clearbed.calc.Cases.length;
import static clearbed.calc.Cases.number;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import clearbed.calc.figure.Given;
import clearbed.calc.takeoff.Takeoff;
import clearbed.calc.takeoff.TakeoffInputs;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import org.junit.jupiter.api.Test;

class TakeoffTest {

  @Test
  void countsTilesByTheirModule() {
    // 100 modules of 100 mm each way in a square metre; a tenth more for waste.
    Takeoff takeoff = Takeoff.of(SUBJECT, squareMetre("98 mm", "2 mm", "10 %"));

    assertThat(takeoff.tiles()).isEqualTo(110);
    Sheet.agrees(takeoff.calculation());
  }

  @Test
  void groutFillsWhatTheTilesLeave() {
    Takeoff takeoff = Takeoff.of(SUBJECT, squareMetre("98 mm", "2 mm", "0 %"));

    // 1 m² less 100 tiles of 98 mm by 98 mm leaves 0.0396 m², 8 mm deep: 0.3168 L; 1.6 kg each.
    assertThat(takeoff.grout().in(Unit.LITRE)).isCloseTo(0.3168, within(1e-9));
    assertThat(takeoff.groutMass().in(Unit.KILOGRAM)).isCloseTo(0.50688, within(1e-9));
    assertThat(takeoff.groutBags()).isEqualTo(1);
  }

  @Test
  void mortarIsAreaTimesThickness() {
    Takeoff takeoff = Takeoff.of(SUBJECT, squareMetre("98 mm", "2 mm", "0 %"));

    assertThat(takeoff.mortar().in(Unit.LITRE)).isCloseTo(3, within(1e-9));
    assertThat(takeoff.mortarMass().in(Unit.KILOGRAM)).isCloseTo(4.2, within(1e-9));
  }

  @Test
  void saysThatYieldsAreAssumed() {
    Takeoff takeoff = Takeoff.of(SUBJECT, joints("154 ft", "1/2 in", "1/4 in"));

    assertThat(takeoff.calculation().inputs())
        .filteredOn(input -> input.name().equals("grout_density"))
        .singleElement()
        .satisfies(
            input -> {
              assertThat(input.assumed()).isTrue();
              assertThat(input.basis()).contains("no source");
            });
  }

  @Test
  void worksInFeetAndPounds() {
    Takeoff takeoff = Takeoff.of(SUBJECT, joints("40 ft", "3/8 in", "3/16 in"));

    Sheet.agrees(takeoff.calculation());
    assertThat(takeoff.cartridges()).isPositive();
  }

  @Test
  void refusesATileWithoutLength() {
    assertThatThrownBy(() -> squareMetre("0 mm", "2 mm", "10 %"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("tile length");
  }

  private static TakeoffInputs squareMetre(String tile, String joint, String waste) {
    Given none = Given.stated(Quantity.of(0, Unit.MILLIMETRE), null, "");
    TakeoffInputs.Yields common = TakeoffInputs.Yields.common();
    Given wasted =
        Given.stated(
            Quantity.of(Double.parseDouble(waste.replace(" %", "")), Unit.PERCENT), null, waste);
    return new TakeoffInputs(
        Given.stated(Quantity.of(1, Unit.SQUARE_METRE), null, ""),
        length(tile),
        length(tile),
        length(joint),
        length("8 mm"),
        length("3 mm"),
        none,
        none,
        none,
        new TakeoffInputs.Yields(
            wasted,
            wasted,
            number(1.6),
            common.groutBag(),
            number(1.4),
            common.mortarBag(),
            common.cartridge()));
  }

  /** A square metre of such tile, in millimetres, without waste. */
  static TakeoffInputs tiles(double length, double width, double thickness, double joint) {
    TakeoffInputs.Yields common = TakeoffInputs.Yields.common();
    Given none = Given.stated(Quantity.of(0, Unit.MILLIMETRE), null, "");
    Given noWaste = Given.stated(Quantity.of(0, Unit.PERCENT), null, "");
    return new TakeoffInputs(
        Given.stated(Quantity.of(1, Unit.SQUARE_METRE), null, ""),
        length(length + " mm"),
        length(width + " mm"),
        length(joint + " mm"),
        length(thickness + " mm"),
        none,
        none,
        none,
        none,
        new TakeoffInputs.Yields(
            noWaste,
            noWaste,
            number(1.6),
            common.groutBag(),
            number(1.4),
            common.mortarBag(),
            common.cartridge()));
  }

  /** 100 sq ft of mosaic with movement joints of that size, no waste of sealant. */
  static TakeoffInputs joints(String run, String width, String depth) {
    TakeoffInputs.Yields common = TakeoffInputs.Yields.common();
    Given noWaste = Given.stated(Quantity.of(0, Unit.PERCENT), null, "");
    return new TakeoffInputs(
        Given.stated(Quantity.of(100, Unit.SQUARE_FOOT), null, ""),
        length("2 in"),
        length("3 in"),
        length("1/8 in"),
        length("1/4 in"),
        length("3/32 in"),
        length(run),
        length(width),
        length(depth),
        new TakeoffInputs.Yields(
            common.tileWaste(),
            noWaste,
            common.groutDensity(),
            common.groutBag(),
            common.mortarDensity(),
            common.mortarBag(),
            common.cartridge()));
  }
}
