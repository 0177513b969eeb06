package clearbed.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import clearbed.calc.figure.Interval;
import clearbed.calc.guideline.Expansions;
import clearbed.calc.guideline.Exposure;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GuidelineFileTest {

  private static final String GOOD =
      """
      id: own
      title: Own layout
      source: project
      capabilityWhenUnknown: { from: 12.5 %, to: 50 % }
      exposures:
        exterior:
          label: exterior
          source: drawing
          spacing: { from: 8 ft, to: 12 ft }
          width: { least: 3/8 in }
          rows:
            - { spacing: 8 ft, width: 3/8 in }
            - { spacing: 12 ft, width: 1/2 in }
          adjustment: { above: 100 °F, each: 15 °F, add: 1/16 in }
          rangeWhenUnknown: { from: 60 °F, to: 160 °F }
      """;

  @Test
  void readsAGuideline() throws IOException {
    MovementGuideline.ExposureRule rule = read(GOOD).rule(Exposure.EXTERIOR).orElseThrow();

    assertThat(rule.rows()).hasSize(2);
    assertThat(rule.least()).isEqualTo(Quantity.of(0.375, Unit.INCH));
    assertThat(rule.adjustment().orElseThrow().above())
        .isEqualTo(Quantity.of(100, Unit.FAHRENHEIT_DIFFERENCE));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "least: 3/8 in |least: 3/8 |own.yaml:10: exposures.exterior.width.least: '3/8' is no length",
        "to: 12 ft }|to: 7 ft }|own.yaml:9: exposures.exterior.spacing runs from 8 ft down to 7 ft",
        "width: 1/2 in|width: 1/4 in|own.yaml:13: exposures.exterior.rows[1] must have a larger",
        "each: 15 °F|each: 0 °F|own.yaml:14: exposures.exterior.adjustment.each: '0 °F' must be above",
        "each: 15 °F|each: 15 mm|own.yaml:14: exposures.exterior.adjustment.each: '15 mm' is no temp",
        "  exterior:|  moon:|own.yaml:6: 'moon' is not known here; known are interior",
        "label: exterior|lable: exterior|own.yaml:7: 'lable' is not known here; did you mean 'label'?",
        "id: own|id: [own]|own.yaml:1: 'id': a text is wanted, not a list",
        "id: own|name: own|own.yaml:1: 'name' is not known here; known are id, title",
        "title: Own layout|title:|own.yaml:2: 'title': a text is wanted, not nothing",
        "width: { least|widths: { least|own.yaml:10: 'widths' is not known here; did you mean 'width'?",
        "source: project|id: again|own.yaml:3: 'id' stands twice here",
        "id: own|id: 'own|own.yaml:",
      })
  void saysWhereAndWhyItCannotBeRead(String good, String bad, String message) {
    String edited = GOOD.replace(good.strip(), bad.strip());
    assertThat(edited).isNotEqualTo(GOOD);

    assertThatThrownBy(() -> read(edited))
        .isInstanceOf(IOException.class)
        .hasMessageStartingWith(message)
        .message()
        .doesNotContain("\n");
  }

  @ParameterizedTest
  @CsvSource({"''", "[]", "just words", "exposures: {}"})
  void whatIsNoGuidelineAtAllIsRefusedInOneLine(String text) {
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(IOException.class)
        .hasMessageStartingWith("own.yaml")
        .message()
        .doesNotContain("\n");
  }

  @Test
  void anExposureCannotLeanOnItself() {
    String circle = GOOD.replace("    rangeWhen", "    atLeastAs: exterior\n    rangeWhen");

    assertThatThrownBy(() -> read(circle))
        .hasMessage("own.yaml:15: atLeastAs: 'exterior' is no other exposure");
  }

  @Test
  void theStandardFilesAreSound() throws IOException {
    MovementGuideline standard = MovementGuideline.standard();
    Expansions expansions = Expansions.standard();

    assertThat(standard.rules())
        .containsOnlyKeys(
            Exposure.INTERIOR,
            Exposure.INTERIOR_ABOVE_GROUND,
            Exposure.INTERIOR_SUN_OR_MOISTURE,
            Exposure.EXTERIOR,
            Exposure.EXTERIOR_COLD_DECK);
    assertThat(standard.rules().values()).allMatch(rule -> rule.source().matches(".*\\[[SRM].*"));
    // EN 572-1, EN 1992-1-1, EN 1993-1-1.
    assertThat(expansions.material("glass").orElseThrow().expansion())
        .isEqualTo(Interval.of(Quantity.of(9e-6, Unit.PER_KELVIN)));
    assertThat(expansions.material("Concrete").orElseThrow().expansion().low())
        .isEqualByComparingTo(Quantity.of(10e-6, Unit.PER_KELVIN));
    assertThat(expansions.material("structural steel").orElseThrow().expansion().low())
        .isEqualByComparingTo(Quantity.of(12e-6, Unit.PER_KELVIN));
    assertThat(expansions.material("cheese")).isEmpty();
    assertThat(expansions.materials()).allMatch(m -> m.source().matches(".*\\[[SRM]\\]"));
  }

  private static MovementGuideline read(String text) throws IOException {
    return MovementGuideline.read("own.yaml", text.getBytes(StandardCharsets.UTF_8));
  }
}
