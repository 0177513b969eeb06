package clearbed.cli;

import clearbed.calc.DifferentialMovement;
import clearbed.calc.Fit;
import clearbed.calc.Interval;
import clearbed.calc.JointLayout;
import clearbed.calc.MovementDesign;
import clearbed.model.Calculation;
import clearbed.model.Quantity;
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

  void print(JointRequest.Answer answer) {
    Calculation calculation = answer.design().calculation();
    inputs("Given", calculation, false);
    inputs("Assumed", calculation, true);
    steps("Steps", calculation);
    answer.substrate().ifPresent(this::substrate);
    result(answer);
    notes(answer.design());
    out.flush();
  }

  private void inputs(String title, Calculation calculation, boolean assumed) {
    List<Calculation.Input> inputs =
        calculation.inputs().stream().filter(input -> input.assumed() == assumed).toList();
    if (inputs.isEmpty()) return;
    out.println(title);
    for (int i = 0; i < inputs.size(); i++) {
      Calculation.Input input = inputs.get(i);
      out.println("  " + input.label() + ": " + JointFormat.both(input.quantity()));
      // A basis shared by several inputs in a row stands once, below the last of them.
      boolean last = i + 1 == inputs.size() || !inputs.get(i + 1).basis().equals(input.basis());
      if (assumed && last) out.println("      " + input.basis());
    }
    out.println();
  }

  private void steps(String title, Calculation calculation) {
    out.println(title);
    for (Calculation.Step step : calculation.steps()) {
      out.println("  " + step.label() + ": " + JointFormat.both(step.result()));
      out.println("      = " + step.formula());
    }
    out.println();
  }

  private void substrate(DifferentialMovement movement) {
    steps("Against the substrate", movement.calculation());
    out.println("  Both heated: " + JointFormat.both(movement.bothHeated()));
    out.println("  Only the tile heated: " + JointFormat.both(movement.tileOnly()));
    out.println();
  }

  private void result(JointRequest.Answer answer) {
    MovementDesign design = answer.design();
    out.println("Result");
    String by = design.arithmeticGoverns() ? "the movement governs" : "the guideline governs";
    line("Required width", JointFormat.both(design.requiredWidth()) + "; " + by);
    line("Sealant depth at that width", JointFormat.both(answer.depth().depth()));
    if (design.widthFit() != Fit.UNKNOWN) stated(design);
    if (design.spacingFit() != Fit.UNKNOWN) {
      line("Stated spacing against the guideline", design.spacingFit().words());
    }
    answer.layout().ifPresent(this::layout);
  }

  private void stated(MovementDesign design) {
    line("Stated width", design.widthFit().words());
    String strain = design.strain().map(JointFormat::both).orElse("");
    line(
        "Strain of the sealant",
        strain
            + " of "
            + JointFormat.both(design.capability())
            + "; "
            + design.strainFit().words());
    line(
        "Largest spacing for the stated width",
        spacing(design.largestSpacing())
            + " (by movement "
            + spacing(design.spacingByArithmetic())
            + ", by the guideline "
            + spacing(design.spacingByGuideline())
            + ")");
  }

  private static String spacing(Optional<Interval> spacing) {
    Interval found = spacing.orElseThrow();
    return found.high().number() <= 0 ? "none" : JointFormat.both(found);
  }

  private void layout(JointLayout layout) {
    line(
        "Layout",
        layout.fields()
            + (layout.fields() == 1 ? " field of " : " fields of ")
            + JointFormat.both(layout.field())
            + ", "
            + layout.joints()
            + (layout.joints() == 1 ? " joint" : " joints")
            + " between them, one more at each end");
    if (layout.joints() > 0 && layout.joints() <= MOST_PLACES) {
      line("Joints at", places(layout.positions()));
    }
  }

  private static String places(List<Quantity> positions) {
    return positions.stream().map(JointFormat::both).collect(Collectors.joining(", "));
  }

  private void notes(MovementDesign design) {
    for (MovementDesign.Unknown unknown : design.unknowns()) {
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
