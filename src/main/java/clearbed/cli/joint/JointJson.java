package clearbed.cli.joint;

import clearbed.calc.figure.Interval;
import clearbed.calc.joint.JointLayout;
import clearbed.calc.joint.MovementDesign;
import clearbed.calc.joint.SealingTemperature;
import clearbed.model.report.Calculation;
import clearbed.model.value.Quantity;
import clearbed.report.wording.Deferral;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The answer for programs. */
final class JointJson {

  private JointJson() {}

  static String of(JointAnswer answer) {
    MovementDesign design = answer.design();
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("requiredWidth", interval(design.requiredWidth()));
    out.put("governs", word(design.governs()));
    out.put("sealantDepth", interval(answer.depth().depth()));
    out.put("width", word(design.widthFit()));
    out.put("spacing", word(design.spacingFit()));
    out.put("strain", word(design.strainFit()));
    design.largestSpacing().ifPresent(largest -> out.put("largestSpacing", interval(largest)));
    answer.layout().ifPresent(layout -> out.put("layout", layout(layout)));
    answer
        .substrate()
        .ifPresent(
            moved -> {
              out.put("againstSubstrateBothHeated", interval(moved.bothHeated()));
              out.put("againstSubstrateTileHeated", interval(moved.tileOnly()));
            });
    answer.sealed().ifPresent(joint -> out.put("sealed", ofSealed(joint)));
    out.put("inputs", design.calculation().inputs().stream().map(JointJson::input).toList());
    out.put("steps", design.calculation().steps().stream().map(JointJson::step).toList());
    out.put("unknowns", design.unknowns());
    out.put("notes", design.notes());
    out.put("deferral", Deferral.LINE);
    try {
      return new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT).writeValueAsString(out);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("plain maps and lists always write", e);
    }
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static Map<String, Object> layout(JointLayout layout) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("fields", layout.fields());
    out.put("joints", layout.joints());
    out.put("field", quantity(layout.field()));
    return out;
  }

  private static Map<String, Object> ofSealed(SealingTemperature joint) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("opening", quantity(joint.opening()));
    out.put("closing", quantity(joint.closing()));
    out.put("width", quantity(joint.width()));
    out.put("steps", joint.calculation().steps().stream().map(JointJson::step).toList());
    return out;
  }

  private static Map<String, Object> input(Calculation.Input input) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("name", input.name());
    out.put("label", input.label());
    out.putAll(quantity(input.quantity()));
    out.put("assumed", input.assumed());
    out.put("basis", input.basis());
    return out;
  }

  private static Map<String, Object> step(Calculation.Step step) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("name", step.name());
    out.put("label", step.label());
    out.put("formula", step.formula());
    out.put("expression", step.expression());
    out.putAll(quantity(step.result()));
    return out;
  }

  private static Object interval(Interval interval) {
    return interval.isExact()
        ? quantity(interval.low())
        : List.of(quantity(interval.low()), quantity(interval.high()));
  }

  private static Map<String, Object> quantity(Quantity quantity) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("number", quantity.number());
    out.put("unit", quantity.unit().symbol());
    return out;
  }
}
