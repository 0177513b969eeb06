package clearbed.report;

import clearbed.model.document.Origin;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.util.List;

/** Writes fields of the object that is open: texts, origins, arrays of them and of objects. */
record JsonFields(JsonGenerator json) {

  /** Writes the fields of one object. */
  public interface FieldWriting<T> {
    void of(T one) throws IOException;
  }

  /** The same line ends on every system. */
  static DefaultPrettyPrinter printer() {
    DefaultIndenter indent = new DefaultIndenter("  ", "\n");
    return new DefaultPrettyPrinter().withObjectIndenter(indent).withArrayIndenter(indent);
  }

  /** A text that is always there, empty where nothing is known. */
  void promised(String name, String text) throws IOException {
    json.writeStringField(name, text == null ? "" : text);
  }

  /** A text that is left out where nothing is known. */
  void text(String name, String text) throws IOException {
    if (text != null && !text.isEmpty()) json.writeStringField(name, text);
  }

  /** Texts that are left out where there are none. */
  void texts(String name, List<String> texts) throws IOException {
    if (texts != null && !texts.isEmpty()) promised(name, texts);
  }

  /** Texts that are always there, an empty array where there are none. */
  void promised(String name, List<String> texts) throws IOException {
    json.writeArrayFieldStart(name);
    for (String text : texts) json.writeString(text);
    json.writeEndArray();
  }

  <T> void objects(String name, Iterable<T> all, FieldWriting<T> fields) throws IOException {
    json.writeArrayFieldStart(name);
    for (T one : all) {
      json.writeStartObject();
      fields.of(one);
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  void origins(String name, List<Origin> origins) throws IOException {
    if (!origins.isEmpty()) objects(name, origins, this::fields);
  }

  void origin(String name, Origin origin) throws IOException {
    if (origin == null) return;
    json.writeObjectFieldStart(name);
    fields(origin);
    json.writeEndObject();
  }

  private void fields(Origin origin) throws IOException {
    text("document", origin.document());
    text("sheet", origin.sheet());
    text("cell", origin.cell());
    if (origin.page() != null) json.writeNumberField("page", origin.page());
    if (origin.paragraph() != null) json.writeNumberField("paragraph", origin.paragraph());
    text("heading", origin.heading());
    text("text", origin.text());
    text("part", origin.part());
  }
}
