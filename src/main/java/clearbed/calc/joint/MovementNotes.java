package clearbed.calc.joint;

import clearbed.calc.figure.BothUnits;
import clearbed.calc.guideline.Exposure;
import clearbed.calc.guideline.GuidelineTable;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.guideline.MovementGuideline.ExposureRule;
import clearbed.model.value.Quantity;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Says what the bare figures do not: interpolation, limits of the table, what was taken in full.
 */
final class MovementNotes {
  private static final Set<Exposure> INSIDE =
      EnumSet.complementOf(EnumSet.of(Exposure.EXTERIOR, Exposure.EXTERIOR_COLD_DECK));

  private final MovementGuideline guideline;
  private final MovementCase worst;
  private final List<String> notes = new ArrayList<>();

  private MovementNotes(MovementRange range) {
    this.guideline = range.inputs().guideline();
    this.worst = range.worst();
  }

  static List<String> of(MovementInputs inputs, MovementRange range) {
    return new MovementNotes(range).all(inputs);
  }

  private List<String> all(MovementInputs inputs) {
    table(worst.rule());
    worst.rule().atLeastAs().flatMap(guideline::rule).ifPresent(this::table);
    preferred();
    if (inputs.capability().isEmpty()) notes.add("The sealant class is not stated.");
    if (INSIDE.contains(worst.exposure())) uncovered(inputs);
    return notes.stream().distinct().toList();
  }

  /** Out of doors the guideline's widths are far above the computed ones and cover it. */
  private void uncovered(MovementInputs inputs) {
    String none =
        Stream.of(
                inputs.tolerance().isEmpty() ? "the tolerance of construction" : "",
                inputs.other().isEmpty() ? "movement by moisture, load or creep" : "")
            .filter(words -> !words.isEmpty())
            .collect(Collectors.joining(" and "));
    if (!none.isEmpty())
      notes.add(
          "Reckoned as none: "
              + none
              + ". Indoors nothing else in these figures covers that; ask for it.");
  }

  private void table(ExposureRule rule) {
    if (GuidelineTable.interpolates(rule, worst.spacing())) {
      notes.add(
          "The guideline width at "
              + BothUnits.of(worst.spacing())
              + " is interpolated between the tabulated spacings; the guideline itself gives only"
              + " those.");
    }
    Quantity widest = rule.spacing().high();
    if (worst.spacing().compareTo(widest) > 0) {
      notes.add(
          "The guideline gives no width for spacings over "
              + BothUnits.of(widest)
              + "; its width at "
              + BothUnits.of(widest)
              + " is shown.");
    }
    if (countsPartInFull(rule)) {
      notes.add(
          "A part of "
              + BothUnits.of(rule.adjustment().orElseThrow().each())
              + " of temperature range counts in full.");
    }
  }

  private boolean countsPartInFull(ExposureRule rule) {
    if (rule.adjustment().isEmpty()) return false;
    MovementGuideline.Adjustment by = rule.adjustment().get();
    double over = worst.range().minus(by.above()).in(by.each().unit()) / by.each().number();
    return over > 0 && Math.abs(over - Math.rint(over)) > 1e-9;
  }

  private void preferred() {
    Optional<Quantity> preferred = worst.rule().preferred();
    if (preferred.isPresent() && worst.leastWidth().compareTo(preferred.get()) < 0) {
      notes.add("The guideline prefers a width of " + BothUnits.of(preferred.get()) + " or more.");
    }
  }
}
