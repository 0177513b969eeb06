package clearbed.base.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/** A private folder, made on first use and removed at the end with all that is in it. */
public final class TemporaryFolder implements AutoCloseable {
  private Path folder;

  /** The folder itself; only its owner can enter it. */
  public Path path() throws IOException {
    if (folder == null) folder = Files.createTempDirectory("clearbed");
    return folder;
  }

  /** A new file in it; of a name it takes over the extension alone. */
  public Path newFile(String extension) throws IOException {
    String safe = extension.matches("[a-z0-9]{1,8}") ? "." + extension : "";
    return Files.createTempFile(path(), "entry", safe);
  }

  @Override
  public void close() {
    if (folder == null) return;
    try (Stream<Path> files = Files.walk(folder)) {
      // The deepest first; links are removed, never followed.
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) Files.delete(file);
    } catch (IOException | UncheckedIOException e) {
      // Left to the operating system's clearing of temporary files.
    }
  }
}
