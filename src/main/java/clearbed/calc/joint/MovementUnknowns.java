package clearbed.calc.joint;

import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.joint.MovementDesign.Unknown;
import clearbed.calc.joint.MovementInputs.Part;
import java.util.ArrayList;
import java.util.List;

/** Finds out whether the verdict on a stated width turns on a figure that nobody states. */
final class MovementUnknowns {
  private final MovementInputs inputs;
  private final MovementGuideline guideline;
  private final List<Unknown> found = new ArrayList<>();

  private MovementUnknowns(MovementInputs inputs, MovementGuideline guideline) {
    this.inputs = inputs;
    this.guideline = guideline;
  }

  static List<Unknown> of(MovementInputs inputs, MovementGuideline guideline) {
    return new MovementUnknowns(inputs, guideline).all();
  }

  private List<Unknown> all() {
    MovementRange.Filled filled = MovementRange.of(inputs, guideline).inputs();
    if (inputs.exposure().isEmpty()) exposure();
    if (inputs.spacing().isEmpty()) {
      unknown("spacing", "joint spacing", filled.spacing(), Part.SPACING);
    }
    if (inputs.width().isEmpty()) {
      found.add(new Unknown("width", "joint width", "nothing: there is none to judge", true));
    }
    if (inputs.range().isEmpty()) {
      unknown("range", "temperature range", filled.range(), Part.RANGE);
    }
    if (inputs.capability().isEmpty()) {
      unknown("capability", "sealant class", filled.capability(), Part.CAPABILITY);
    }
    return found;
  }

  private void exposure() {
    List<Fit> fits = guideline.rules().keySet().stream().map(e -> fit(inputs.with(e))).toList();
    boolean turns = fits.stream().distinct().count() > 1 || fits.contains(Fit.DEPENDS);
    found.add(new Unknown("exposure", "exposure", "every exposure of the guideline", turns));
  }

  private void unknown(String name, String label, Given taken, Part part) {
    Fit low = fit(inputs.with(part, taken.at(taken.low())));
    Fit high = fit(inputs.with(part, taken.at(taken.high())));
    // Open at both ends by another unknown: then it may still turn on the two together.
    boolean turns = low != high || low == Fit.DEPENDS;
    found.add(new Unknown(name, label, taken.amount().toString(), turns));
  }

  private Fit fit(MovementInputs known) {
    return MovementRange.of(known, guideline).verdict().orElse(Fit.UNKNOWN);
  }
}
