package clearbed.report;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FindingsSarifTest {
  private static String text(Report report) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FindingsSarif.write(report, out);
    return out.toString(StandardCharsets.UTF_8);
  }

  private static JsonNode results(Report report) throws Exception {
    return new ObjectMapper().readTree(text(report)).get("runs").get(0).get("results");
  }

  private static JsonNode result(Report report, String id) throws Exception {
    for (JsonNode result : results(report)) {
      String print = result.get("partialFingerprints").get("clearbedFinding/v1").asText();
      if (print.equals(id)) return result;
    }
    throw new AssertionError("no result " + id);
  }

  /** Every state once, so that each way a result can be written is seen. */
  private static Report everyState() {
    Report demo = DemoReport.report();
    List<Finding> findings = new ArrayList<>();
    for (Finding finding : demo.findings()) {
      findings.add(finding.withState(State.values()[findings.size() % State.values().length]));
    }
    return new Report(
        demo.run(),
        demo.documents(),
        demo.entries(),
        findings,
        demo.verdicts(),
        demo.calculations(),
        demo.checks());
  }

  private static Schema schema() throws Exception {
    try (InputStream in = FindingsSarifTest.class.getResourceAsStream("sarif-2.1.0-rtm.5.json")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_4)
          .getSchema(text, InputFormat.JSON);
    }
  }

  @Test
  void the_file_keeps_to_the_published_schema() throws Exception {
    assertThat(schema().validate(text(everyState()), InputFormat.JSON)).isEmpty();
  }

  private static Report withUnread(State state) {
    return withUnread(state, "Could not read '450' under SHR (PSI).");
  }

  private static Report withUnread(State state, String message) {
    Report demo = DemoReport.report();
    Finding first = demo.findings().get(0);
    Finding unread =
        new Finding(
            "unread/sheet",
            "unread",
            FindingKind.UNREAD,
            Level.WARNING,
            state,
            List.of("GT-1"),
            "",
            first.origin(),
            List.of(),
            message,
            "'450' under SHR (PSI)",
            "shear bond strength",
            List.of(),
            "What does it state?",
            "",
            "",
            "",
            "",
            Finding.FindingWording.NONE);
    List<Finding> findings = new ArrayList<>(demo.findings());
    findings.add(unread);
    return new Report(
        demo.run(),
        demo.documents(),
        demo.entries(),
        findings,
        demo.verdicts(),
        demo.calculations(),
        demo.checks());
  }

  @Test
  void words_of_a_document_are_neither_link_nor_placeholder() throws Exception {
    String written = text(withUnread(State.NEW, "[open](javascript:alert) {0} [white] tile"));
    assertThat(schema().validate(written, InputFormat.JSON)).isEmpty();
    assertThat(written).contains("\\\\[open\\\\](javascript:alert) {{0}} \\\\[white\\\\] tile");
    assertThat(text(withUnread(State.NEW, "\\[open\\](javascript:alert) \u202exe")))
        .contains("\\\\\\\\\\\\[open\\\\\\\\\\\\](javascript:alert) \uFFFDxe");
    assertThat(text(withUnread(State.NEW, "in [white] or [grey]")))
        .contains("in [white] or [grey]");
  }

  @Test
  void what_was_not_understood_is_a_notification_of_the_run_and_no_result() throws Exception {
    Report report = withUnread(State.NEW);
    assertThat(schema().validate(text(report), InputFormat.JSON)).isEmpty();
    JsonNode run = new ObjectMapper().readTree(text(report)).get("runs").get(0);
    JsonNode notifications = run.get("invocations").get(0).get("toolExecutionNotifications");
    assertThat(notifications).hasSize(1);
    JsonNode notification = notifications.get(0);
    assertThat(notification.get("associatedRule").get("id").asText()).isEqualTo("unread");
    assertThat(notification.get("level").asText()).isEqualTo("warning");
    assertThat(notification.get("message").get("text").asText()).contains("'450' under SHR (PSI)");
    assertThat(notification.get("locations")).isNotEmpty();
    assertThat(run.get("results")).noneMatch(r -> r.get("ruleId").asText().equals("unread"));
  }

  @Test
  void what_is_understood_now_is_a_result_that_is_gone() throws Exception {
    JsonNode result = result(withUnread(State.RESOLVED), "unread/sheet");
    assertThat(result.get("baselineState").asText()).isEqualTo("absent");
  }

  @Test
  void the_schema_would_see_a_wrong_level() throws Exception {
    String wrong = text(everyState()).replace("\"level\" : \"error\"", "\"level\" : \"grave\"");
    assertThat(schema().validate(wrong, InputFormat.JSON)).isNotEmpty();
  }

  @Test
  void a_result_names_its_rule_its_place_and_its_fingerprint() throws Exception {
    JsonNode result = result(DemoReport.report(), "backing/GT-6");
    assertThat(result.get("ruleId").asText()).isEqualTo("backing");
    JsonNode rules =
        new ObjectMapper().readTree(text(DemoReport.report())).at("/runs/0/tool/driver/rules");
    assertThat(rules.get(result.get("ruleIndex").asInt()).get("id").asText()).isEqualTo("backing");
    assertThat(result.at("/locations/0/physicalLocation/artifactLocation/uri").asText())
        .isEqualTo("Moorhen%20Baths/finish%20schedule.xlsx");
    assertThat(result.at("/locations/0/logicalLocations/0/name").asText()).startsWith("Tile!G");
    assertThat(result.get("relatedLocations")).hasSize(1);
  }

  @Test
  void states_become_baseline_states_and_reasons_justifications() throws Exception {
    Report report = DemoReport.report();
    assertThat(result(report, "backing/GT-6").get("baselineState").asText()).isEqualTo("new");
    assertThat(results(everyState()).findValuesAsText("baselineState"))
        .contains("new", "unchanged", "absent");
    assertThat(result(report, "coverage/GT-1").at("/suppressions/0/justification").asText())
        .contains("laboratory");
  }
}
