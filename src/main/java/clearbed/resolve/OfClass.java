package clearbed.resolve;

import clearbed.model.Content;
import clearbed.model.Value;
import clearbed.recognise.statement.Statement;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Phrases;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * "Class R2 reaches 2.0 N/mm² in shear": what is said of a class of adhesive or grout is said of
 * the tiles that are set or filled with it.
 */
final class OfClass {
  private static final List<String> FAMILIES = List.of("mortar", "grout");
  private static final String CLASS = ".isoClass";

  private final Vocabulary vocabulary;

  OfClass(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * True where the words name classes, the tile has one of its own, and it is none of them; or
   * where words on no tile by its mark are of a class, as the tile's own governs.
   *
   * @param byMark true when the words name the tile
   */
  boolean isAnother(Statement s, Draft draft, boolean byMark) {
    for (String family : FAMILIES) {
      if (!s.attribute().startsWith(family + ".")) continue;
      if (s.attribute().equals(family + CLASS)) return !byMark && !own(family, draft).isEmpty();
      if (!(s.content() instanceof Content.Amount)) return false;
      Set<String> named = named(family, s.asWritten());
      if (named.isEmpty()) return false;
      Set<String> own = own(family, draft);
      return !own.isEmpty() && own.stream().noneMatch(named::contains);
    }
    return false;
  }

  private Set<String> named(String family, String words) {
    Set<String> out = new HashSet<>();
    Attribute attribute = vocabulary.attribute(family + CLASS).orElse(null);
    if (attribute == null) return out;
    String text = PlainText.of(words);
    for (Map.Entry<String, Phrases> term : attribute.words().terms().entrySet())
      if (term.getValue().in(text)) out.add(term.getKey());
    return out;
  }

  private static Set<String> own(String family, Draft draft) {
    Set<String> out = new HashSet<>();
    for (Value v : draft.values)
      if (v.attribute().equals(family + CLASS) && v.content() instanceof Content.Term term)
        out.add(term.text());
    return out;
  }
}
