package clearbed.recognise;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * Finds the rule and vocabulary files that ship with the tool: beside the installed program where a
 * specifier can edit them, else inside the jar.
 */
public final class StandardFiles {
  private static final String IN_JAR = "/clearbed/rulesets/";

  private StandardFiles() {}

  /**
   * A file that ships with the tool, and the words to name it by.
   *
   * @param edited since it was shipped
   */
  public record Source(String name, byte[] bytes, boolean edited) {}

  /**
   * Reads a file by its path under {@code rulesets/}.
   *
   * @throws IOException when there is no such file
   */
  public static Source open(String path) throws IOException {
    Path folder = folder();
    if (folder != null) {
      Path file = folder.resolve(path);
      if (Files.isRegularFile(file)) {
        byte[] bytes = Files.readAllBytes(file);
        return new Source("rulesets/" + path, bytes, !Arrays.equals(bytes, shipped(path)));
      }
    }
    byte[] bytes = shipped(path);
    if (bytes == null)
      throw new IOException("rulesets/" + path + ": no such file; reinstall the tool");
    return new Source("rulesets/" + path, bytes, false);
  }

  /**
   * The files that lie beside the installed program, by name; none where it has only those in its
   * jar.
   */
  public static List<Path> installed() throws IOException {
    Path folder = folder();
    if (folder == null || !Files.isDirectory(folder)) return List.of();
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }

  /** Beside the installed program; null where it is not installed. */
  private static Path folder() {
    String home = System.getProperty("clearbed.home", "");
    return home.isEmpty() ? null : Path.of(home, "rulesets");
  }

  /** The copy inside the jar, or null. */
  private static byte[] shipped(String path) throws IOException {
    try (InputStream in = StandardFiles.class.getResourceAsStream(IN_JAR + path)) {
      return in == null ? null : in.readAllBytes();
    }
  }
}
