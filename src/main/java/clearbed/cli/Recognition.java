package clearbed.cli;

import clearbed.cache.ReadingCache;
import clearbed.model.Document;
import clearbed.read.Treatment;
import clearbed.recognise.Recognised;
import java.nio.file.Path;

/** Takes the facts of each document, or remembers them. The first is read while rules load. */
final class Recognition implements Treatment<Recognised> {
  private final Rulebook.Coming rulebook;
  private final ReadingCache cache;

  /**
   * @param cache may be null
   */
  Recognition(Rulebook.Coming rulebook, ReadingCache cache) {
    this.rulebook = rulebook;
    this.cache = cache;
  }

  @Override
  public Recognised of(Document document) {
    return Recognised.of(document, rulebook.recogniser());
  }

  @Override
  public Memory<Recognised> memory(String path, boolean named, Path file) {
    return cache == null ? Memory.none() : cache.memory(path, named, file);
  }
}
