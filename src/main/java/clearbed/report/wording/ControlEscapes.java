package clearbed.report.wording;

import clearbed.base.DisplayText;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import com.fasterxml.jackson.core.io.SerializedString;
import java.io.IOException;
import java.io.OutputStream;

/**
 * JSON in which characters that a terminal or an editor would obey are written as escapes (RFC
 * 8259, 7): a program reads the same text, and a person sees what is there.
 */
public final class ControlEscapes extends CharacterEscapes {
  private static final long serialVersionUID = 1L;

  private static final JsonFactory FACTORY = new JsonFactory();

  private ControlEscapes() {}

  public static JsonGenerator generator(OutputStream out) throws IOException {
    JsonGenerator json = FACTORY.createGenerator(out);
    json.setCharacterEscapes(new ControlEscapes());
    json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
    return json;
  }

  @Override
  public int[] getEscapeCodesForAscii() {
    int[] codes = standardAsciiEscapesForJSON();
    codes[0x7F] = ESCAPE_STANDARD;
    return codes;
  }

  @Override
  public SerializableString getEscapeSequence(int c) {
    return DisplayText.isUnsafe(c) ? new SerializedString("\\u%04x".formatted(c)) : null;
  }
}
