package clearbed.report;

import clearbed.base.Parallel;
import clearbed.model.report.ReadingAccount;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.report.wording.ControlEscapes;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The entries of the findings as JSON, each with its values and their origins. */
final class EntriesJson {
  /** How deep an entry lies: in the array of entries, in the object of all. */
  private static final int DEPTH_OF_AN_ENTRY = 2;

  /** Places of the entries that are written at a time; what is said in one takes some 30 kB. */
  private static final int PLACES_AT_ONCE = 400;

  private final JsonGenerator json;
  private final JsonFields fields;

  /** What the office has taught is said of each value that was read by it. */
  private final ReadingAccount reading;

  EntriesJson(JsonGenerator json, ReadingAccount reading) {
    this.json = json;
    this.fields = new JsonFields(json);
    this.reading = reading;
  }

  /** Nearly all of a long file is entries: some are written at a time, on all processors. */
  void write(List<Entry> entries, OutputStream out) throws IOException {
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
      json.setPrettyPrinter(new Inner(JsonFields.printer()));
      new EntriesJson(json, reading).entry(entry);
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
    fields.promised("tag", entry.tag());
    json.writeBooleanField("glass", entry.glass());
    fields.text("evidence", entry.evidence());
    fields.origin("origin", entry.origin());
    fields.origins("places", entry.places());
    fields.objects("values", entry.values(), this::value);
    if (!entry.superseded().isEmpty())
      fields.objects("superseded", entry.superseded(), this::value);
    json.writeEndObject();
  }

  private void value(Value value) throws IOException {
    fields.promised("attribute", value.attribute());
    fields.promised("value", value.content().text());
    if (value.excluded()) json.writeBooleanField("excluded", true);
    fields.promised("asWritten", value.asWritten());
    fields.origin("origin", value.origin());
    fields.promised("scope", value.scope().name().toLowerCase(Locale.ROOT));
    fields.text("taught", reading.taughtBy(value));
  }
}
