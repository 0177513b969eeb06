package clearbed.resolve.entry;

import clearbed.model.value.Content;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.statement.limit.TermReader;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * "Class R2 reaches 2.0 N/mm² in shear": what is said of a class of adhesive or grout is said of
 * the tiles that are set or filled with it.
 */
public final class OfClass {
  private static final String MORTAR = "mortar";
  private static final String CHEMISTRY = "mortar.chemistry";
  private static final List<String> FAMILIES = List.of(MORTAR, "grout");
  private static final String CLASS = ".isoClass";

  private final TermReader terms;

  public OfClass(Vocabulary vocabulary) {
    this.terms = new TermReader(vocabulary);
  }

  /** True of a statement that says which class the adhesive or the grout is of. */
  public static boolean tellsClass(Statement s) {
    return s.attribute().equals(CHEMISTRY)
        || FAMILIES.stream().anyMatch(family -> s.attribute().equals(family + CLASS));
  }

  /**
   * True where the words name classes, the tile has one of its own, and it is none of them; or
   * where words on no tile by its mark are of a class, as the tile's own governs.
   *
   * @param byMark true when the words name the tile
   */
  public boolean isAnother(Statement s, Draft draft, boolean byMark) {
    for (String family : FAMILIES) {
      if (!s.attribute().startsWith(family + ".")) continue;
      String attribute = family + CLASS;
      Set<String> own = draft.terms(attribute);
      if (own.isEmpty()) return false;
      if (s.attribute().equals(attribute)) return !byMark;
      if (s.attribute().equals(CHEMISTRY) && s.content() instanceof Content.Term term)
        return !byMark && !s.excluded() && !chemistry(own).contains(term.text());
      if (!(s.content() instanceof Content.Amount)) return false;
      Set<String> named = terms.in(attribute, s.asWritten());
      if (named.isEmpty() && family.equals(MORTAR)) {
        named = terms.in(CHEMISTRY, s.asWritten());
        own = chemistry(own);
      }
      return !named.isEmpty() && Collections.disjoint(own, named);
    }
    return false;
  }

  /** "Reaction-resin adhesive, shear 2,0 N/mm2" is not of what is set with C2. */
  private static Set<String> chemistry(Set<String> classes) {
    Set<String> out = new HashSet<>();
    for (String one : classes)
      out.add(one.startsWith("C") ? "cement" : one.startsWith("D") ? "organic" : "epoxy");
    return out;
  }
}
