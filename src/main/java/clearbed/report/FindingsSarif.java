package clearbed.report;

import clearbed.base.io.AtomicFile;
import clearbed.mark.JsonMark;
import clearbed.mark.OutputKind;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import clearbed.report.wording.ControlEscapes;
import clearbed.report.wording.Deferral;
import clearbed.report.wording.SafeText;
import clearbed.report.workbook.cell.DocumentLinks;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The findings as SARIF 2.1.0 (OASIS, 27 March 2020), for tools that collect results of checks.
 *
 * <p>Clause numbers in the comments are those of that standard.
 */
public final class FindingsSarif {
  private static final String SCHEMA =
      "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

  private final JsonGenerator json;
  private final Map<String, Integer> ruleIndex = new HashMap<>();

  private FindingsSarif(JsonGenerator json) {
    this.json = json;
  }

  /**
   * Writes the file whole or not at all.
   *
   * @throws IOException with one line that names the file and the reason
   */
  public static void write(Report report, Path file) throws IOException {
    AtomicFile.write(file, out -> write(report, out));
  }

  /** Writes to a stream and leaves it open. */
  public static void write(Report report, OutputStream out) throws IOException {
    JsonMark mark = new JsonMark(out, OutputKind.SARIF);
    JsonGenerator json = ControlEscapes.generator(mark);
    json.setPrettyPrinter(JsonFields.printer());
    json.writeStartObject();
    new FindingsSarif(json).log(report);
    json.flush();
    // 3.8, 3.13: the log takes properties of others.
    json.writeObjectFieldStart("properties");
    json.writeStringField(JsonMark.KEY, mark.digest());
    json.writeEndObject();
    json.writeEndObject();
    json.writeRaw('\n');
    json.close();
  }

  private void log(Report report) throws IOException {
    json.writeStringField("$schema", SCHEMA);
    json.writeStringField("version", "2.1.0");
    json.writeArrayFieldStart("runs");
    json.writeStartObject();
    tool(report);
    invocation(report);
    json.writeArrayFieldStart("artifacts");
    for (Report.DocumentSummary document : report.documents()) artifact(document.path());
    json.writeEndArray();
    json.writeStringField("columnKind", "unicodeCodePoints");
    json.writeArrayFieldStart("results");
    for (Finding finding : report.findings()) if (!isNotification(finding)) result(finding);
    json.writeEndArray();
    json.writeEndObject();
    json.writeEndArray();
  }

  private void tool(Report report) throws IOException {
    json.writeObjectFieldStart("tool");
    json.writeObjectFieldStart("driver");
    json.writeStringField("name", report.run().tool());
    json.writeStringField("version", report.run().version());
    message("fullDescription", Deferral.LINE);
    json.writeArrayFieldStart("rules");
    Set<String> used = new LinkedHashSet<>();
    for (Report.CheckInfo check : report.checks()) if (used.add(check.id())) rule(check);
    for (Finding finding : report.findings()) {
      if (used.add(finding.check())) bareRule(finding.check());
    }
    json.writeEndArray();
    json.writeEndObject();
    json.writeEndObject();
  }

  private void rule(Report.CheckInfo check) throws IOException {
    ruleIndex.put(check.id(), ruleIndex.size());
    json.writeStartObject();
    json.writeStringField("id", check.id());
    if (!check.title().isBlank()) message("shortDescription", check.title());
    if (!check.source().isBlank()) message("fullDescription", "Source: " + check.source());
    json.writeObjectFieldStart("defaultConfiguration");
    json.writeBooleanField("enabled", check.on());
    json.writeStringField("level", check.level().word());
    json.writeEndObject();
    json.writeEndObject();
  }

  /** For findings that no check of the set made, such as those on unreadable files. */
  private void bareRule(String id) throws IOException {
    ruleIndex.put(id, ruleIndex.size());
    json.writeStartObject();
    json.writeStringField("id", id);
    json.writeEndObject();
  }

  private void invocation(Report report) throws IOException {
    json.writeArrayFieldStart("invocations");
    json.writeStartObject();
    json.writeBooleanField("executionSuccessful", true);
    // 3.20.21: what was not understood is a limit of this run, not a fault of the documents.
    json.writeArrayFieldStart("toolExecutionNotifications");
    for (Finding finding : report.findings()) if (isNotification(finding)) notification(finding);
    json.writeEndArray();
    json.writeEndObject();
    json.writeEndArray();
  }

  /** An error, or what is settled or suppressed, stays a result: a notification cannot say so. */
  private static boolean isNotification(Finding finding) {
    return finding.kind() == FindingKind.UNREAD
        && finding.level() != Level.ERROR
        && finding.state() != State.RESOLVED
        && finding.suppressed().isEmpty();
  }

  /** 3.58. */
  private void notification(Finding finding) throws IOException {
    json.writeStartObject();
    json.writeObjectFieldStart("associatedRule");
    json.writeStringField("id", finding.check());
    json.writeNumberField("index", ruleIndex.get(finding.check()));
    json.writeEndObject();
    json.writeStringField("level", finding.level().word());
    message("message", text(finding));
    List<Origin> all = new ArrayList<>(List.of(finding.origin()));
    all.addAll(finding.places());
    locations("locations", all);
    properties(finding);
    json.writeEndObject();
  }

  private void artifact(String path) throws IOException {
    json.writeStartObject();
    json.writeObjectFieldStart("location");
    json.writeStringField("uri", DocumentLinks.uri(path));
    json.writeEndObject();
    json.writeEndObject();
  }

  private void result(Finding finding) throws IOException {
    json.writeStartObject();
    json.writeStringField("ruleId", finding.check());
    json.writeNumberField("ruleIndex", ruleIndex.get(finding.check()));
    // 3.27.9: a result that is no longer there tells that the rule is satisfied now.
    boolean resolved = finding.state() == State.RESOLVED;
    json.writeStringField("kind", resolved ? "pass" : "fail");
    json.writeStringField("level", resolved ? "none" : finding.level().word());
    message("message", text(finding));
    locations("locations", List.of(finding.origin()));
    locations("relatedLocations", finding.places());
    json.writeObjectFieldStart("partialFingerprints");
    json.writeStringField("clearbedFinding/v1", finding.id());
    json.writeEndObject();
    json.writeStringField("baselineState", baseline(finding.state()));
    suppressions(finding);
    properties(finding);
    json.writeEndObject();
  }

  private static String text(Finding finding) {
    List<String> parts = new ArrayList<>();
    if (!finding.tags().isEmpty()) parts.add(String.join(", ", finding.tags()) + ":");
    parts.add(finding.message());
    if (!finding.found().isBlank()) parts.add("Found: " + finding.found() + ".");
    if (!finding.expected().isBlank()) parts.add("Expected: " + finding.expected() + ".");
    return String.join(" ", parts);
  }

  /** 3.27.24. */
  private static String baseline(State state) {
    return switch (state) {
      case NEW, REOPENED -> "new";
      case OPEN, ANSWERED -> "unchanged";
      case RESOLVED -> "absent";
    };
  }

  private void suppressions(Finding finding) throws IOException {
    if (finding.suppressed().isEmpty()) return;
    json.writeArrayFieldStart("suppressions");
    json.writeStartObject();
    json.writeStringField("kind", "external");
    json.writeStringField("status", "accepted");
    json.writeStringField("justification", finding.suppressed());
    json.writeEndObject();
    json.writeEndArray();
  }

  private void locations(String name, List<Origin> origins) throws IOException {
    List<Origin> known = origins.stream().filter(origin -> !origin.document().isEmpty()).toList();
    if (known.isEmpty()) return;
    json.writeArrayFieldStart(name);
    for (Origin origin : known) location(origin);
    json.writeEndArray();
  }

  private void location(Origin origin) throws IOException {
    json.writeStartObject();
    json.writeObjectFieldStart("physicalLocation");
    json.writeObjectFieldStart("artifactLocation");
    json.writeStringField("uri", DocumentLinks.uri(origin.document()));
    json.writeEndObject();
    json.writeEndObject();
    String name = logicalName(origin);
    if (!name.isEmpty()) {
      json.writeArrayFieldStart("logicalLocations");
      json.writeStartObject();
      json.writeStringField("name", name);
      json.writeStringField("fullyQualifiedName", origin.place());
      json.writeStringField("kind", origin.cell() != null ? "cell" : "clause");
      json.writeEndObject();
      json.writeEndArray();
    }
    if (origin.text() != null && !origin.text().isEmpty()) message("message", origin.text());
    json.writeEndObject();
  }

  private static String logicalName(Origin origin) {
    if (origin.sheet() != null && origin.cell() != null)
      return origin.sheet() + "!" + origin.cell();
    if (origin.cell() != null) return "cell " + origin.cell();
    if (origin.heading() != null && !origin.heading().isBlank()) return origin.heading();
    if (origin.page() != null) return "page " + origin.page();
    return origin.paragraph() == null ? "" : "paragraph " + origin.paragraph();
  }

  private void properties(Finding finding) throws IOException {
    json.writeObjectFieldStart("properties");
    if (!finding.tags().isEmpty()) {
      // 3.8.2: the property bag's own "tags" classify; the tile tags of the schedule are these.
      json.writeArrayFieldStart("tileTags");
      for (String tag : finding.tags()) json.writeString(tag);
      json.writeEndArray();
    }
    json.writeStringField("findingKind", finding.kind().word());
    json.writeStringField("state", finding.state().word());
    if (!finding.question().isEmpty()) json.writeStringField("question", finding.question());
    if (!finding.clause().isEmpty()) json.writeStringField("clause", finding.clause());
    json.writeEndObject();
  }

  private void message(String name, String text) throws IOException {
    json.writeObjectFieldStart(name);
    json.writeStringField("text", literal(text));
    json.writeEndObject();
  }

  /**
   * Words of a document as a message shows them: braces are no placeholders (3.11.5), brackets
   * before a parenthesis no link, whatever backslashes stand before them (3.11.6), and what turns
   * the reading direction is a sign.
   */
  private static String literal(String text) {
    String plain = SafeText.xml(text).replace("{", "{{").replace("}", "}}");
    if (!plain.contains("](")) return plain;
    return plain.replace("\\", "\\\\").replace("[", "\\[").replace("]", "\\]");
  }
}
