package clearbed.check.judge;

import clearbed.calc.figure.BothUnits;
import clearbed.model.report.Calculation;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Writes a calculation out line by line, as a finding shows it. */
public final class Steps {
  private Steps() {}

  /**
   * What is stated, each with its place; what is assumed, by source; then every step with its
   * formula in words and its result in both systems of units.
   */
  public static List<String> of(Calculation calculation) {
    List<String> out = new ArrayList<>();
    Map<String, List<String>> assumed = new LinkedHashMap<>();
    for (Calculation.Input input : calculation.inputs()) {
      String figure = input.label() + " " + BothUnits.of(input.quantity(), calculation);
      if (input.assumed()) {
        assumed.computeIfAbsent(input.basis(), basis -> new ArrayList<>()).add(figure);
      } else {
        out.add(figure + ", stated" + words(input));
      }
    }
    assumed.forEach(
        (basis, figures) -> out.add(String.join("; ", figures) + "; assumed: " + basis));
    for (Calculation.Step step : calculation.steps()) {
      out.add(
          step.label() + ": " + step.formula() + " = " + BothUnits.of(step.result(), calculation));
    }
    return out;
  }

  private static String words(Calculation.Input input) {
    String basis = input.basis() == null || input.basis().isBlank() ? "" : ": " + input.basis();
    if (input.origin() == null) return basis;
    // The header of a column may hold the unit that the cell lacks; the place gives both.
    boolean cell = input.origin().cell() != null && input.origin().text() != null;
    return (cell ? ": " + input.origin().text() : basis) + " [" + input.origin().place() + "]";
  }
}
