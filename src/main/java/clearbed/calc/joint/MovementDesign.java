package clearbed.calc.joint;

import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.Rounding;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.model.report.Calculation;
import clearbed.model.value.Quantity;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * What a movement joint needs and what the stated one carries. Where inputs are ranges or unknown,
 * results run from the best case to the worst; the calculation shows the worst.
 *
 * @param movement that the joint takes up
 * @param computedWidth by movement, capability and tolerance, not rounded
 * @param guidelineWidth least width by the guideline, not rounded
 * @param leastWidth the larger of the two and of what the sealant's maker asks for, not rounded;
 *     what a stated width is judged by
 * @param requiredWidth that, rounded up to what can be built
 * @param governs what gives the least width in the worst case
 * @param strain of the sealant at the stated width, percent; empty without a width
 * @param capability of the sealant, percent
 * @param spacingByArithmetic largest spacing whose movement the stated width carries; zero when
 *     none
 * @param spacingByGuideline largest spacing that the guideline allows the stated width; zero when
 *     none
 * @param largestSpacing the smaller of the two
 * @param widthFit the stated width against {@code leastWidth}
 * @param spacingFit the stated spacing against the guideline's widest
 * @param strainFit the strain against the capability
 * @param unknowns what is not stated, and whether knowing it could change the verdict on the width
 * @param notes what a reader should know of the result, a sentence each
 */
public record MovementDesign(
    Interval movement,
    Interval computedWidth,
    Interval guidelineWidth,
    Interval leastWidth,
    Interval requiredWidth,
    Governs governs,
    Optional<Interval> strain,
    Interval capability,
    Optional<Interval> spacingByArithmetic,
    Optional<Interval> spacingByGuideline,
    Optional<Interval> largestSpacing,
    Fit widthFit,
    Fit spacingFit,
    Fit strainFit,
    List<UnknownFigure> unknowns,
    List<String> notes,
    Calculation calculation) {

  public MovementDesign {
    unknowns = List.copyOf(unknowns);
    notes = List.copyOf(notes);
  }

  /**
   * A figure that no document states.
   *
   * @param name of the input: exposure, spacing, width, range, capability
   * @param taken what was reckoned with instead, in words
   * @param changesVerdict true when the verdict on the stated width could turn on it
   */
  public record UnknownFigure(String name, String label, String taken, boolean changesVerdict) {}

  /** The width that is enough in the worst case, to be built in either system of units. */
  public String wider(Measure first) {
    return Rounding.width(leastWidth.high(), first);
  }

  /**
   * The spacing at which the stated width is enough in the worst case, in either system of units;
   * empty without a width and where no spacing makes it enough.
   */
  public Optional<String> closer(Measure first) {
    return largestSpacing
        .map(Interval::low)
        .filter(spacing -> Rounding.down(spacing, Measure.INCH).number() > 0)
        .map(spacing -> Rounding.spacing(spacing, first));
  }

  /**
   * Designs the joint and judges what is stated of it.
   *
   * @throws IllegalArgumentException when the guideline does not speak of the exposure
   */
  public static MovementDesign of(MovementInputs inputs, MovementGuideline guideline) {
    MovementRange range = MovementRange.of(inputs, guideline);
    MovementCase worst = range.worst();
    boolean widthKnown = inputs.width().isPresent();
    return new MovementDesign(
        range.results(MovementCase::movement),
        range.results(MovementCase::computedWidth),
        range.results(MovementCase::guidelineWidth),
        range.results(MovementCase::leastWidth),
        range.results(MovementCase::requiredWidth),
        worst.governs(),
        results(range, MovementCase::strain),
        range.results(MovementCase::capability),
        results(range, MovementCase::spacingByArithmetic),
        results(range, MovementCase::spacingByGuideline),
        results(range, MovementCase::largestSpacing),
        widthKnown ? range.fit(MovementCase::widthMeets) : Fit.UNKNOWN,
        inputs.spacing().isPresent() ? range.fit(MovementCase::spacingMeets) : Fit.UNKNOWN,
        widthKnown ? range.fit(MovementCase::strainMeets) : Fit.UNKNOWN,
        MovementUnknowns.of(inputs, guideline),
        MovementNotes.of(inputs, range),
        MovementWorkings.of(range));
  }

  private static Optional<Interval> results(
      MovementRange range, Function<MovementCase, Optional<Quantity>> result) {
    return result.apply(range.worst()).isEmpty()
        ? Optional.empty()
        : Optional.of(range.results(one -> result.apply(one).orElseThrow()));
  }
}
