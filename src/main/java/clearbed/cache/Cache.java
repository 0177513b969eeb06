package clearbed.cache;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A folder that keeps from run to run what was recognised of each file, and what came of all of
 * them. It holds for this very program; an entry that is damaged, foreign or of another version is
 * as good as none, and is written anew. Safe for several threads and several runs at once: entries
 * are put into place whole.
 */
public final class Cache implements AutoCloseable {
  private final CacheFolder folder;
  private final ReadingCache readings;
  private final ResultCache results;

  private Cache(CacheFolder folder, String program, String rules) {
    this.folder = folder;
    this.readings = new ReadingCache(folder, program);
    this.results = new ResultCache(folder, program + rules);
  }

  /**
   * Nothing is written before there is something to keep.
   *
   * @throws IOException when it is no folder
   */
  public static Cache open(Path folder) throws IOException {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new IOException("is not a folder; name one that may be filled");
    }
    String program = Fingerprint.ofProgram();
    return new Cache(new CacheFolder(folder, program), program, Fingerprint.ofRules());
  }

  public ReadingCache readings() {
    return readings;
  }

  public ResultCache results() {
    return results;
  }

  /** True when something could not be kept. */
  public boolean failed() {
    return folder.failed();
  }

  /** Removes what other versions left, and the entries that have been of no use for longest. */
  @Override
  public void close() {
    folder.tidy();
  }
}
