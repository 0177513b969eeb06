package clearbed.report;

import clearbed.base.Parallel;
import clearbed.base.io.AtomicFile;
import clearbed.mark.JsonMark;
import clearbed.mark.OutputKind;
import clearbed.model.Account;
import clearbed.model.Calculation;
import clearbed.model.Document;
import clearbed.model.Entry;
import clearbed.model.Finding;
import clearbed.model.Origin;
import clearbed.model.ReadingAccount;
import clearbed.model.Report;
import clearbed.model.TaughtWord;
import clearbed.model.Value;
import clearbed.report.wording.ControlEscapes;
import clearbed.report.wording.Deferral;
import clearbed.report.wording.Words;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/**
 * The findings for other programs: UTF-8, fixed order. The keys that the format promises are always
 * there (an empty text where the documents say nothing); of an origin, and of what goes beyond the
 * promise, only what is known.
 */
public final class FindingsJson {
  /** How deep an entry lies: in the array of entries, in the object of all. */
  private static final int DEPTH_OF_AN_ENTRY = 2;

  /** Places of the entries that are written at a time; what is said in one takes some 30 kB. */
  private static final int PLACES_AT_ONCE = 400;

  private final JsonGenerator json;

  /** What the office has taught is said of each value that was read by it. */
  private final ReadingAccount reading;

  private FindingsJson(JsonGenerator json, ReadingAccount reading) {
    this.json = json;
    this.reading = reading;
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
    json.setPrettyPrinter(printer());
    json.writeStartObject();
    new FindingsJson(json, report.reading()).report(report, mark);
    json.flush();
    json.writeStringField(JsonMark.KEY, mark.digest());
    json.writeEndObject();
    json.writeRaw('\n');
    json.close();
  }

  /** The same line ends on every system. */
  static DefaultPrettyPrinter printer() {
    DefaultIndenter indent = new DefaultIndenter("  ", "\n");
    return new DefaultPrettyPrinter().withObjectIndenter(indent).withArrayIndenter(indent);
  }

  private void report(Report report, OutputStream out) throws IOException {
    run(report.run());
    json.writeArrayFieldStart("documents");
    for (Report.DocumentSummary document : report.documents()) document(document);
    json.writeEndArray();
    json.writeArrayFieldStart("entries");
    entries(report.entries(), out);
    json.writeEndArray();
    findings("findings", report.findings().stream().filter(f -> f.suppressed().isEmpty()).toList());
    findings(
        "suppressed", report.findings().stream().filter(f -> !f.suppressed().isEmpty()).toList());
    json.writeObjectFieldStart("reading");
    reading(report.reading());
    json.writeEndObject();
    json.writeArrayFieldStart("calculations");
    for (Calculation calculation : report.calculations()) calculation(calculation);
    json.writeEndArray();
  }

  private void run(Report.Run run) throws IOException {
    json.writeObjectFieldStart("run");
    promised("tool", run.tool());
    promised("version", run.version());
    promised("ruleSet", run.ruleSet());
    if (!run.chosen().isEmpty()) promised("ruleSetChosen", run.chosen());
    promised("ruleSetDigest", run.ruleSetDigest());
    promised("startedAt", run.startedAt());
    text("date", run.date());
    texts("layers", run.layers());
    texts("facts", run.facts());
    if (run.waited().times() > 0) {
      json.writeObjectFieldStart("waited");
      json.writeNumberField("times", run.waited().times());
      json.writeNumberField("seconds", run.waited().seconds());
      json.writeEndObject();
    }
    promised("deferral", Deferral.LINE);
    json.writeEndObject();
  }

  private void document(Report.DocumentSummary document) throws IOException {
    json.writeStartObject();
    promised("path", document.path());
    promised("format", document.format());
    promised("status", document.status().name().toLowerCase(Locale.ROOT));
    promised("reason", document.reason());
    json.writeNumberField("glassEntries", document.glassEntries());
    json.writeNumberField("otherEntries", document.otherEntries());
    gaps("skipped", document.skipped(), gap -> gap.fate() != Document.Fate.READ);
    gaps("notes", document.skipped(), gap -> gap.fate() == Document.Fate.READ);
    json.writeEndObject();
  }

  private void gaps(String name, List<Document.Gap> all, Predicate<Document.Gap> wanted)
      throws IOException {
    List<Document.Gap> gaps = all.stream().filter(wanted).toList();
    if (gaps.isEmpty()) return;
    json.writeArrayFieldStart(name);
    for (Document.Gap gap : gaps) {
      json.writeStartObject();
      origin("origin", gap.origin());
      text("reason", gap.reason());
      text("fate", Words.of(gap.fate()));
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  /** Nearly all of a long file is entries: some are written at a time, on all processors. */
  private void entries(List<Entry> entries, OutputStream out) throws IOException {
    List<Entry> some = new ArrayList<>();
    int places = 0;
    for (Entry entry : entries) {
      some.add(entry);
      places += 1 + entry.places().size();
      if (places < PLACES_AT_ONCE) continue;
      together(some, out);
      some.clear();
      places = 0;
    }
    together(some, out);
  }

  private void together(List<Entry> entries, OutputStream out) throws IOException {
    for (ByteArrayOutputStream written : Parallel.map(entries, this::written)) {
      // Puts what stands between two values.
      json.writeRawValue("");
      json.flush();
      written.writeTo(out);
    }
  }

  private ByteArrayOutputStream written(Entry entry) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (JsonGenerator json = ControlEscapes.generator(out)) {
      json.setPrettyPrinter(new Inner(printer()));
      new FindingsJson(json, reading).entry(entry);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out;
  }

  /** Begins as deep as an entry lies. */
  private static final class Inner extends DefaultPrettyPrinter {
    private static final long serialVersionUID = 1;

    Inner(DefaultPrettyPrinter like) {
      super(like);
      _nesting = DEPTH_OF_AN_ENTRY;
    }
  }

  private void entry(Entry entry) throws IOException {
    json.writeStartObject();
    promised("tag", entry.tag());
    json.writeBooleanField("glass", entry.glass());
    text("evidence", entry.evidence());
    origin("origin", entry.origin());
    origins("places", entry.places());
    json.writeArrayFieldStart("values");
    for (Value value : entry.values()) value(value);
    json.writeEndArray();
    if (!entry.superseded().isEmpty()) {
      json.writeArrayFieldStart("superseded");
      for (Value value : entry.superseded()) value(value);
      json.writeEndArray();
    }
    json.writeEndObject();
  }

  private void value(Value value) throws IOException {
    json.writeStartObject();
    promised("attribute", value.attribute());
    promised("value", value.content().text());
    if (value.excluded()) json.writeBooleanField("excluded", true);
    promised("asWritten", value.asWritten());
    origin("origin", value.origin());
    promised("scope", value.scope().name().toLowerCase(Locale.ROOT));
    text("taught", reading.taughtBy(value));
    json.writeEndObject();
  }

  private void findings(String name, List<Finding> findings) throws IOException {
    json.writeArrayFieldStart(name);
    for (Finding finding : findings) finding(finding);
    json.writeEndArray();
  }

  private void finding(Finding finding) throws IOException {
    json.writeStartObject();
    promised("id", finding.id());
    promised("check", finding.check());
    promised("kind", finding.kind().word());
    promised("level", finding.level().word());
    promised("state", finding.state().word());
    if (finding.tags().size() == 1) text("tag", finding.tags().get(0));
    texts("tags", finding.tags());
    text("attribute", finding.attribute());
    origin("origin", finding.origin());
    origins("places", finding.places());
    promised("message", finding.message());
    promised("found", finding.found());
    promised("expected", finding.expected());
    json.writeArrayFieldStart("steps");
    for (String step : finding.steps()) json.writeString(step);
    json.writeEndArray();
    promised("question", finding.question());
    promised("clause", finding.clause());
    promised("source", finding.source());
    text("suppressed", finding.suppressed());
    json.writeEndObject();
  }

  private void reading(ReadingAccount reading) throws IOException {
    tally("sentences", reading.sentences());
    tally("cells", reading.cells());
    json.writeArrayFieldStart("tables");
    for (Account.TableAccount table : reading.tables()) {
      json.writeStartObject();
      origin("origin", table.origin());
      promised("takenFor", table.takenFor());
      json.writeArrayFieldStart("columns");
      for (Account.Column column : table.columns()) {
        json.writeStartObject();
        promised("heading", column.heading());
        promised("as", column.as());
        promised("evidence", column.evidence());
        text("unit", column.unit());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("notUnderstood");
    for (ReadingAccount.NotUnderstood words : reading.notUnderstood()) {
      json.writeStartObject();
      origin("origin", words.words().origin());
      text("heading", words.words().samples().isEmpty() ? "" : words.words().text());
      array("couldAnswer", words.couldAnswer());
      array("tags", words.tags());
      texts("samples", words.words().samples());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("wholeSet");
    for (ReadingAccount.WholeSet set : reading.wholeSet()) wholeSet(reading, set);
    json.writeEndArray();
    json.writeArrayFieldStart("setAside");
    for (Account.SetAside aside : reading.setAside()) {
      json.writeStartObject();
      origin("origin", aside.origin());
      promised("why", aside.why());
      json.writeNumberField("count", aside.count());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("undecided");
    for (ReadingAccount.Undecided undecided : reading.undecided()) {
      json.writeStartObject();
      promised("tag", undecided.tag());
      origin("origin", undecided.origin());
      array("for", undecided.speaksFor());
      array("against", undecided.speaksAgainst());
      json.writeEndObject();
    }
    json.writeEndArray();
    if (reading.taught().isEmpty()) return;
    json.writeArrayFieldStart("taught");
    for (TaughtWord word : reading.taught()) {
      json.writeStartObject();
      promised("kind", word.kind());
      promised("words", word.words());
      promised("as", word.as());
      promised("source", word.source());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void wholeSet(ReadingAccount reading, ReadingAccount.WholeSet set) throws IOException {
    json.writeStartObject();
    promised("check", set.check());
    promised("outcome", set.outcome().name().toLowerCase(Locale.ROOT));
    json.writeNumberField("findings", set.found());
    json.writeNumberField("unread", set.unread());
    promised("lookedIn", reading.lookedIn());
    json.writeEndObject();
  }

  private void tally(String name, Account.Tally tally) throws IOException {
    json.writeObjectFieldStart(name);
    json.writeNumberField("read", tally.read());
    json.writeNumberField("context", tally.context());
    json.writeNumberField("setAside", tally.setAside());
    json.writeNumberField("notUnderstood", tally.notUnderstood());
    json.writeEndObject();
  }

  private void array(String name, List<String> texts) throws IOException {
    json.writeArrayFieldStart(name);
    for (String text : texts) json.writeString(text);
    json.writeEndArray();
  }

  private void calculation(Calculation calculation) throws IOException {
    json.writeStartObject();
    text("id", calculation.id());
    text("check", calculation.check());
    text("tag", calculation.tag());
    text("title", calculation.title());
    text("lacks", calculation.lacks());
    json.writeArrayFieldStart("inputs");
    for (Calculation.Input input : calculation.inputs()) {
      json.writeStartObject();
      text("name", input.name());
      text("label", input.label());
      json.writeNumberField("number", input.quantity().number());
      text("unit", input.quantity().unit().symbol());
      json.writeBooleanField("assumed", input.assumed());
      text("basis", input.basis());
      origin("origin", input.origin());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("steps");
    for (Calculation.Step step : calculation.steps()) {
      json.writeStartObject();
      text("name", step.name());
      text("label", step.label());
      text("formula", step.formula());
      json.writeNumberField("number", step.result().number());
      text("unit", step.result().unit().symbol());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void origins(String name, List<Origin> origins) throws IOException {
    if (origins.isEmpty()) return;
    json.writeArrayFieldStart(name);
    for (Origin origin : origins) {
      json.writeStartObject();
      originKeys(origin);
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void origin(String name, Origin origin) throws IOException {
    if (origin == null) return;
    json.writeObjectFieldStart(name);
    originKeys(origin);
    json.writeEndObject();
  }

  private void originKeys(Origin origin) throws IOException {
    text("document", origin.document());
    text("sheet", origin.sheet());
    text("cell", origin.cell());
    if (origin.page() != null) json.writeNumberField("page", origin.page());
    if (origin.paragraph() != null) json.writeNumberField("paragraph", origin.paragraph());
    text("heading", origin.heading());
    text("text", origin.text());
    text("part", origin.part());
  }

  private void texts(String name, List<String> texts) throws IOException {
    if (texts == null || texts.isEmpty()) return;
    json.writeArrayFieldStart(name);
    for (String text : texts) json.writeString(text);
    json.writeEndArray();
  }

  private void promised(String name, String text) throws IOException {
    json.writeStringField(name, text == null ? "" : text);
  }

  private void text(String name, String text) throws IOException {
    if (text != null && !text.isEmpty()) json.writeStringField(name, text);
  }
}
