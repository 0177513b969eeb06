package clearbed.recognise;

import clearbed.model.Lately;
import clearbed.model.Origin;
import java.util.List;
import java.util.function.Supplier;

/**
 * What was found in texts lately. What a text states depends on the text and on what is known of it
 * alone; only the place differs.
 *
 * @param <K> the text and what is known of it
 */
final class Remembered<K> {
  private final Lately<K, List<Statement>> known = new Lately<>();

  /** The statements of a text, at its own place. */
  List<Statement> of(K key, String text, Origin origin, Supplier<List<Statement>> find) {
    List<Statement> found = known.of(key, text, () -> List.copyOf(find.get()));
    return found.stream().map(s -> s.at(origin)).toList();
  }
}
