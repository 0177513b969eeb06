package clearbed.report;

import clearbed.base.io.AtomicFile;
import clearbed.mark.JsonMark;
import clearbed.mark.OutputKind;
import clearbed.model.document.Document;
import clearbed.model.report.Calculation;
import clearbed.model.report.Finding;
import clearbed.model.report.Report;
import clearbed.model.value.Quantity;
import clearbed.report.wording.ControlEscapes;
import clearbed.report.wording.Deferral;
import clearbed.report.wording.Phrasing;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/**
 * The findings for other programs: UTF-8, fixed order. The keys that the format promises are always
 * there (an empty text where the documents say nothing); of an origin, and of what goes beyond the
 * promise, only what is known.
 */
public final class FindingsJson {
  private final JsonGenerator json;
  private final JsonFields fields;

  private FindingsJson(JsonGenerator json) {
    this.json = json;
    this.fields = new JsonFields(json);
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
    JsonMark mark = new JsonMark(out, OutputKind.JSON);
    JsonGenerator json = ControlEscapes.generator(mark);
    json.setPrettyPrinter(JsonFields.printer());
    json.writeStartObject();
    new FindingsJson(json).report(report, mark);
    json.flush();
    json.writeStringField(JsonMark.KEY, mark.digest());
    json.writeEndObject();
    json.writeRaw('\n');
    json.close();
  }

  private void report(Report report, OutputStream out) throws IOException {
    run(report.run());
    fields.objects("documents", report.documents(), this::document);
    json.writeArrayFieldStart("entries");
    new EntriesJson(json, report.reading()).write(report.entries(), out);
    json.writeEndArray();
    findings("findings", report, finding -> finding.suppressed().isEmpty());
    findings("suppressed", report, finding -> !finding.suppressed().isEmpty());
    json.writeObjectFieldStart("reading");
    new ReadingJson(json, report.reading()).write();
    json.writeEndObject();
    fields.objects("calculations", report.calculations(), this::calculation);
  }

  private void run(Report.RunDetails run) throws IOException {
    json.writeObjectFieldStart("run");
    fields.promised("tool", run.tool());
    fields.promised("version", run.version());
    fields.promised("ruleSet", run.ruleSet());
    if (!run.chosen().isEmpty()) fields.promised("ruleSetChosen", run.chosen());
    fields.promised("ruleSetDigest", run.ruleSetDigest());
    fields.promised("startedAt", run.startedAt());
    fields.text("date", run.date());
    fields.texts("layers", run.layers());
    fields.texts("facts", run.facts());
    if (run.waited().times() > 0) {
      json.writeObjectFieldStart("waited");
      json.writeNumberField("times", run.waited().times());
      json.writeNumberField("seconds", run.waited().seconds());
      json.writeEndObject();
    }
    fields.promised("deferral", Deferral.LINE);
    json.writeEndObject();
  }

  private void document(Report.DocumentSummary document) throws IOException {
    fields.promised("path", document.path());
    fields.promised("format", document.format());
    fields.promised("status", document.status().name().toLowerCase(Locale.ROOT));
    fields.promised("reason", document.reason());
    json.writeNumberField("glassEntries", document.glassEntries());
    json.writeNumberField("otherEntries", document.otherEntries());
    gaps("skipped", document.skipped(), gap -> gap.fate() != Document.GapFate.READ);
    gaps("notes", document.skipped(), gap -> gap.fate() == Document.GapFate.READ);
  }

  private void gaps(String name, List<Document.Gap> all, Predicate<Document.Gap> wanted)
      throws IOException {
    List<Document.Gap> gaps = all.stream().filter(wanted).toList();
    if (!gaps.isEmpty()) fields.objects(name, gaps, this::gap);
  }

  private void gap(Document.Gap gap) throws IOException {
    fields.origin("origin", gap.origin());
    fields.text("reason", gap.reason());
    fields.text("fate", Phrasing.of(gap.fate()));
  }

  private void findings(String name, Report report, Predicate<Finding> wanted) throws IOException {
    fields.objects(name, report.findings().stream().filter(wanted).toList(), this::finding);
  }

  private void finding(Finding finding) throws IOException {
    fields.promised("id", finding.id());
    fields.promised("check", finding.check());
    fields.promised("kind", finding.kind().word());
    fields.promised("level", finding.level().word());
    fields.promised("state", finding.state().word());
    if (finding.tags().size() == 1) fields.text("tag", finding.tags().get(0));
    fields.texts("tags", finding.tags());
    fields.text("attribute", finding.attribute());
    fields.origin("origin", finding.origin());
    fields.origins("places", finding.places());
    fields.promised("message", finding.message());
    fields.promised("found", finding.found());
    fields.promised("expected", finding.expected());
    fields.promised("steps", finding.steps());
    fields.promised("question", finding.question());
    fields.promised("clause", finding.clause());
    fields.promised("source", finding.source());
    fields.text("suppressed", finding.suppressed());
  }

  private void calculation(Calculation calculation) throws IOException {
    fields.text("id", calculation.id());
    fields.text("check", calculation.check());
    fields.text("tag", calculation.tag());
    fields.text("title", calculation.title());
    fields.text("lacks", calculation.lacks());
    fields.objects("inputs", calculation.inputs(), this::input);
    fields.objects("steps", calculation.steps(), this::step);
  }

  private void input(Calculation.Input input) throws IOException {
    fields.text("name", input.name());
    fields.text("label", input.label());
    quantity(input.quantity());
    json.writeBooleanField("assumed", input.assumed());
    fields.text("basis", input.basis());
    fields.origin("origin", input.origin());
  }

  private void step(Calculation.Step step) throws IOException {
    fields.text("name", step.name());
    fields.text("label", step.label());
    fields.text("formula", step.formula());
    quantity(step.result());
  }

  private void quantity(Quantity quantity) throws IOException {
    json.writeNumberField("number", quantity.number());
    fields.text("unit", quantity.unit().symbol());
  }
}
