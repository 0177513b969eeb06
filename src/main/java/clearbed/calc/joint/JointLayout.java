package clearbed.calc.joint;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.WorkedFigure;
import clearbed.calc.figure.Workings;
import clearbed.model.report.Calculation;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * Equal fields along a run, none longer than the spacing. The width of the joints themselves is
 * left out, so that fields come out a little shorter than shown.
 *
 * @param fields 1 or more
 * @param joints between the fields; the joints at both ends of the run are not counted
 * @param field length of each field
 * @param positions of the joints, from the start of the run
 */
public record JointLayout(
    int fields, int joints, Quantity field, List<Quantity> positions, Calculation calculation) {

  public JointLayout {
    positions = List.copyOf(positions);
  }

  /** More joints than any run has; beyond it run and spacing are not of one job. */
  private static final int MOST = 10_000;

  /**
   * Lays the joints out.
   *
   * @throws IllegalArgumentException when run or spacing is not above zero, or would need more than
   *     10 000 joints
   */
  public static JointLayout of(
      CalculationSubject subject, Measure measure, Given run, Given spacing) {
    run.positive("the run", Dimension.LENGTH);
    spacing.positive("the joint spacing", Dimension.LENGTH);
    Unit large = measure.large();
    double parts = run.high().in(large) / spacing.low().in(large);
    if (parts > MOST) {
      throw new IllegalArgumentException(
          "a run of "
              + run.high()
              + " at a spacing of "
              + spacing.low()
              + " needs too many joints");
    }
    int fields = (int) Math.max(1, Math.ceil(parts - 1e-9));
    Quantity field = Quantity.of(run.high().in(large) / fields, large);
    List<Quantity> positions = new ArrayList<>();
    for (int i = 1; i < fields; i++) positions.add(field.times(i));
    return new JointLayout(
        fields, fields - 1, field, positions, calculation(subject, measure, run, spacing, fields));
  }

  private static Calculation calculation(
      CalculationSubject subject, Measure measure, Given run, Given spacing, int fields) {
    Workings w = new Workings();
    Unit large = measure.large();
    WorkedFigure length = w.high("run", "Longest unbroken run", run);
    WorkedFigure apart = w.low("spacing", "Joint spacing", spacing);
    w.step(
        "fields",
        "Fields",
        "run ÷ spacing, rounded up",
        "MAX(1,ROUNDUP(" + length.in(large) + "/" + apart.in(large) + "-0.000000001,0))",
        Quantity.of(fields, Unit.ONE));
    w.step(
        "field",
        "Length of each field",
        "run ÷ fields",
        length.in(large) + "/{fields}",
        Quantity.of(length.as(large) / fields, large));
    w.step(
        "joints",
        "Joints between the fields",
        "fields - 1; the joints at both ends come to these",
        "{fields}-1",
        Quantity.of(fields - 1, Unit.ONE));
    return w.done(subject, "Layout of movement joints");
  }
}
