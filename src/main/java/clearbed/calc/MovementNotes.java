package clearbed.calc;

import clearbed.calc.MovementGuideline.Rule;
import clearbed.model.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Says what the bare figures do not: interpolation, limits of the table, what was taken in full.
 */
final class MovementNotes {
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
    return notes.stream().distinct().toList();
  }

  private void table(Rule rule) {
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

  private boolean countsPartInFull(Rule rule) {
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
