package clearbed.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** What lies in a folder, and every byte of it. */
final class Tree {
  private Tree() {}

  /** By path; links by where they lead, devices by a word, as to read one may take for ever. */
  static Map<String, String> of(Path folder) throws IOException {
    Map<String, String> found = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : all.toList()) found.put(folder.relativize(each).toString(), look(each));
    }
    return found;
  }

  private static String look(Path path) throws IOException {
    if (Files.isSymbolicLink(path)) return "-> " + Files.readSymbolicLink(path);
    if (Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS)) return "folder";
    if (!Files.isRegularFile(path)) return "device";
    return java.util.HexFormat.of().formatHex(Files.readAllBytes(path));
  }
}
