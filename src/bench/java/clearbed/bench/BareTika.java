package clearbed.bench;

import java.nio.file.Path;
import org.apache.tika.io.TikaInputStream;
import org.apache.tika.metadata.Metadata;
import org.apache.tika.parser.AutoDetectParser;
import org.apache.tika.parser.ParseContext;
import org.apache.tika.parser.Parser;
import org.apache.tika.sax.BodyContentHandler;

/** Text extraction by Tika as it comes, the yardstick of the whole check. */
final class BareTika {
  private static final Parser PARSER = new AutoDetectParser();

  private BareTika() {}

  /** Characters of text in the file, or 0 when it cannot be read. */
  static long characters(Path file) {
    BodyContentHandler text = new BodyContentHandler(-1);
    Metadata metadata = new Metadata();
    try (TikaInputStream in = TikaInputStream.get(file, metadata)) {
      ParseContext context = new ParseContext();
      context.set(Parser.class, PARSER);
      PARSER.parse(in, text, metadata, context);
      return text.toString().length();
    } catch (Exception e) {
      return 0;
    }
  }
}
