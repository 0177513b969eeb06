package clearbed.check;

import java.io.StringReader;
import java.util.HashMap;
import java.util.Map;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** Line numbers of a YAML text by JSON pointer. */
final class YamlLines {
  private final Map<String, Integer> lines = new HashMap<>();

  YamlLines(String yaml) {
    Node root = new Yaml(new LoaderOptions()).compose(new StringReader(yaml));
    if (root != null) walk("", root);
  }

  /** The line of a pointer, or of the nearest thing around it; from 1. */
  int of(String pointer) {
    for (String p = pointer; ; p = p.substring(0, p.lastIndexOf('/'))) {
      Integer line = lines.get(p);
      if (line != null) return line;
      if (p.isEmpty()) return 1;
    }
  }

  private void walk(String pointer, Node node) {
    lines.putIfAbsent(pointer, node.getStartMark().getLine() + 1);
    if (node instanceof MappingNode map) {
      for (NodeTuple tuple : map.getValue()) {
        if (!(tuple.getKeyNode() instanceof ScalarNode key)) continue;
        String child = pointer + "/" + key.getValue().replace("~", "~0").replace("/", "~1");
        lines.put(child, key.getStartMark().getLine() + 1);
        walk(child, tuple.getValueNode());
      }
    } else if (node instanceof SequenceNode sequence) {
      int i = 0;
      for (Node item : sequence.getValue()) walk(pointer + "/" + i++, item);
    }
  }
}
