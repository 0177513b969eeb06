package clearbed.base.config;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.CRC32;

/**
 * The trees of the files that ship with the tool, written as JSON when it is built: to read the
 * YAML is a good part of a short run. A file that was edited since has none.
 */
public final class PreparedTree {
  private static final String SUM = "sum";
  private static final String TREE = "tree";

  private PreparedTree() {}

  /** The tree of a file as it was shipped, or null where its YAML is to be read. */
  public static JsonNode of(StandardFiles.FileSource source) throws IOException {
    if (source.edited()) return null;
    String file = "/clearbed/" + source.name() + ".json";
    try (InputStream in = PreparedTree.class.getResourceAsStream(file)) {
      if (in == null) return null;
      JsonNode prepared = new ObjectMapper().readTree(in);
      // A build that was left half done may hold the tree of an older text.
      boolean same = prepared.path(SUM).asLong() == sum(source.bytes());
      return same ? prepared.get(TREE) : null;
    }
  }

  /** Run by the build: writes the trees of the YAML files of some folders beside them. */
  public static void main(String[] folders) throws IOException {
    for (String folder : folders) {
      for (Path file : yamlFiles(Path.of(folder))) {
        byte[] bytes = Files.readAllBytes(file);
        ObjectNode prepared = new ObjectMapper().createObjectNode();
        prepared.put(SUM, sum(bytes));
        prepared.set(TREE, YamlTree.parse(file.toString(), bytes).json());
        Files.writeString(file.resolveSibling(file.getFileName() + ".json"), prepared.toString());
      }
    }
  }

  private static List<Path> yamlFiles(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
    }
  }

  private static long sum(byte[] bytes) {
    CRC32 sum = new CRC32();
    sum.update(bytes);
    return sum.getValue();
  }
}
