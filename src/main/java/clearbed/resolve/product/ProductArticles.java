package clearbed.resolve.product;

import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.part.GlassWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.Set;

/** Tells clauses that describe products, and titles that are after glass tile. */
final class ProductArticles {
  private static final int OPENING = 120;

  private final Vocabulary vocabulary;
  private final GlassWords glassWords;

  ProductArticles(Vocabulary vocabulary, GlassWords glassWords) {
    this.vocabulary = vocabulary;
    this.glassWords = glassWords;
  }

  boolean isElsewhere(Clause clause) {
    return clause.listsReferences() || vocabulary.list("clause.otherWork").in(clause.text());
  }

  /** True of words on glass and on no other tile. */
  boolean areGlass(String text) {
    return glassWords.areIn(text);
  }

  boolean mayBeProduct(Section section, Clause clause) {
    boolean product =
        clause.number().startsWith("2.") || section.article() && !clause.number().contains(".");
    return product && !isElsewhere(clause);
  }

  boolean isGlassTitle(String title) {
    return vocabulary.glass().describesTile(title)
        && glassWords.areIn(title)
        && Set.of("", "tile").contains(vocabulary.family(title));
  }

  static String opening(Clause clause) {
    String text = clause.text();
    return text.length() > OPENING ? text.substring(0, OPENING) : text;
  }
}
