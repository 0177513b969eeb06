package clearbed.base.config;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;
import org.yaml.snakeyaml.reader.ReaderException;

/**
 * A YAML text as a tree that knows its lines. Plain YAML only: one document, no anchors, no merge
 * keys, no tags. A scalar is the text that is written; {@code true}, {@code false} and nothing at
 * all are what they say.
 */
final class YamlTree {
  static final int LARGEST = 1 << 20;

  /** What YAML takes plain text for by itself. */
  private static final Set<Tag> PLAIN =
      Set.of(
          Tag.STR,
          Tag.INT,
          Tag.FLOAT,
          Tag.BOOL,
          Tag.NULL,
          Tag.TIMESTAMP,
          Tag.MERGE,
          Tag.MAP,
          Tag.SEQ);

  private final String file;
  private final Node root;

  private YamlTree(String file, Node root) {
    this.file = file;
    this.root = root;
  }

  static YamlTree parse(String file, byte[] bytes) throws ConfigException {
    if (bytes.length > LARGEST)
      throw ConfigException.at(file, 0, "larger than 1 MiB, which no file of this kind should be");
    LoaderOptions options = new LoaderOptions();
    options.setCodePointLimit(LARGEST);
    // Nothing is made of a tag, and nothing repeated: both are refused below, in our own words.
    options.setTagInspector(tag -> true);
    options.setMaxAliasesForCollections(LARGEST);
    String text = text(file, bytes);
    try {
      Node root = new Yaml(options).compose(new StringReader(text));
      if (root == null) throw ConfigException.at(file, 1, "the file is empty");
      return new YamlTree(file, root);
    } catch (MarkedYAMLException e) {
      int line = e.getProblemMark() == null ? 1 : e.getProblemMark().getLine() + 1;
      throw ConfigException.at(file, line, "not valid YAML: " + e.getProblem());
    } catch (ReaderException e) {
      String code = "U+%04X".formatted(e.getCodePoint());
      int line = line(text, e.getPosition());
      throw ConfigException.at(file, line, "a character that YAML does not allow, " + code);
    } catch (YAMLException e) {
      throw ConfigException.at(file, 1, "not valid YAML: " + e.getMessage());
    }
  }

  private static String text(String file, byte[] bytes) throws ConfigException {
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = StandardCharsets.UTF_8.newDecoder().decode(in, out, true);
    out.flip();
    if (result.isError()) {
      String read = out.toString();
      throw ConfigException.at(
          file, line(read, read.length()), "not UTF-8; save the file in that encoding");
    }
    boolean mark = out.length() > 0 && out.charAt(0) == '\uFEFF';
    return out.subSequence(mark ? 1 : 0, out.length()).toString();
  }

  private static int line(String text, int end) {
    return 1 + (int) text.substring(0, end).chars().filter(c -> c == '\n').count();
  }

  JsonNode json() throws ConfigException {
    return json(root);
  }

  /**
   * The line of what a path leads to, or of the last thing on the way; from 1.
   *
   * @param path keys, and numbers of items
   */
  int line(List<String> path) {
    Node node = root;
    int line = line(root);
    for (String step : path) {
      Node next = null;
      if (node instanceof MappingNode map) {
        for (NodeTuple pair : map.getValue()) {
          if (!((ScalarNode) pair.getKeyNode()).getValue().equals(step)) continue;
          line = line(pair.getKeyNode());
          next = pair.getValueNode();
        }
      } else if (node instanceof SequenceNode list) {
        next = list.getValue().get(Integer.parseInt(step));
        line = line(next);
      }
      if (next == null) return line;
      node = next;
    }
    return line;
  }

  private static int line(Node node) {
    return node.getStartMark().getLine() + 1;
  }

  private JsonNode json(Node node) throws ConfigException {
    // An anchor stands before all that repeat it, so that no circle is walked into.
    if (node.getAnchor() != null)
      throw fault(node, "anchors and aliases (&, *) are not read here; write the words out");
    if (!PLAIN.contains(node.getTag()))
      throw fault(node, "tags (!) are not read here; leave it out");
    if (node instanceof MappingNode map) return object(map);
    if (node instanceof SequenceNode list) {
      ArrayNode out = JsonNodeFactory.instance.arrayNode();
      for (Node item : list.getValue()) out.add(json(item));
      return out;
    }
    return scalar((ScalarNode) node);
  }

  private ObjectNode object(MappingNode map) throws ConfigException {
    ObjectNode out = JsonNodeFactory.instance.objectNode();
    for (NodeTuple pair : map.getValue()) {
      Node key = pair.getKeyNode();
      if (!(key instanceof ScalarNode word) || key.getAnchor() != null)
        throw fault(key, "a key is one word or a few, not a list, a map or an anchor");
      if (key.getTag().equals(Tag.MERGE))
        throw fault(key, "merge keys (<<) are not read here; write the entries out");
      if (out.has(word.getValue()))
        throw fault(key, "'" + word.getValue() + "' stands twice here; keep one of the two");
      out.set(word.getValue(), json(pair.getValueNode()));
    }
    return out;
  }

  private static JsonNode scalar(ScalarNode node) {
    String text = node.getValue();
    if (node.getTag().equals(Tag.NULL)) return JsonNodeFactory.instance.nullNode();
    String word = text.toLowerCase(Locale.ROOT);
    // YAML 1.1 has "no" and "on" for flags, too; here they are words.
    if (node.getTag().equals(Tag.BOOL) && (word.equals("true") || word.equals("false")))
      return JsonNodeFactory.instance.booleanNode(word.equals("true"));
    return JsonNodeFactory.instance.textNode(text);
  }

  private ConfigException fault(Node node, String reason) {
    return ConfigException.at(file, line(node), reason);
  }
}
