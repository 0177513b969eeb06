package clearbed.cache;

import clearbed.read.source.Source;
import clearbed.recognise.Facts;
import java.util.function.Supplier;

/** Facts of files: those kept of an earlier run, or new ones. Safe for several threads. */
@FunctionalInterface
public interface FactStore {
  /** Knows and keeps nothing. */
  FactStore NONE = (source, take) -> take.get();

  /**
   * What a source says.
   *
   * @param take reads it, when that is not known
   */
  Facts facts(Source source, Supplier<Facts> take);
}
