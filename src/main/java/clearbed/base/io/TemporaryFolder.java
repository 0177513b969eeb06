package clearbed.base.io;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A private folder, made on first use and removed at the end with all that is in it. */
public final class TemporaryFolder implements AutoCloseable {
  private Path folder;

  /** The folder itself; only its owner can enter it. */
  public Path path() throws IOException {
    // Java itself would take the place that it was started with, not that of the run.
    if (folder == null) folder = Files.createTempDirectory(RunFolder.place(), "clearbed");
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
    try {
      OwnFolder.remove(folder);
    } catch (IOException e) {
      // It goes with the folder of the run.
    }
  }
}
