package clearbed.recognise;

import clearbed.model.Content;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Two figures for two places in one sentence: each goes with the place nearest to it. */
final class FigurePlaces {
  private final LimitFinder limitFinder;

  FigurePlaces(LimitFinder limitFinder) {
    this.limitFinder = limitFinder;
  }

  void spread(List<Statement> out, int from, Passage p) {
    Map<Integer, String> mentions = limitFinder.exposureMentions(p.text);
    if (mentions.size() < 2) return;
    for (int i = from; i < out.size(); i++) {
      Statement s = out.get(i);
      long twins =
          out.subList(from, out.size()).stream()
              .filter(o -> o.attribute().equals(s.attribute()))
              .count();
      if (twins < 2 || !(s.content() instanceof Content.Amount amount)) continue;
      out.set(i, s.withLimits(at(p, s.limits(), mentions, amount)));
    }
  }

  private static Limits at(
      Passage p, Limits l, Map<Integer, String> mentions, Content.Amount amount) {
    int offset = offsetOf(p, amount);
    int next = nextAmountAfter(p, offset);
    Set<String> places = new TreeSet<>();
    mentions.forEach(
        (at, term) -> {
          if (at > offset && at < next) places.add(term);
        });
    if (places.isEmpty()) {
      mentions.entrySet().stream()
          .filter(e -> e.getKey() < offset)
          .max(Map.Entry.comparingByKey())
          .ifPresent(e -> places.add(e.getValue()));
    }
    return places.isEmpty() ? l : l.withExposures(places);
  }

  private static int offsetOf(Passage p, Content.Amount amount) {
    return Quantities.find(p.text, p.context.mark()).stream()
        .filter(
            f ->
                f.content() instanceof Content.Amount a
                    && a.low().number() == amount.low().number())
        .mapToInt(Quantities.Found::start)
        .findFirst()
        .orElse(0);
  }

  private static int nextAmountAfter(Passage p, int offset) {
    return Quantities.find(p.text, p.context.mark()).stream()
        .filter(f -> !f.restates())
        .mapToInt(Quantities.Found::start)
        .filter(s -> s > offset)
        .min()
        .orElse(Integer.MAX_VALUE);
  }
}
