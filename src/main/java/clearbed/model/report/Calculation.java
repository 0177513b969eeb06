package clearbed.model.report;

import clearbed.model.document.Origin;
import clearbed.model.value.Quantity;
import java.util.List;

/**
 * A result with everything needed to redo it by hand or in a spreadsheet.
 *
 * @param id stable: the check and the tag
 * @param tag the entry it was made for
 * @param title what is computed, in words
 * @param inputs in the order they are used
 * @param steps in order; the last gives the result
 * @param lacks why nothing could be worked out ({@code area not understood: '120 + 80'}); empty
 *     where there are steps
 * @param metric true where metric figures stand alone, nothing in inches beside them
 */
public record Calculation(
    String id,
    String check,
    String tag,
    String title,
    List<Input> inputs,
    List<Step> steps,
    String lacks,
    boolean metric) {
  /**
   * Name of the step that tells how far the stated figure lies beyond what is needed: zero or more
   * when it is enough, negative when it is not.
   */
  public static final String MARGIN = "margin";

  public Calculation {
    inputs = List.copyOf(inputs);
    steps = List.copyOf(steps);
  }

  public Calculation(
      String id, String check, String tag, String title, List<Input> inputs, List<Step> steps) {
    this(id, check, tag, title, inputs, steps, "", false);
  }

  /** One that waits for a figure. */
  public static Calculation lacking(String id, String check, String tag, String title, String why) {
    return new Calculation(id, check, tag, title, List.of(), List.of(), why, false);
  }

  /**
   * A number that goes in.
   *
   * @param name short and unique within the calculation; a spreadsheet name can be made of it
   * @param origin where the documents state it, or null when assumed
   * @param assumed true for a default of the rule set
   * @param basis why this number: the words as written, or the source of the default
   */
  public record Input(
      String name, String label, Quantity quantity, Origin origin, boolean assumed, String basis) {}

  /**
   * A line of the arithmetic.
   *
   * @param formula in words and symbols
   * @param expression spreadsheet expression over input and step names in braces: {@code
   *     {alpha}*{length}*{range}}, every quantity in the unit of its input or step
   */
  public record Step(
      String name, String label, String formula, String expression, Quantity result) {}
}
