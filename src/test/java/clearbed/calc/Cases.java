package clearbed.calc;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Measure;
import clearbed.calc.guideline.Exposure;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.joint.MovementInputs;
import clearbed.calc.joint.MovementInputs.MovementFigure;
import clearbed.calc.joint.SealantClass;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.recognise.text.Quantities;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Shorthand for inputs. */
public final class Cases {
  public static final CalculationSubject SUBJECT = new CalculationSubject("movement-width", "GT-1");
  public static final MovementGuideline EJ171 = guideline();

  private Cases() {}

  private static MovementGuideline guideline() {
    try {
      return MovementGuideline.standard();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static Given length(String text) {
    return given(text, Dimension.LENGTH);
  }

  public static Given range(String text) {
    return given(text, Dimension.TEMPERATURE_DIFFERENCE);
  }

  public static Given expansion(String text) {
    return given(text, Dimension.EXPANSION);
  }

  public static Given sealant(String words) {
    return Given.stated(SealantClass.of(words).orElseThrow().capability(), null, words);
  }

  public static Given number(double number) {
    return Given.stated(Quantity.of(number, Unit.ONE), null, "");
  }

  private static Given given(String text, Dimension dimension) {
    return Given.stated(Interval.of(Quantities.parse(text, dimension).orElseThrow()), null, text);
  }

  public static Quantity inches(double number) {
    return Quantity.of(number, Unit.INCH);
  }

  public static Quantity feet(double number) {
    return Quantity.of(number, Unit.FOOT);
  }

  /** Glass outdoors, Class 25, no tolerance; the rest is left open. */
  public static MovementInputs outdoors() {
    return MovementInputs.of(SUBJECT, Measure.INCH, expansion("9e-6/K"))
        .with(Exposure.EXTERIOR)
        .with(MovementFigure.CAPABILITY, sealant("25"));
  }
}
