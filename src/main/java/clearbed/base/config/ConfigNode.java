package clearbed.base.config;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Something that a configuration file says, and where it says it. */
public final class ConfigNode {
  private final ConfigFile file;
  private final ConfigNode around;
  private final String step;
  private final JsonNode value;

  ConfigNode(ConfigFile file, ConfigNode around, String step, JsonNode value) {
    this.file = file;
    this.around = around;
    this.step = step;
    this.value = value;
  }

  public ConfigFile file() {
    return file;
  }

  /** The key that it stands under, or its number in a list, from 0. */
  public String key() {
    return step;
  }

  public boolean has(String key) {
    return value.has(key);
  }

  /** What stands under a key; where there is no such key, something without text and items. */
  public ConfigNode get(String key) {
    return new ConfigNode(file, this, key, value.path(key));
  }

  public boolean isText() {
    return value.isTextual();
  }

  /** Its text; empty when it has none. */
  public String text() {
    return value.asText("");
  }

  public boolean isTrue() {
    return value.asBoolean();
  }

  /** The items of a list; what is no list counts as a list of itself. */
  public List<ConfigNode> items() {
    if (value.isMissingNode()) return List.of();
    if (!value.isArray()) return List.of(this);
    List<ConfigNode> out = new ArrayList<>(value.size());
    for (JsonNode item : value)
      out.add(new ConfigNode(file, this, String.valueOf(out.size()), item));
    return out;
  }

  /** What stands under its keys, in the order of the file. */
  public List<ConfigNode> entries() {
    List<ConfigNode> out = new ArrayList<>(value.size());
    for (Map.Entry<String, JsonNode> entry : value.properties())
      out.add(new ConfigNode(file, this, entry.getKey(), entry.getValue()));
    return out;
  }

  /** The texts of the items. */
  public List<String> texts() {
    List<String> out = new ArrayList<>();
    for (ConfigNode item : items()) out.add(item.text());
    return out;
  }

  /** The keys that lead to it: {@code exposures.exterior.rows[0].width}. */
  public String path() {
    if (around == null) return "";
    if (around.value.isArray()) return around.path() + "[" + step + "]";
    return around.around == null ? step : around.path() + "." + step;
  }

  /** What is wrong with it, with file and line. */
  public ConfigException fault(String reason) {
    return file.fault(steps(), reason);
  }

  /** The line of its file, from 1. */
  public int line() throws ConfigException {
    return file.line(steps());
  }

  private List<String> steps() {
    List<String> path = new ArrayList<>();
    for (ConfigNode node = this; node.around != null; node = node.around) path.add(node.step);
    Collections.reverse(path);
    return path;
  }

  /** The constant that its text names, in small letters. */
  public <E extends Enum<E>> E oneOf(E[] constants) throws ConfigException {
    List<String> names = new ArrayList<>();
    for (E constant : constants) {
      String name = constant.name().toLowerCase(Locale.ROOT);
      if (name.equals(text())) return constant;
      names.add(name);
    }
    throw unknown(text(), step + ": '" + text() + "' is not known here", names);
  }

  /** A word of it is none of those known; the nearest of them, or all, are said. */
  public ConfigException unknown(String word, String reason, Collection<String> known) {
    return fault(reason + Spelling.hint(word, known));
  }

  /** The same where the word may be new as well: only a near one is said. */
  public ConfigException perhaps(String word, String reason, Collection<String> known) {
    return perhaps(word, reason, known, reason);
  }

  /**
   * The same with another reason where none is near.
   *
   * @param otherwise the reason then
   */
  public ConfigException perhaps(
      String word, String reason, Collection<String> known, String otherwise) {
    String nearest = Spelling.nearest(word, known);
    return nearest.isEmpty() ? fault(otherwise) : unknown(word, reason, List.of(nearest));
  }

  /**
   * Where any key is a name, one that is much like a key with a sense of its own is that key
   * misspelt.
   */
  public void refuseIfLike(String known) throws ConfigException {
    if (step.equals(known) || Spelling.nearest(step, List.of(known)).isEmpty()) return;
    throw unknown(step, "'" + step + "' is not known here", List.of(known));
  }
}
