package clearbed.check.rules;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.check.Checker;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LayerFiguresTest {
  @TempDir Path folder;

  private RuleSet with(String checks) throws Exception {
    Path layer = Files.writeString(folder.resolve("own.yaml"), "layer: ours\nchecks:\n" + checks);
    return Checker.ruleSets(Checked.vocabulary()).load("north-america", List.of(layer));
  }

  private static Rule.RuleWording words(RuleSet rules, String check) {
    return rules.rule(check).orElseThrow().wording();
  }

  @Test
  void the_figure_that_an_office_asks_for_reaches_the_clause_in_both_units() throws Exception {
    RuleSet rules = with("  - {id: bond-strength, expect: {above: 450 psi}}\n");
    assertThat(words(rules, "bond-strength").clause())
        .contains("more than 450 psi (3.1 MPa), shown");
    assertThat(words(rules, "bond-strength").inadequate())
        .contains("more than 450 psi (3.1 MPa)")
        .doesNotContain("400");
  }

  @Test
  void a_part_of_the_check_is_laid_over_by_its_own_id() throws Exception {
    RuleSet rules = with("  - {id: bond-strength, expect: {atLeast: 450 psi}}\n");
    Rule part = rules.rule("bond-strength-by-class").orElseThrow();
    assertThat(part.expectation().words()).contains("400 psi");
    assertThat(part.wording().missing()).contains("implies 400 psi");
  }

  @Test
  void percent_stays_percent_and_other_figures_stay_as_they_are() throws Exception {
    RuleSet rules = with("  - {id: coverage-least, expect: {atLeast: 85 %}}\n");
    assertThat(words(rules, "coverage-least").clause())
        .contains("95 percent or more, nowhere under 85 percent");
  }

  @Test
  void words_that_the_layer_writes_itself_stay_its_own() throws Exception {
    RuleSet rules =
        with("  - {id: bond-strength, expect: {atLeast: 450 psi}, clause: 'At 400 psi.'}\n");
    assertThat(words(rules, "bond-strength").clause()).isEqualTo("At 400 psi.");
  }

  @Test
  void what_a_layer_changes_is_said_in_words() throws Exception {
    RuleSet rules =
        with("  - {id: grout-reach, off: true}\n  - {id: translucency, level: error}\n");
    assertThat(rules.changes())
        .map(line -> line.replace(folder + "/", ""))
        .containsExactly(
            "grout-reach: switched off (own.yaml)",
            "translucency: level error in place of warning (own.yaml)");
  }
}
