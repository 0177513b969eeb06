package clearbed.calc.joint;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.WorkedFigure;
import clearbed.calc.figure.Workings;
import clearbed.model.report.Calculation;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * What a field of tile moves past the substrate it is bonded to, without sign.
 *
 * @param bothHeated tile and substrate each through its own temperature range
 * @param tileOnly the tile through its range, the substrate at rest
 * @param calculation at the ends of the inputs that give the most movement with both heated
 */
public record DifferentialMovement(
    Interval bothHeated, Interval tileOnly, Calculation calculation) {

  /**
   * What moves.
   *
   * @param length of the field
   * @param tileRange temperature difference that the tile goes through
   * @param substrateRange that the substrate goes through; the tile's own where they heat alike
   */
  public record FieldInputs(
      Measure measure,
      Given tileExpansion,
      Given substrateExpansion,
      Given length,
      Given tileRange,
      Given substrateRange) {
    public FieldInputs {
      tileExpansion.positive("the expansion of the tile", Dimension.EXPANSION);
      substrateExpansion.positive("the expansion of the substrate", Dimension.EXPANSION);
      length.positive("the length", Dimension.LENGTH);
      tileRange.positive("the temperature range", Dimension.TEMPERATURE_DIFFERENCE);
      substrateRange.notNegative(
          "the temperature range of the substrate", Dimension.TEMPERATURE_DIFFERENCE);
    }
  }

  /** The movement of one corner of the inputs: tile and substrate. */
  private record Corner(Quantity tile, Quantity substrate, boolean tileHigh, boolean longest) {
    Quantity apart() {
      return ThermalMovement.differential(tile, substrate);
    }
  }

  public static DifferentialMovement of(CalculationSubject subject, FieldInputs inputs) {
    List<Corner> corners = corners(inputs);
    Corner most =
        corners.stream().reduce((a, b) -> b.apart().compareTo(a.apart()) > 0 ? b : a).orElseThrow();
    return new DifferentialMovement(
        apart(corners, inputs.measure().small()),
        corners.stream().map(Corner::tile).map(Interval::of).reduce(Interval::and).orElseThrow(),
        calculation(subject, inputs, most));
  }

  private static List<Corner> corners(FieldInputs in) {
    List<Corner> out = new ArrayList<>();
    for (boolean longest : new boolean[] {true, false}) {
      for (boolean tileHigh : new boolean[] {true, false}) {
        // With shared inputs at their ends the two movements are furthest apart one high, one low.
        out.add(corner(in, longest, tileHigh));
      }
    }
    return out;
  }

  private static Corner corner(FieldInputs in, boolean longest, boolean tileHigh) {
    Quantity length = end(in.length(), longest);
    boolean alike = in.tileRange().equals(in.substrateRange());
    Quantity tileRange = end(in.tileRange(), alike ? longest : tileHigh);
    Quantity substrateRange = end(in.substrateRange(), alike ? longest : !tileHigh);
    Measure measure = in.measure();
    return new Corner(
        ThermalMovement.free(end(in.tileExpansion(), tileHigh), length, tileRange, measure),
        ThermalMovement.free(
            end(in.substrateExpansion(), !tileHigh), length, substrateRange, measure),
        tileHigh,
        longest);
  }

  private static Quantity end(Given given, boolean high) {
    return high ? given.high() : given.low();
  }

  /** From the least to the most; nothing at all where either may move the further. */
  private static Interval apart(List<Corner> corners, Unit small) {
    Interval all =
        corners.stream().map(Corner::apart).map(Interval::of).reduce(Interval::and).orElseThrow();
    boolean tileMore = corners.stream().anyMatch(c -> c.tile().compareTo(c.substrate()) > 0);
    boolean tileLess = corners.stream().anyMatch(c -> c.tile().compareTo(c.substrate()) < 0);
    return tileMore && tileLess ? new Interval(Quantity.of(0, small), all.high()) : all;
  }

  private static Calculation calculation(CalculationSubject subject, FieldInputs in, Corner most) {
    Workings w = new Workings();
    Measure measure = in.measure();
    boolean alike = in.tileRange().equals(in.substrateRange());
    WorkedFigure tileExpansion =
        input(
            w,
            "tile_expansion",
            "Thermal expansion of the tile",
            in.tileExpansion(),
            most.tileHigh());
    WorkedFigure substrateExpansion =
        input(
            w,
            "substrate_expansion",
            "Thermal expansion of the substrate",
            in.substrateExpansion(),
            !most.tileHigh());
    WorkedFigure length = input(w, "length", "Length of the field", in.length(), most.longest());
    WorkedFigure tileRange =
        input(
            w,
            "tile_range",
            "Temperature range of the tile",
            in.tileRange(),
            alike ? most.longest() : most.tileHigh());
    WorkedFigure substrateRange =
        input(
            w,
            "substrate_range",
            "Temperature range of the substrate",
            in.substrateRange(),
            alike ? most.longest() : !most.tileHigh());
    WorkedFigure tile =
        w.step(
            "tile",
            "Movement of the tile; with only the tile heated, also past the substrate",
            "expansion of the tile × length × temperature range of the tile",
            ThermalMovement.expression(tileExpansion, length, tileRange, measure),
            most.tile());
    WorkedFigure substrate =
        w.step(
            "substrate",
            "Movement of the substrate",
            "expansion of the substrate × length × temperature range of the substrate",
            ThermalMovement.expression(substrateExpansion, length, substrateRange, measure),
            most.substrate());
    w.step(
        "apart",
        "Movement of the tile past the substrate, both heated",
        "the greater movement less the lesser",
        "MAX({tile},{substrate})-MIN({tile},{substrate})",
        ThermalMovement.differential(tile.quantity(), substrate.quantity()));
    return w.done(subject, "Movement of tile past its substrate");
  }

  private static WorkedFigure input(
      Workings w, String name, String label, Given given, boolean high) {
    return high ? w.high(name, label, given) : w.low(name, label, given);
  }
}
