package clearbed.cli;

import clearbed.cache.Cache;
import clearbed.cache.Known;
import clearbed.model.Document;
import clearbed.read.Treatment;
import clearbed.recognise.Recognised;
import java.nio.file.Path;

/** Takes the facts of each document, or remembers them. The first is read while rules load. */
final class Recognition implements Treatment<Known> {
  private final Rulebook.Coming rulebook;
  private final Cache cache;

  /**
   * @param cache may be null
   */
  Recognition(Rulebook.Coming rulebook, Cache cache) {
    this.rulebook = rulebook;
    this.cache = cache;
  }

  @Override
  public Known of(Document document) {
    return Known.of(Recognised.of(document, rulebook.recogniser()));
  }

  @Override
  public Memory<Known> memory(String path, boolean named, Path file) {
    return cache == null
        ? Memory.none()
        : cache.readings().memory(path, named, file, rulebook::recogniser);
  }
}
