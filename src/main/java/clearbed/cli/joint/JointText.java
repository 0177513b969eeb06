package clearbed.cli.joint;

import clearbed.calc.figure.BothUnits;
import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Rounding;
import clearbed.calc.joint.DifferentialMovement;
import clearbed.calc.joint.JointLayout;
import clearbed.calc.joint.MovementDesign;
import clearbed.calc.joint.SealingTemperature;
import clearbed.model.report.Calculation;
import clearbed.model.value.Quantity;
import clearbed.report.wording.Deferral;
import clearbed.report.wording.Phrasing;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Prints the answer for people. */
final class JointText {

  /** Beyond this many joints a list of their places is no help. */
  private static final int MOST_PLACES = 20;

  private final PrintWriter out;

  JointText(PrintWriter out) {
    this.out = out;
  }

  void print(JointAnswer answer) {
    Calculation calculation = answer.design().calculation();
    inputs("Given", calculation, false);
    inputs("Assumed", calculation, true);
    steps("Steps", calculation);
    answer.substrate().ifPresent(this::substrate);
    answer.sealed().ifPresent(this::ofSealed);
    result(answer);
    notes(answer.design());
    out.println("  " + Deferral.LINE);
    out.flush();
  }

  private void inputs(String title, Calculation calculation, boolean assumed) {
    List<Calculation.Input> inputs =
        calculation.inputs().stream().filter(input -> input.assumed() == assumed).toList();
    if (inputs.isEmpty()) return;
    out.println(title);
    for (int i = 0; i < inputs.size(); i++) {
      Calculation.Input input = inputs.get(i);
      out.println("  " + input.label() + ": " + BothUnits.of(input.quantity()));
      // A basis shared by several inputs in a row stands once, below the last of them.
      boolean last = i + 1 == inputs.size() || !inputs.get(i + 1).basis().equals(input.basis());
      if (assumed && last) out.println("      " + input.basis());
    }
    out.println();
  }

  private void steps(String title, Calculation calculation) {
    out.println(title);
    for (Calculation.Step step : calculation.steps()) {
      out.println("  " + step.label() + ": " + BothUnits.of(step.result()));
      out.println("      = " + step.formula());
    }
    out.println();
  }

  private void substrate(DifferentialMovement movement) {
    steps("Against the substrate", movement.calculation());
    out.println("  Both heated: " + BothUnits.of(movement.bothHeated()));
    out.println("  Only the tile heated: " + BothUnits.of(movement.tileOnly()));
    out.println();
  }

  private void ofSealed(SealingTemperature joint) {
    steps("Sealed at a known temperature", joint.calculation());
  }

  private void result(JointAnswer answer) {
    MovementDesign design = answer.design();
    out.println("Result");
    line("Required width", required(answer) + "; " + design.governs().words());
    line("Sealant depth at that width", BothUnits.of(answer.depth().depth()));
    if (design.widthFit() != Fit.UNKNOWN) stated(answer);
    if (design.spacingFit() != Fit.UNKNOWN) {
      line("Stated spacing", againstGuideline(answer));
    }
    answer.sealed().ifPresent(joint -> line("Sealed at that temperature", words(answer, joint)));
    answer.layout().ifPresent(this::layout);
  }

  private static String againstGuideline(JointAnswer answer) {
    String widest = Rounding.spacing(answer.widestSpacing(), answer.measure());
    return switch (answer.design().spacingFit()) {
      case MEETS -> "within the guideline's " + widest;
      case FALLS_SHORT ->
          "farther apart than the guideline's " + widest + "; bring the joints closer";
      default ->
          answer.exposureKnown()
              ? "in part of its range farther apart than the guideline's " + widest
              : "farther apart than the guideline allows in some exposures";
    };
  }

  /** Each system of units rounded up for itself; from the best case to the worst. */
  private static String required(JointAnswer answer) {
    MovementDesign design = answer.design();
    String worst = design.wider(answer.measure());
    String best = Rounding.width(design.leastWidth().low(), answer.measure());
    return best.equals(worst) ? worst : best + " to " + worst;
  }

  private static String words(JointAnswer answer, SealingTemperature joint) {
    return "movement needs "
        + Rounding.width(joint.width(), answer.measure())
        + ", for "
        + (joint.opens() ? "opening" : "closing")
        + "; the guideline's least width stays "
        + Rounding.width(answer.design().guidelineWidth().high(), answer.measure());
  }

  private void stated(JointAnswer answer) {
    MovementDesign design = answer.design();
    boolean all = design.widthFit() != Fit.MEETS || answer.complete();
    line(
        "Stated width",
        design.widthFit().words()
            + (all ? "" : " for the movement reckoned with")
            + remedy(answer));
    String strain = design.strain().map(BothUnits::of).orElse("");
    line(
        "Strain of the sealant",
        strain + " of " + BothUnits.of(design.capability()) + "; " + design.strainFit().words());
    line(
        "Largest spacing for the stated width",
        spacing(answer, design.largestSpacing())
            + " (by movement "
            + spacing(answer, design.spacingByArithmetic())
            + ", by the guideline "
            + spacing(answer, design.spacingByGuideline())
            + ")");
  }

  /** What to change when the stated width will not do. */
  private static String remedy(JointAnswer answer) {
    MovementDesign design = answer.design();
    if (design.widthFit() == Fit.MEETS) return "";
    String wider = "; make it " + design.wider(answer.measure());
    return wider
        + design
            .closer(answer.measure())
            .map(closer -> ", or space the joints no farther apart than " + closer)
            .orElse("; closer joints do not make it enough");
  }

  /** Rounded down; from the worst case to the best. */
  private static String spacing(JointAnswer answer, Optional<Interval> spacing) {
    Interval found = spacing.orElseThrow();
    if (found.high().number() <= 0) return "none";
    String worst = spacing(answer, found.low());
    String best = spacing(answer, found.high());
    return best.equals(worst) ? worst : worst + " to " + best;
  }

  private static String spacing(JointAnswer answer, Quantity largest) {
    return largest.number() <= 0 ? "none" : Rounding.spacing(largest, answer.measure());
  }

  private void layout(JointLayout layout) {
    line(
        "Layout",
        Phrasing.count(layout.fields(), "field")
            + " of "
            + BothUnits.of(layout.field())
            + ", "
            + Phrasing.count(layout.joints(), "joint")
            + " between them, one more at each end");
    if (layout.joints() > 0 && layout.joints() <= MOST_PLACES) {
      line("Joints at", places(layout.positions()));
    }
  }

  private static String places(List<Quantity> positions) {
    return positions.stream().map(BothUnits::of).collect(Collectors.joining(", "));
  }

  private void notes(MovementDesign design) {
    for (MovementDesign.UnknownFigure unknown : design.unknowns()) {
      if (unknown.name().equals("width")) continue;
      String turns =
          design.widthFit() == Fit.UNKNOWN
              ? ""
              : unknown.changesVerdict()
                  ? "; the verdict on the stated width can turn on it"
                  : "; the verdict on the stated width does not turn on it";
      line("Not given: " + unknown.label(), "reckoned with " + unknown.taken() + turns);
    }
    design.notes().forEach(note -> out.println("  " + note));
  }

  private void line(String label, String text) {
    out.println("  " + label + ": " + text);
  }
}
