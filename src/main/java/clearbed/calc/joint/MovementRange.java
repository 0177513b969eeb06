package clearbed.calc.joint;

import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.calc.guideline.Exposure;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * The best and the worst case of each exposure that may hold. Every result rises or falls with
 * every input all the way, so these cases bound all others.
 */
record MovementRange(FilledInputs inputs, List<MovementCase> cases) {

  /** The inputs with something reckoned for each unknown. */
  record FilledInputs(
      MovementInputs known,
      MovementGuideline guideline,
      Exposure exposure,
      Given spacing,
      Given range,
      Given capability,
      Given tolerance,
      Given other,
      Optional<Given> least) {

    MovementCase worst() {
      return new MovementCase(
          guideline,
          exposure,
          known.measure(),
          known.expansion().high(),
          spacing.high(),
          range.high(),
          other.high(),
          capability.low(),
          tolerance.high(),
          least.map(Given::high),
          known.width().map(Given::low));
    }

    MovementCase best() {
      return new MovementCase(
          guideline,
          exposure,
          known.measure(),
          known.expansion().low(),
          spacing.low(),
          range.low(),
          other.low(),
          capability.high(),
          tolerance.low(),
          least.map(Given::low),
          known.width().map(Given::high));
    }
  }

  static MovementRange of(MovementInputs inputs, MovementGuideline guideline) {
    List<FilledInputs> filled =
        exposures(inputs, guideline).stream().map(e -> fill(inputs, guideline, e)).toList();
    List<MovementCase> cases = new ArrayList<>();
    for (FilledInputs one : filled) {
      cases.add(one.best());
      cases.add(one.worst());
    }
    FilledInputs worst =
        filled.stream().max(Comparator.comparing(one -> one.worst().leastWidth())).orElseThrow();
    return new MovementRange(worst, List.copyOf(cases));
  }

  private static List<Exposure> exposures(MovementInputs inputs, MovementGuideline guideline) {
    if (inputs.exposure().isEmpty()) return guideline.rules().keySet().stream().sorted().toList();
    Exposure exposure = inputs.exposure().get();
    if (guideline.rule(exposure).isEmpty()) {
      throw new IllegalArgumentException(
          guideline.id() + " has no figures for the exposure '" + exposure.label() + "'");
    }
    return List.of(exposure);
  }

  private static FilledInputs fill(
      MovementInputs inputs, MovementGuideline guideline, Exposure exposure) {
    MovementGuideline.ExposureRule rule = guideline.rule(exposure).orElseThrow();
    Given none = Given.assumed(Quantity.of(0, inputs.measure().small()), "none stated");
    return new FilledInputs(
        inputs,
        guideline,
        exposure,
        inputs.spacing().orElse(Given.assumed(rule.spacing(), "not stated; " + rule.source())),
        inputs.range().orElse(Given.assumed(rule.plausibleRange(), unknown(rule.label()))),
        inputs
            .capability()
            .orElse(Given.assumed(guideline.plausible(), unknown("any sealant class")))
            .in(Unit.PERCENT),
        inputs.tolerance().orElse(none),
        inputs.other().orElse(none),
        inputs.least());
  }

  private static String unknown(String what) {
    return "not stated; what is plausible for " + what;
  }

  MovementCase worst() {
    return inputs.worst();
  }

  Interval results(Function<MovementCase, Quantity> result) {
    return cases.stream().map(result).map(Interval::of).reduce(Interval::and).orElseThrow();
  }

  Fit fit(Predicate<MovementCase> meets) {
    return Fit.of(cases, meets);
  }

  /** The verdict on the stated width as a whole: wide enough, and its sealant not overstrained. */
  Optional<Fit> verdict() {
    return inputs.known().width().isEmpty()
        ? Optional.empty()
        : Optional.of(fit(MovementCase::widthMeets));
  }
}
