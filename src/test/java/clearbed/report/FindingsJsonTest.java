package clearbed.report;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.report.Calculation;
import clearbed.model.report.Report;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FindingsJsonTest {
  private static String text(Report report) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FindingsJson.write(report, out);
    return out.toString(StandardCharsets.UTF_8);
  }

  private static JsonNode json() throws Exception {
    return new ObjectMapper().readTree(text(DemoReport.report()));
  }

  @Test
  void a_check_of_the_whole_set_says_in_how_much_of_the_text_it_looked() throws Exception {
    JsonNode sets =
        new ObjectMapper().readTree(text(DemoReport.withReading())).get("reading").get("wholeSet");
    assertThat(sets).hasSize(2);
    assertThat(sets.get(0).get("check").asText()).isEqualTo("mortar-class");
    assertThat(sets.get(0).get("outcome").asText()).isEqualTo("satisfied");
    assertThat(sets.get(0).get("lookedIn").asText())
        .startsWith("looked in 412 of 430 sentences and 96 of 104 cells; not understood: 18");
    assertThat(sets.get(1).get("outcome").asText()).isEqualTo("unread");
    assertThat(sets.get(1).get("unread").asInt()).isEqualTo(2);
  }

  private static JsonNode finding(JsonNode json, String id) {
    for (JsonNode finding : json.get("findings")) {
      if (finding.get("id").asText().equals(id)) return finding;
    }
    throw new AssertionError("no finding " + id);
  }

  private static List<String> keys(JsonNode node) {
    List<String> keys = new ArrayList<>();
    node.fieldNames().forEachRemaining(keys::add);
    return keys;
  }

  @Test
  void the_promised_keys_are_there_in_their_order() throws Exception {
    JsonNode json = json();
    assertThat(keys(json)).startsWith("run", "documents", "entries", "findings");
    assertThat(keys(json.get("run")))
        .startsWith("tool", "version", "ruleSet", "ruleSetDigest", "startedAt");
    assertThat(keys(json.get("documents").get(0)))
        .startsWith("path", "format", "status", "reason", "glassEntries", "otherEntries");
    assertThat(keys(json.get("entries").get(0))).contains("tag", "glass", "origin", "values");
    assertThat(keys(json.get("entries").get(0).get("values").get(0)))
        .contains("attribute", "value", "asWritten", "origin", "scope");
    assertThat(keys(finding(json, "backing/GT-6")))
        .containsExactly(
            "id",
            "check",
            "kind",
            "level",
            "state",
            "tag",
            "tags",
            "attribute",
            "origin",
            "places",
            "message",
            "found",
            "expected",
            "steps",
            "question",
            "clause",
            "source");
  }

  @Test
  void words_of_kind_level_state_status_and_scope_are_lower_case() throws Exception {
    JsonNode json = json();
    JsonNode finding = finding(json, "backing/GT-6");
    assertThat(finding.get("kind").asText()).isEqualTo("inadequate");
    assertThat(finding.get("level").asText()).isEqualTo("error");
    assertThat(finding.get("state").asText()).isEqualTo("new");
    assertThat(json.get("documents").get(0).get("status").asText()).isEqualTo("partly");
    JsonNode value = json.get("entries").get(0).get("values").get(0);
    assertThat(value.get("scope").asText()).isEqualTo("entry");
    assertThat(value.get("value").asText()).isEqualTo("ANSI A118.4");
  }

  @Test
  void one_entry_has_tag_and_tags_several_have_tags_only() throws Exception {
    JsonNode json = json();
    assertThat(finding(json, "backing/GT-6").get("tag").asText()).isEqualTo("GT-6");
    assertThat(finding(json, "backing/GT-6").get("tags")).hasSize(1);
    JsonNode mockup = finding(json, "mockup/section 09 30 13");
    assertThat(mockup.has("tag")).isFalse();
    assertThat(mockup.get("tags")).hasSize(8);
  }

  @Test
  void what_is_not_known_of_an_origin_is_left_out() throws Exception {
    JsonNode json = json();
    assertThat(keys(finding(json, "backing/GT-6").get("origin")))
        .containsExactly("document", "sheet", "cell", "text");
    assertThat(keys(finding(json, "mockup/section 09 30 13").get("origin")))
        .containsExactly("document", "paragraph", "heading", "text");
  }

  @Test
  void a_suppressed_finding_stands_apart_with_its_reason() throws Exception {
    JsonNode json = json();
    assertThat(json.get("findings")).hasSize(24);
    assertThat(json.get("suppressed")).hasSize(1);
    assertThat(json.get("suppressed").get(0).get("suppressed").asText()).contains("laboratory");
  }

  @Test
  void nothing_outside_run_depends_on_the_time() throws Exception {
    ObjectMapper mapper = new ObjectMapper();
    var march = (com.fasterxml.jackson.databind.node.ObjectNode) json();
    var april =
        (com.fasterxml.jackson.databind.node.ObjectNode)
            mapper.readTree(text(DemoReport.report("2026-04-06", finding -> true)));
    assertThat(march.remove("run")).isNotEqualTo(april.remove("run"));
    assertThat(march).isEqualTo(april);
  }

  @Test
  void the_text_is_utf8_with_plain_line_ends() throws Exception {
    assertThat(text(DemoReport.report())).contains("°C").doesNotContain("\r").endsWith("}\n");
  }

  @Test
  void a_calculation_that_waits_for_a_figure_says_which() throws Exception {
    Report demo = DemoReport.report();
    Calculation lacking =
        Calculation.lacking("quantities:GT-1", "quantities", "GT-1", "Quantities", "area unread");
    Report report =
        new Report(
            demo.run(),
            demo.documents(),
            demo.entries(),
            demo.findings(),
            demo.verdicts(),
            List.of(lacking),
            demo.checks());
    JsonNode calculation = new ObjectMapper().readTree(text(report)).get("calculations").get(0);
    assertThat(calculation.get("lacks").asText()).isEqualTo("area unread");
    assertThat(calculation.get("steps")).isEmpty();
    assertThat(json().get("calculations").get(0).has("lacks")).isFalse();
  }
}
