package clearbed.calc;

import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.recognise.PreparedTree;
import clearbed.recognise.Quantities;
import clearbed.recognise.StandardFiles;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** A YAML file of figures with units; whatever is wrong with it is said with file and line. */
final class YamlFile {
  private final String name;

  YamlFile(String name) {
    this.name = name;
  }

  <T> T read(StandardFiles.Source source, Class<T> type) throws IOException {
    JsonNode shipped = PreparedTree.of(source);
    return shipped == null
        ? read(source.bytes(), type)
        : mapper(new JsonFactory()).treeToValue(shipped, type);
  }

  private <T> T read(byte[] bytes, Class<T> type) throws IOException {
    YAMLFactory factory =
        YAMLFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();
    try {
      T read = mapper(factory).readValue(bytes, type);
      if (read == null) throw wrong(0, "the file is empty");
      return read;
    } catch (UnrecognizedPropertyException e) {
      throw wrong(lineOf(factory, bytes, pointer(e)), unknown(e));
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      throw wrong(at == null ? 0 : at.getLineNr(), reason(e));
    }
  }

  private static ObjectMapper mapper(JsonFactory factory) {
    SimpleModule lines = new SimpleModule().addDeserializer(Words.class, new WithLine());
    ObjectMapper mapper = new ObjectMapper(factory);
    mapper.registerModule(lines);
    return mapper;
  }

  private static String unknown(UnrecognizedPropertyException e) {
    String known =
        e.getKnownPropertyIds().stream()
            .map(Object::toString)
            .sorted()
            .collect(Collectors.joining(", "));
    return "unknown entry '" + e.getPropertyName() + "'; known here are " + known;
  }

  private static String pointer(JsonMappingException e) {
    StringBuilder out = new StringBuilder();
    for (JsonMappingException.Reference step : e.getPath()) {
      String name = step.getFieldName();
      out.append('/').append(name == null ? String.valueOf(step.getIndex()) : name);
    }
    return out.toString();
  }

  /** The mapper only notices an unknown entry once it has read the whole of what holds it. */
  private static int lineOf(YAMLFactory factory, byte[] bytes, String pointer) throws IOException {
    try (JsonParser parser = factory.createParser(bytes)) {
      while (parser.nextToken() != null) {
        if (parser.currentToken() == JsonToken.FIELD_NAME
            && parser.getParsingContext().pathAsPointer().toString().equals(pointer)) {
          return parser.currentTokenLocation().getLineNr();
        }
      }
    }
    return 0;
  }

  private static String reason(JsonProcessingException e) {
    if (e instanceof MismatchedInputException wrong) {
      List<JsonMappingException.Reference> path = wrong.getPath();
      String where =
          path.isEmpty() ? "the file" : "'" + path.get(path.size() - 1).getFieldName() + "'";
      return where + " has not the form that is wanted; compare the file that ships with the tool";
    }
    return firstLine(e.getOriginalMessage());
  }

  IOException wrong(int line, String reason) {
    return new IOException(name + (line > 0 ? ":" + line : "") + ": " + reason);
  }

  String text(Words words, String what) throws IOException {
    if (words == null || words.text().isBlank()) throw wrong(0, what + " is missing");
    return words.text().strip();
  }

  /** One figure above zero. */
  Quantity positive(Words words, String what, Dimension dimension) throws IOException {
    String text = text(words, what);
    Optional<Content.Amount> amount = Quantities.parse(text, dimension);
    if (amount.isEmpty()) {
      throw wrong(
          words.line(), what + ": '" + text + "' is no " + words(dimension) + " with a unit");
    }
    Interval interval = Interval.of(amount.get());
    if (!interval.isExact()) {
      throw wrong(words.line(), what + ": one figure is wanted, not '" + text + "'");
    }
    if (interval.low().number() <= 0) {
      throw wrong(words.line(), what + ": '" + text + "' must be above zero");
    }
    return interval.low();
  }

  private static String words(Dimension dimension) {
    return dimension.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }

  private static String firstLine(String message) {
    return message.lines().findFirst().orElse("not understood");
  }

  /** Keeps the line of a scalar, for messages about what it says. */
  private static final class WithLine extends JsonDeserializer<Words> {
    @Override
    public Words deserialize(JsonParser parser, DeserializationContext context) throws IOException {
      int line = parser.currentTokenLocation().getLineNr();
      if (!parser.currentToken().isScalarValue()) {
        return (Words)
            context.handleUnexpectedToken(
                Words.class, parser.currentToken(), parser, "a single value is wanted here");
      }
      return new Words(parser.getText(), line);
    }
  }
}
