package clearbed.calc.figure;

import clearbed.model.report.Calculation;
import clearbed.model.value.Quantity;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Gathers the inputs and steps of one calculation in order. */
public final class Workings {
  private final List<Calculation.Input> inputs = new ArrayList<>();
  private final List<Calculation.Step> steps = new ArrayList<>();
  private final Set<String> names = new HashSet<>();

  public WorkedFigure low(String name, String label, Given given) {
    return input(name, label, given, given.low(), "the lower end of ");
  }

  public WorkedFigure high(String name, String label, Given given) {
    return input(name, label, given, given.high(), "the upper end of ");
  }

  public WorkedFigure assumed(String name, String label, Quantity quantity, String basis) {
    return high(name, label, Given.assumed(quantity, basis));
  }

  private WorkedFigure input(
      String name, String label, Given given, Quantity quantity, String end) {
    claim(name);
    String basis = given.basis();
    if (!given.amount().isExact()) basis = end + given.amount() + "; " + basis;
    inputs.add(
        new Calculation.Input(name, label, quantity, given.origin(), given.assumed(), basis));
    return new WorkedFigure(name, quantity);
  }

  public WorkedFigure step(
      String name, String label, String formula, String expression, Quantity result) {
    claim(name);
    steps.add(new Calculation.Step(name, label, formula, expression, result));
    return new WorkedFigure(name, result);
  }

  public Calculation done(CalculationSubject subject, String title) {
    return new Calculation(
        subject.id(), subject.check(), subject.tag(), title, inputs, steps, "", subject.metric());
  }

  private void claim(String name) {
    if (!names.add(name)) throw new IllegalStateException("name used twice: " + name);
  }
}
