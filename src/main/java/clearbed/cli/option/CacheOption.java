package clearbed.cli.option;

import clearbed.cache.Cache;
import clearbed.cli.terminal.Failures;
import clearbed.cli.terminal.UsageFailure;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Set;
import picocli.CommandLine.Option;

/** Where what was read is kept. */
public final class CacheOption {
  @Option(
      names = "--cache",
      paramLabel = "DIR",
      description =
          "Keeps in this folder what was read; files that have not changed are not read again.")
  public Path folder;

  /** What is never read as a document. */
  public Set<Path> written() {
    return folder == null ? Set.of() : Set.of(folder.toAbsolutePath().normalize());
  }

  /** The cache, or null when none is wished. */
  public Cache open(ComingRulebook rulebook) {
    if (folder == null) return null;
    try {
      return Cache.open(folder, rulebook.recogniser());
    } catch (IOException e) {
      throw new UsageFailure("--cache " + folder + ": " + Failures.oneLine(e));
    }
  }

  /** Ends its use; a cache that could not be written changes no finding, but is said. */
  public void close(Cache cache, PrintWriter err) {
    if (cache == null) return;
    cache.close();
    if (cache.failed()) err.println("clearbed: --cache " + folder + ": could not be written");
  }
}
