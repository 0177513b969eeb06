package clearbed.cli.joint;

import clearbed.calc.figure.Measure;
import clearbed.calc.joint.DifferentialMovement;
import clearbed.calc.joint.JointLayout;
import clearbed.calc.joint.MovementDesign;
import clearbed.calc.joint.SealantDepth;
import clearbed.calc.joint.SealingTemperature;
import clearbed.model.value.Quantity;
import java.util.Optional;

/**
 * All that the command shows.
 *
 * @param complete true when tolerance and other movement are given as well
 * @param widestSpacing of the guideline in the exposure; the largest of all where that is unknown
 */
record JointAnswer(
    Measure measure,
    boolean complete,
    Quantity widestSpacing,
    MovementDesign design,
    SealantDepth depth,
    Optional<JointLayout> layout,
    Optional<DifferentialMovement> substrate,
    Optional<SealingTemperature> sealed) {

  boolean exposureKnown() {
    return design.unknowns().stream().noneMatch(one -> one.name().equals("exposure"));
  }
}
