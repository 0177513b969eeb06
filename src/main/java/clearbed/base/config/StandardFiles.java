package clearbed.base.config;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/**
 * Finds the rule and vocabulary files that ship with the tool: beside the installed program where a
 * specifier can edit them, else inside the jar.
 */
public final class StandardFiles {
  private static final String IN_JAR = "/clearbed/rulesets/";

  private StandardFiles() {}

  /**
   * A file, and the words to name it by.
   *
   * @param edited since it was shipped; true for a file of the user's own
   */
  public record FileSource(String name, byte[] bytes, boolean edited) {}

  /**
   * Reads a file of the user's own.
   *
   * @throws ConfigException when there is none, or it cannot be read
   */
  public static FileSource given(Path file) throws ConfigException {
    try {
      return new FileSource(file.toString(), bytes(file), true);
    } catch (NoSuchFileException e) {
      throw ConfigException.at(file.toString(), 0, "no such file; check the path");
    } catch (AccessDeniedException e) {
      throw ConfigException.at(file.toString(), 0, "access denied");
    } catch (IOException e) {
      throw ConfigException.at(file.toString(), 0, "cannot be read: " + e.getMessage());
    }
  }

  /** No more than is needed to tell that a file is too large. */
  private static byte[] bytes(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(YamlTree.LARGEST + 1);
    }
  }

  /**
   * Reads a file by its path under {@code rulesets/}.
   *
   * @throws IOException when there is no such file, or it cannot be read
   */
  public static FileSource open(String path) throws IOException {
    return find(path)
        .orElseThrow(
            () -> ConfigException.at("rulesets/" + path, 0, "no such file; reinstall the tool"));
  }

  /**
   * The same, or empty where there is no such file.
   *
   * @throws IOException when it cannot be read
   */
  public static Optional<FileSource> find(String path) throws IOException {
    byte[] shipped = shipped(path);
    Path file = folder() == null ? null : folder().resolve(path);
    if (file != null && Files.exists(file)) {
      byte[] bytes = given(file).bytes();
      return Optional.of(new FileSource("rulesets/" + path, bytes, !Arrays.equals(bytes, shipped)));
    }
    return Optional.ofNullable(shipped)
        .map(bytes -> new FileSource("rulesets/" + path, bytes, false));
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
