package clearbed.calc.joint;

import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.joint.MovementDesign.UnknownFigure;
import clearbed.calc.joint.MovementInputs.MovementFigure;
import java.util.ArrayList;
import java.util.List;

/** Finds out whether the verdict on a stated width turns on a figure that nobody states. */
final class MovementUnknowns {
  private final MovementInputs inputs;
  private final MovementGuideline guideline;
  private final List<UnknownFigure> found = new ArrayList<>();

  private MovementUnknowns(MovementInputs inputs, MovementGuideline guideline) {
    this.inputs = inputs;
    this.guideline = guideline;
  }

  static List<UnknownFigure> of(MovementInputs inputs, MovementGuideline guideline) {
    return new MovementUnknowns(inputs, guideline).all();
  }

  private List<UnknownFigure> all() {
    MovementRange.FilledInputs filled = MovementRange.of(inputs, guideline).inputs();
    if (inputs.exposure().isEmpty()) exposure();
    if (inputs.spacing().isEmpty()) {
      unknown("spacing", "joint spacing", filled.spacing(), MovementFigure.SPACING);
    }
    if (inputs.width().isEmpty()) {
      found.add(new UnknownFigure("width", "joint width", "nothing: there is none to judge", true));
    }
    if (inputs.range().isEmpty()) {
      unknown("range", "temperature range", filled.range(), MovementFigure.RANGE);
    }
    if (inputs.capability().isEmpty()) {
      unknown("capability", "sealant class", filled.capability(), MovementFigure.CAPABILITY);
    }
    return found;
  }

  private void exposure() {
    List<Fit> fits = guideline.rules().keySet().stream().map(e -> fit(inputs.with(e))).toList();
    boolean turns = fits.stream().distinct().count() > 1 || fits.contains(Fit.DEPENDS);
    found.add(new UnknownFigure("exposure", "exposure", "every exposure of the guideline", turns));
  }

  private void unknown(String name, String label, Given taken, MovementFigure part) {
    Fit low = fit(inputs.with(part, taken.at(taken.low())));
    Fit high = fit(inputs.with(part, taken.at(taken.high())));
    // Open at both ends by another unknown: then it may still turn on the two together.
    boolean turns = low != high || low == Fit.DEPENDS;
    found.add(new UnknownFigure(name, label, taken.amount().toString(), turns));
  }

  private Fit fit(MovementInputs known) {
    return MovementRange.of(known, guideline).verdict().orElse(Fit.UNKNOWN);
  }
}
