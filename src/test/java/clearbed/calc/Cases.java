package clearbed.calc;

import clearbed.calc.MovementInputs.Part;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import clearbed.recognise.text.Quantities;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Shorthand for inputs. */
final class Cases {
  static final Subject SUBJECT = new Subject("movement-width", "GT-1");
  static final MovementGuideline EJ171 = guideline();

  private Cases() {}

  private static MovementGuideline guideline() {
    try {
      return MovementGuideline.standard();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Given length(String text) {
    return given(text, Dimension.LENGTH);
  }

  static Given range(String text) {
    return given(text, Dimension.TEMPERATURE_DIFFERENCE);
  }

  static Given expansion(String text) {
    return given(text, Dimension.EXPANSION);
  }

  static Given sealant(String words) {
    return Given.stated(SealantClass.of(words).orElseThrow(), null, words);
  }

  static Given number(double number) {
    return Given.stated(Quantity.of(number, Unit.ONE), null, "");
  }

  private static Given given(String text, Dimension dimension) {
    return Given.stated(Interval.of(Quantities.parse(text, dimension).orElseThrow()), null, text);
  }

  static Quantity inches(double number) {
    return Quantity.of(number, Unit.INCH);
  }

  static Quantity feet(double number) {
    return Quantity.of(number, Unit.FOOT);
  }

  /** Glass outdoors, Class 25, no tolerance; the rest is left open. */
  static MovementInputs outdoors() {
    return MovementInputs.of(SUBJECT, Measure.INCH, expansion("9e-6/K"))
        .with(Exposure.EXTERIOR)
        .with(Part.CAPABILITY, sealant("25"));
  }
}
