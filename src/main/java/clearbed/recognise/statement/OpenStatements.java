package clearbed.recognise.statement;

import clearbed.model.value.Content;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.statement.part.Context;
import clearbed.recognise.statement.part.Passage;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.List;

/** What a text leaves open, and of which attribute. */
final class OpenStatements {
  /** A property word this close to the open place names what belongs there, in characters. */
  private static final int NEAR = 8;

  private final Vocabulary vocabulary;
  private final OpenItems items;
  private final StatementFinder inner;

  OpenStatements(Vocabulary vocabulary, OpenItems items, StatementFinder inner) {
    this.vocabulary = vocabulary;
    this.items = items;
    this.inner = inner;
  }

  void addTo(Passage p) {
    for (OpenItems.OpenItem open : items.find(p.whole)) {
      String id = p.context.attribute().isEmpty() ? attributeOf(p, open) : p.context.attribute();
      Attribute attribute = vocabulary.attribute(id).orElse(null);
      if (attribute != null)
        p.add(attribute, new Content.Open(open.text()), false, open.start(), open.end());
      else p.addOpen(open.text(), open.start(), open.end());
    }
  }

  /** Words of a choice tell its attribute where what stands around them is of its family. */
  private boolean tells(Statement s, String around) {
    return vocabulary
        .attribute(s.attribute())
        .filter(a -> a.kind() == Attribute.Kind.STANDARD || a.family().equals(around))
        .isPresent();
  }

  private String attributeOf(Passage p, OpenItems.OpenItem open) {
    Context inside =
        Context.running(p.familyNear(open.start(), open.end()), p.context.families(), true)
            .with(p.context.mark());
    boolean words = open.inner().chars().anyMatch(Character::isLetter);
    for (Statement s :
        words ? inner.find(open.inner(), p.origin(), inside) : List.<Statement>of()) {
      if (tells(s, inside.family())) return s.attribute();
    }
    String best = "";
    int distance = Integer.MAX_VALUE;
    for (Attribute a : vocabulary.attributes()) {
      if (!p.context.mayStateFamily(a.family())
          || a.kind() == Attribute.Kind.WORDS
          || a.kind() == Attribute.Kind.SIZE
          || a.id().startsWith("location.")) continue;
      for (Phrases phrases : List.of(a.words().cues(), a.words().headers())) {
        for (Phrases.Hit hit : phrases.all(p.whole)) {
          boolean far = hit.distanceTo(open.start(), open.end()) > NEAR;
          if (far && hit.end() > p.leadEnd) continue;
          int d =
              hit.distanceTo(open.start(), open.end()) * 4
                  - (hit.end() - hit.start())
                  + p.familyPenalty(a, open.start(), open.end());
          if (d < distance) {
            distance = d;
            best = a.id();
          }
        }
      }
    }
    return best;
  }
}
