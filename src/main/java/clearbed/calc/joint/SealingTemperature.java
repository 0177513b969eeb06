package clearbed.calc.joint;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.Rounding;
import clearbed.calc.figure.WorkedFigure;
import clearbed.calc.figure.Workings;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.model.report.Calculation;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;

/**
 * A joint sealed at a known temperature, where opening and closing are reckoned apart: what is
 * sealed cold mostly closes, what is sealed hot mostly opens (the method is that of ASTM C1472).
 * Sealed at the far end of the range, it comes to the width that the whole range needs.
 *
 * @param opening of the joint as the tile cools from the sealing temperature to the coldest
 * @param closing of it as the tile heats to the hottest
 * @param width that bears both, not rounded
 * @param opens true when opening needs the larger width
 */
public record SealingTemperature(
    Quantity opening, Quantity closing, Quantity width, boolean opens, Calculation calculation) {

  /**
   * What is known.
   *
   * @param coldest temperature of the tile surface
   * @param hottest temperature of the tile surface
   * @param sealed temperature of the tile while the joint is sealed, mostly a range
   * @param sealant its opening and closing are reckoned apart
   */
  public record SealingInputs(
      Measure measure,
      Given expansion,
      Given spacing,
      Given coldest,
      Given hottest,
      Given sealed,
      SealantClass sealant,
      Given tolerance) {
    public SealingInputs {
      expansion.positive("the expansion", Dimension.EXPANSION);
      spacing.positive("the joint spacing", Dimension.LENGTH);
      tolerance.notNegative("the tolerance", Dimension.LENGTH);
      for (Given temperature : new Given[] {coldest, hottest, sealed}) {
        temperature.of("a temperature", Dimension.TEMPERATURE);
      }
      if (coldest.low().compareTo(hottest.high()) >= 0) {
        throw new IllegalArgumentException(
            "the coldest is " + coldest.amount() + ", not below the hottest, " + hottest.amount());
      }
      if (sealed.low().compareTo(coldest.low()) < 0
          || sealed.high().compareTo(hottest.high()) > 0) {
        throw new IllegalArgumentException(
            "the sealing temperature is "
                + sealed.amount()
                + ", not between the coldest, "
                + coldest.amount()
                + ", and the hottest, "
                + hottest.amount());
      }
    }
  }

  /** Reckons with the ends of ranges that give the most movement either way. */
  public static SealingTemperature of(CalculationSubject subject, SealingInputs in) {
    return new SealedJoint(in).result(subject);
  }

  /** One such joint under way. */
  private static final class SealedJoint {
    private final SealingInputs in;
    private final Measure measure;
    private final Unit small;
    private final Unit degree;
    private final Workings w = new Workings();

    SealedJoint(SealingInputs in) {
      this.in = in;
      this.measure = in.measure();
      this.small = measure.small();
      this.degree = in.coldest().low().unit();
    }

    SealingTemperature result(CalculationSubject subject) {
      WorkedFigure expansion = w.high("expansion", "Thermal expansion of the tile", in.expansion());
      WorkedFigure spacing = w.high("spacing", "Joint spacing", in.spacing());
      WorkedFigure coldest = w.low("coldest", "Coldest tile surface", in.coldest().in(degree));
      WorkedFigure hottest = w.high("hottest", "Hottest tile surface", in.hottest().in(degree));
      Given sealed = in.sealed().in(degree);
      WorkedFigure warm = w.high("sealed_warm", "Warmest at which the joint is sealed", sealed);
      WorkedFigure cold = w.low("sealed_cold", "Coldest at which the joint is sealed", sealed);
      WorkedFigure extension = percent("extension", "Opening that the sealant bears", true);
      WorkedFigure compression = percent("compression", "Closing that the sealant bears", false);
      WorkedFigure tolerance = w.high("tolerance", "Construction tolerance", in.tolerance());
      WorkedFigure cooling = difference("cooling", "Cooling after sealing", warm, coldest);
      WorkedFigure heating = difference("heating", "Heating after sealing", hottest, cold);
      WorkedFigure opening =
          movement("opening", "Opening of the joint", expansion, spacing, cooling);
      WorkedFigure closing =
          movement("closing", "Closing of the joint", expansion, spacing, heating);
      WorkedFigure forOpening = width("for_opening", "opening", opening, extension, tolerance);
      WorkedFigure forClosing = width("for_closing", "closing", closing, compression, tolerance);
      Quantity larger = MovementGuideline.larger(forOpening.quantity(), forClosing.quantity());
      w.step(
          "required",
          "Width by movement, sealed at that temperature",
          "the larger of the two widths, " + Rounding.words(measure),
          Rounding.expression(
              "MAX(" + forOpening.in(small) + "," + forClosing.in(small) + ")", measure),
          Rounding.up(larger, measure));
      return new SealingTemperature(
          opening.quantity(),
          closing.quantity(),
          larger,
          forOpening.quantity().compareTo(forClosing.quantity()) >= 0,
          w.done(subject, "Width of a joint sealed at a known temperature"));
    }

    private WorkedFigure percent(String name, String label, boolean opening) {
      double number = opening ? in.sealant().extension() : in.sealant().compression();
      Quantity percent = Quantity.of(number, Unit.PERCENT);
      return w.high(name, label, Given.stated(percent, null, in.sealant().words()));
    }

    private WorkedFigure difference(
        String name, String label, WorkedFigure high, WorkedFigure low) {
      return w.step(
          name,
          label,
          high.name().equals("hottest") ? "hottest - coldest sealing" : "warmest sealing - coldest",
          "{" + high.name() + "}-{" + low.name() + "}",
          high.quantity().minus(low.quantity()));
    }

    private WorkedFigure movement(
        String name,
        String label,
        WorkedFigure expansion,
        WorkedFigure spacing,
        WorkedFigure range) {
      return w.step(
          name,
          label,
          "expansion × spacing × temperature difference",
          ThermalMovement.expression(expansion, spacing, range, measure),
          ThermalMovement.free(
              expansion.quantity(), spacing.quantity(), range.quantity(), measure));
    }

    private WorkedFigure width(
        String name,
        String way,
        WorkedFigure movement,
        WorkedFigure capability,
        WorkedFigure tolerance) {
      return w.step(
          name,
          "Width for " + way,
          way + " ÷ what the sealant bears of it + tolerance",
          movement.in(small) + "/" + capability.in(Unit.ONE) + "+" + tolerance.in(small),
          JointWidth.required(movement.quantity(), capability.quantity(), tolerance.quantity()));
    }
  }
}
