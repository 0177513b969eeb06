package clearbed.base.config;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.List;

/** A YAML file of ours that its schema accepts. */
public final class ConfigFile {
  private final String name;
  private final byte[] bytes;
  private final JsonNode tree;

  /** Null for a file as it was shipped: it is parsed when somebody asks for a line. */
  private final YamlTree yaml;

  private ConfigFile(String name, byte[] bytes, JsonNode tree, YamlTree yaml) {
    this.name = name;
    this.bytes = bytes;
    this.tree = tree;
    this.yaml = yaml;
  }

  /**
   * Reads a file. One that is as it was shipped is known to be valid, and not looked at again.
   *
   * @param kind of file: its schema is {@code KIND.schema.json}
   * @throws ConfigException naming file, line and reason of every fault
   */
  public static ConfigFile read(StandardFiles.FileSource source, String kind) throws IOException {
    JsonNode shipped = PreparedTree.of(source);
    if (shipped != null) return new ConfigFile(source.name(), source.bytes(), shipped, null);
    YamlTree yaml = YamlTree.parse(source.name(), source.bytes());
    JsonNode tree = yaml.json();
    SchemaCheck.of(source.name(), yaml, tree, kind);
    return new ConfigFile(source.name(), source.bytes(), tree, yaml);
  }

  /** The file as people know it. */
  public String name() {
    return name;
  }

  /** As it lies on the disk. */
  public byte[] bytes() {
    return bytes.clone();
  }

  public ConfigNode root() {
    return new ConfigNode(this, null, "", tree);
  }

  /** The line of what a path leads to, from 1. */
  int line(List<String> path) throws ConfigException {
    return (yaml == null ? YamlTree.parse(name, bytes) : yaml).line(path);
  }

  ConfigException fault(List<String> path, String reason) {
    try {
      return ConfigException.at(name, line(path), reason);
    } catch (ConfigException e) {
      return e;
    }
  }
}
