package clearbed.recognise;

import clearbed.model.Origin;
import java.util.List;
import java.util.function.Supplier;

/**
 * What was found in texts lately. What a text states depends on the text and its context alone;
 * only the place differs.
 */
final class Remembered {
  private record Key(String text, Context context) {}

  private final Lately<Key, List<Statement>> known = new Lately<>();

  List<Statement> of(String text, Context context, Origin origin, Supplier<List<Statement>> find) {
    List<Statement> found = known.of(new Key(text, context), text, () -> List.copyOf(find.get()));
    return found.stream().map(s -> s.at(origin)).toList();
  }
}
