package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The sample of an office's own rules does on the sample documents what its comments say. */
class OfficeLayerTest {
  private static final Path DRAFT = Path.of("sample-specs/draft");
  private static final Checked PLAIN = Checked.of(DRAFT);
  private static final Checked LAYERED =
      Checked.of(DRAFT, Path.of("sample-specs/office-layer.yaml"));

  @Test
  void a_suppressed_finding_keeps_its_reason() {
    assertThat(PLAIN.findings("backing")).isNotEmpty();
    assertThat(LAYERED.findings("backing")).isEmpty();
    assertThat(LAYERED.outcome().findings())
        .filteredOn(f -> f.check().equals("backing"))
        .extracting(Finding::suppressed)
        .allMatch(reason -> reason.contains("letter of acceptance"));
  }

  @Test
  void a_check_has_the_level_that_the_office_gives_it() {
    assertThat(PLAIN.findings("translucency"))
        .extracting(Finding::level)
        .containsOnly(Level.WARNING);
    assertThat(LAYERED.findings("translucency"))
        .extracting(Finding::level)
        .containsOnly(Level.ERROR);
  }

  @Test
  void a_check_that_is_off_is_not_run() {
    assertThat(PLAIN.verdicts("grout-reach")).isNotEmpty();
    assertThat(LAYERED.verdicts("grout-reach")).isEmpty();
  }

  @Test
  void a_fact_of_the_project_shows_with_its_file() {
    assertThat(LAYERED.entry("GT-4").values("location.temperatureRange"))
        .anyMatch(v -> v.origin().document().endsWith("office-layer.yaml"));
    assertThat(PLAIN.entry("GT-4").values("location.temperatureRange"))
        .noneMatch(v -> v.origin().document().endsWith("office-layer.yaml"));
  }
}
