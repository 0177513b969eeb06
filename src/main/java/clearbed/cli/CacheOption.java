package clearbed.cli;

import clearbed.cache.ReadingCache;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Option;

/** Where what was read is kept. */
final class CacheOption {
  @Option(
      names = "--cache",
      paramLabel = "DIR",
      description =
          "Keeps what was read of each file in this folder; files that have not changed are not read again.")
  Path folder;

  /** The cache, or null when none is wished. */
  ReadingCache open() {
    if (folder == null) return null;
    try {
      return ReadingCache.open(folder);
    } catch (IOException e) {
      throw new UsageFailure("--cache " + folder + ": " + Failures.oneLine(e));
    }
  }

  /** Ends its use; a cache that could not be written changes no finding, but is said. */
  void close(ReadingCache cache, PrintWriter err) {
    if (cache == null) return;
    cache.close();
    if (cache.failed()) err.println("clearbed: --cache " + folder + ": could not be written");
  }
}
