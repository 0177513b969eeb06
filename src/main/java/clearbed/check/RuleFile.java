package clearbed.check;

import clearbed.recognise.PreparedTree;
import clearbed.recognise.StandardFiles;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.error.MarkedYAMLException;

/**
 * A rule file, parsed and valid against the schema.
 *
 * @param name as people know the file
 */
record RuleFile(String name, String text, JsonNode tree) {
  private static final String SCHEMA = "/clearbed/ruleset.schema.json";

  /**
   * @throws RuleFileException naming file, line and reason of every fault
   */
  static RuleFile parse(String name, byte[] bytes) throws RuleFileException {
    RuleFile file = parse(name, bytes, true);
    List<Error> errors = schema().validate(file.tree());
    if (!errors.isEmpty()) {
      throw new RuleFileException(
          errors.stream().map(file::describe).distinct().collect(Collectors.joining("\n")));
    }
    return file;
  }

  /** Parsed only: a file as it was shipped is known to be valid. */
  static RuleFile shipped(StandardFiles.Source source) throws IOException, RuleFileException {
    JsonNode tree = PreparedTree.of(source);
    return tree == null
        ? parse(source.name(), source.bytes(), false)
        : new RuleFile(source.name(), new String(source.bytes(), StandardCharsets.UTF_8), tree);
  }

  private static RuleFile parse(String name, byte[] bytes, boolean strange)
      throws RuleFileException {
    String text = new String(bytes, StandardCharsets.UTF_8);
    try {
      // The only parser of the two that names the line of a fault.
      if (strange) new YamlLines(text);
      JsonNode tree = new ObjectMapper(new YAMLFactory()).readTree(text);
      if (tree == null || !tree.isObject())
        throw new RuleFileException(
            name + ":1: empty, or not a rule file; see the files in rulesets/ for the form");
      return new RuleFile(name, text, tree);
    } catch (MarkedYAMLException e) {
      int line = e.getProblemMark() == null ? 1 : e.getProblemMark().getLine() + 1;
      throw new RuleFileException(name + ":" + line + ": not valid YAML: " + e.getProblem());
    } catch (IOException | org.yaml.snakeyaml.error.YAMLException e) {
      throw new RuleFileException(
          name
              + ":1: not valid YAML: "
              + String.valueOf(e.getMessage()).lines().findFirst().orElse(""));
    }
  }

  RuleFileException fault(String pointer, String reason) {
    return new RuleFileException(name + ":" + lines().of(pointer) + ": " + reason);
  }

  private YamlLines lines() {
    return new YamlLines(text);
  }

  private String describe(Error error) {
    String pointer = pointer(error.getInstanceLocation().toString());
    String property = error.getProperty() == null ? "" : error.getProperty();
    boolean unknown = "additionalProperties".equals(error.getKeyword());
    int line = lines().of(unknown ? pointer + "/" + property : pointer);
    String where = pointer.isEmpty() ? "" : " (at " + pointer + ")";
    return name + ":" + line + ": " + error.getMessage() + where;
  }

  /** The library writes either a JSON pointer or a JSON path. */
  private static String pointer(String location) {
    if (location.startsWith("/") || location.isEmpty()) return location;
    return location.replaceFirst("^\\$", "").replaceAll("\\[(\\d+)\\]", "/$1").replace('.', '/');
  }

  private static Schema schema() {
    try (InputStream in = RuleFile.class.getResourceAsStream(SCHEMA)) {
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(new String(in.readAllBytes(), StandardCharsets.UTF_8), InputFormat.JSON);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
