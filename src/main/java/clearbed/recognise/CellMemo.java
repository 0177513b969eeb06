package clearbed.recognise;

import clearbed.model.Origin;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/**
 * What the same words said before under the same header: a long schedule says few things, each of
 * them thousands of times.
 */
final class CellMemo {
  private final Map<Header.Column, Map<String, List<Statement>>> known = new IdentityHashMap<>();

  /** The statements of a cell, at its own place. */
  List<Statement> of(
      Header.Column column, String text, Origin origin, Supplier<List<Statement>> reading) {
    Map<String, List<Statement>> said = known.computeIfAbsent(column, c -> new Recent<>());
    List<Statement> before = said.get(text);
    if (before == null) {
      List<Statement> read = List.copyOf(reading.get());
      said.put(text, read);
      return read;
    }
    return before.stream().map(s -> s.at(origin)).toList();
  }
}
