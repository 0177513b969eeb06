package clearbed.base.config;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Error;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import com.networknt.schema.path.NodePath;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Holds a tree to its schema (JSON Schema 2020-12); says what is wrong in words for people. */
final class SchemaCheck {
  private static final int MOST_FAULTS = 20;
  private static final int LONGEST_WORD = 60;

  private record Fault(int line, String reason) {}

  private final String file;
  private final YamlTree yaml;
  private final JsonNode schema;
  private final List<Fault> faults = new ArrayList<>();

  private SchemaCheck(String file, YamlTree yaml, JsonNode schema) {
    this.file = file;
    this.yaml = yaml;
    this.schema = schema;
  }

  /**
   * @param kind of file: its schema is {@code KIND.schema.json}
   * @throws ConfigException with a line for each fault, in the order of the file
   */
  static void of(String file, YamlTree yaml, JsonNode tree, String kind) throws IOException {
    String resource = "/clearbed/" + kind + ".schema.json";
    try (InputStream in = SchemaCheck.class.getResourceAsStream(resource)) {
      new SchemaCheck(file, yaml, new ObjectMapper().readTree(in)).of(tree);
    }
  }

  private void of(JsonNode tree) throws ConfigException {
    List<Error> errors =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(schema)
            .validate(tree);
    if (errors.isEmpty()) return;
    Map<NodePath, List<Error>> missing = new LinkedHashMap<>();
    for (Error e : errors) {
      switch (e.getKeyword()) {
        case "additionalProperties" ->
            unknown(e, e.getProperty(), Spelling.hint(e.getProperty(), known(e)));
        case "required" ->
            missing.computeIfAbsent(e.getInstanceLocation(), at -> new ArrayList<>()).add(e);
        default -> add(path(e), quoted(path(e)) + wrong(e));
      }
    }
    // What is missing beside an unknown key is most often what that key was meant for.
    errors.stream()
        .filter(e -> e.getKeyword().equals("additionalProperties"))
        .forEach(e -> missing.remove(e.getInstanceLocation()));
    missing.values().forEach(this::missing);
    throw new ConfigException(message());
  }

  private String message() {
    List<String> lines =
        faults.stream()
            .distinct()
            .sorted(Comparator.comparingInt(Fault::line))
            .map(f -> ConfigException.fault(file, f.line(), f.reason()))
            .toList();
    if (lines.size() <= MOST_FAULTS) return String.join("\n", lines);
    int more = lines.size() - MOST_FAULTS;
    return String.join("\n", lines.subList(0, MOST_FAULTS))
        + "\n"
        + more
        + " more faults in "
        + file;
  }

  private void add(List<String> path, String reason) {
    faults.add(new Fault(yaml.line(path), reason));
  }

  private void unknown(Error e, String key, String hint) {
    List<String> path = new ArrayList<>(path(e));
    path.add(key);
    add(path, "'" + shortened(key) + "' is not known here" + hint);
  }

  private void missing(List<Error> errors) {
    Error first = errors.get(0);
    List<String> names =
        new ArrayList<>(
            first.getInstanceNode().properties().stream().map(Map.Entry::getKey).toList());
    names.removeAll(known(first));
    List<String> gone = new ArrayList<>();
    for (Error e : errors) {
      String like = Spelling.nearest(e.getProperty(), names);
      if (like.isEmpty()) gone.add("'" + e.getProperty() + "'");
      else unknown(e, like, Spelling.hint(like, List.of(e.getProperty())));
    }
    if (!gone.isEmpty())
      add(path(first), String.join(", ", gone) + (gone.size() == 1 ? " is" : " are") + " missing");
  }

  /** The keys that the schema names where a fault is. */
  private List<String> known(Error e) {
    return around(e).path("properties").properties().stream().map(Map.Entry::getKey).toList();
  }

  /** The part of the schema with the rule that is broken. */
  private JsonNode around(Error e) {
    NodePath path = e.getSchemaLocation().getFragment();
    JsonNode at = schema;
    for (int i = 0; i < path.getNameCount() - 1; i++) at = at.path(path.getName(i));
    return at;
  }

  private static List<String> path(Error e) {
    List<String> path = new ArrayList<>();
    NodePath at = e.getInstanceLocation();
    for (int i = 0; i < at.getNameCount(); i++) path.add(at.getName(i));
    return path;
  }

  /** The last key of a path, to speak of what stands under it. */
  private static String quoted(List<String> path) {
    return path.stream()
        .filter(step -> !step.matches("\\d+"))
        .reduce((first, last) -> last)
        .map(key -> "'" + shortened(key) + "': ")
        .orElse("");
  }

  private String wrong(Error e) {
    JsonNode rule = e.getSchemaNode();
    String found = found(e.getInstanceNode());
    return switch (e.getKeyword()) {
      case "type" -> type(rule) + " is wanted, not " + found;
      case "const" -> rule.asText() + " is wanted, not " + found;
      case "enum" ->
          found + " is not known here" + Spelling.hint(e.getInstanceNode().asText(), texts(rule));
      case "pattern", "not" -> found + " is not " + around(e).path("description").asText();
      case "minLength", "minItems", "minProperties" -> "there is nothing in it";
      case "maxLength" -> "longer than " + rule + " characters";
      case "maxProperties", "maxItems" ->
          "more than " + rule + " in it; give " + (rule.asInt() == 1 ? "one" : "fewer");
      default -> String.valueOf(e.getMessage());
    };
  }

  private static String type(JsonNode rule) {
    return (rule.isArray() ? texts(rule) : List.of(rule.asText()))
        .stream()
            // Nothing at all is no form of what is wanted.
            .filter(name -> !name.equals("null"))
            .map(
                name ->
                    switch (name) {
                      case "string" -> "a text";
                      case "boolean" -> "true or false";
                      case "array" -> "a list";
                      default -> "a map of keys";
                    })
            .collect(Collectors.joining(" or "));
  }

  private static String found(JsonNode value) {
    if (value.isNull()) return "nothing";
    if (value.isArray()) return "a list";
    if (value.isObject()) return "a map of keys";
    return value.isBoolean() ? value.asText() : "'" + shortened(value.asText()) + "'";
  }

  private static List<String> texts(JsonNode list) {
    List<String> out = new ArrayList<>();
    list.forEach(item -> out.add(item.asText()));
    return out;
  }

  private static String shortened(String word) {
    return word.length() <= LONGEST_WORD ? word : word.substring(0, LONGEST_WORD) + "\u2026";
  }
}
