package clearbed.report;

import clearbed.model.report.Account;
import clearbed.model.report.ReadingAccount;
import clearbed.model.report.TaughtWord;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Locale;

/** The account of the reading as JSON: what was read, what was not understood, and why. */
final class ReadingJson {
  private final JsonGenerator json;
  private final JsonFields fields;
  private final ReadingAccount reading;

  ReadingJson(JsonGenerator json, ReadingAccount reading) {
    this.json = json;
    this.fields = new JsonFields(json);
    this.reading = reading;
  }

  void write() throws IOException {
    tally("sentences", reading.sentences());
    tally("cells", reading.cells());
    fields.objects("tables", reading.tables(), this::table);
    fields.objects("notUnderstood", reading.notUnderstood(), this::notUnderstood);
    fields.objects("wholeSet", reading.wholeSet(), this::wholeSet);
    fields.objects("setAside", reading.setAside(), this::setAside);
    fields.objects("undecided", reading.undecided(), this::undecided);
    if (!reading.taught().isEmpty()) fields.objects("taught", reading.taught(), this::taught);
  }

  private void tally(String name, Account.Tally tally) throws IOException {
    json.writeObjectFieldStart(name);
    json.writeNumberField("read", tally.read());
    json.writeNumberField("context", tally.context());
    json.writeNumberField("setAside", tally.setAside());
    json.writeNumberField("notUnderstood", tally.notUnderstood());
    json.writeEndObject();
  }

  private void table(Account.TableAccount table) throws IOException {
    fields.origin("origin", table.origin());
    fields.promised("takenFor", table.takenFor());
    fields.objects("columns", table.columns(), this::column);
  }

  private void column(Account.Column column) throws IOException {
    fields.promised("heading", column.heading());
    fields.promised("as", column.as());
    fields.promised("evidence", column.evidence());
    fields.text("unit", column.unit());
  }

  private void notUnderstood(ReadingAccount.WordsNotUnderstood each) throws IOException {
    Account.Unread words = each.words();
    fields.origin("origin", words.origin());
    fields.text("heading", words.samples().isEmpty() ? "" : words.text());
    fields.promised("couldAnswer", each.couldAnswer());
    fields.promised("tags", each.tags());
    fields.texts("samples", words.samples());
  }

  private void wholeSet(ReadingAccount.WholeSet set) throws IOException {
    fields.promised("check", set.check());
    fields.promised("outcome", set.outcome().name().toLowerCase(Locale.ROOT));
    json.writeNumberField("findings", set.found());
    json.writeNumberField("unread", set.unread());
    fields.promised("lookedIn", reading.lookedIn());
  }

  private void setAside(Account.SetAside aside) throws IOException {
    fields.origin("origin", aside.origin());
    fields.promised("why", aside.why());
    json.writeNumberField("count", aside.count());
  }

  private void undecided(ReadingAccount.UndecidedTile undecided) throws IOException {
    fields.promised("tag", undecided.tag());
    fields.origin("origin", undecided.origin());
    fields.promised("for", undecided.speaksFor());
    fields.promised("against", undecided.speaksAgainst());
  }

  private void taught(TaughtWord word) throws IOException {
    fields.promised("kind", word.kind());
    fields.promised("words", word.words());
    fields.promised("as", word.as());
    fields.promised("source", word.source());
  }
}
