package clearbed.recognise;

import clearbed.model.Origin;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * What was found in texts lately, for schedules and issues say the same words over and over. What a
 * text states depends on the text and its context alone; only the place differs.
 */
final class Remembered {
  /** Together a few megabytes. */
  private static final int MOST_TEXTS = 8_000;

  private static final int LONGEST_TEXT = 500;

  private record Key(String text, Context context) {}

  private final Map<Key, List<Statement>> known = new ConcurrentHashMap<>();

  List<Statement> of(String text, Context context, Origin origin, Supplier<List<Statement>> find) {
    if (text.length() > LONGEST_TEXT) return find.get();
    Key key = new Key(text, context);
    List<Statement> before = known.get(key);
    if (before != null) return before.stream().map(s -> s.at(origin)).toList();
    List<Statement> found = find.get();
    if (known.size() >= MOST_TEXTS) known.clear();
    known.put(key, List.copyOf(found));
    return found;
  }
}
