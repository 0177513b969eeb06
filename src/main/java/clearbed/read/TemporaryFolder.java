package clearbed.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** A private folder for the entries of archives, made on first use and removed at the end. */
final class TemporaryFolder implements AutoCloseable {
  private Path folder;

  /** A new file; its name has nothing of the entry's but the extension. */
  Path newFile(String extension) throws IOException {
    if (folder == null) folder = Files.createTempDirectory("clearbed");
    String safe = extension.matches("[a-z0-9]{1,8}") ? "." + extension : "";
    return Files.createTempFile(folder, "entry", safe);
  }

  @Override
  public void close() {
    if (folder == null) return;
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) Files.deleteIfExists(file);
      Files.deleteIfExists(folder);
    } catch (IOException e) {
      // Left to the operating system's clearing of temporary files.
    }
  }
}
