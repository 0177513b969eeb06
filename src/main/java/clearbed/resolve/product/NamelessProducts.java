package clearbed.resolve.product;

import clearbed.recognise.Facts;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.entry.Draft;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Glass tile that a set specifies and gives no tag. */
final class NamelessProducts {
  private static final String NAMELESS = "Glass tile";

  /** A title over fewer statements on the tile itself opens no product of its own. */
  private static final int PRODUCT = 2;

  private final Vocabulary vocabulary;
  private final ProductArticles articles;
  private final Map<String, Draft> drafts;
  private final Map<Clause, String> owned = new IdentityHashMap<>();

  NamelessProducts(Vocabulary vocabulary, ProductArticles articles, Map<String, Draft> drafts) {
    this.vocabulary = vocabulary;
    this.articles = articles;
    this.drafts = drafts;
  }

  /** Keys of the tiles, by the clauses that speak of them and of no other. */
  Map<Clause, String> owned() {
    return owned;
  }

  /**
   * Glass tile without tag or schedule: each product article that is titled after one is an entry,
   * else the first clause that specifies some, else the section that is titled after it.
   */
  void add(List<Facts> facts) {
    List<Section> sections =
        facts.stream()
            .flatMap(f -> f.sections().stream())
            .filter(section -> !section.notes())
            .toList();
    Map<String, List<Clause>> products = new LinkedHashMap<>();
    for (Section section : sections) gather(section, products);
    if (products.size() > 1) {
      products.forEach(this::titled);
      return;
    }
    for (Section section : sections) {
      for (Clause clause : section.clauses()) {
        if (!articles.mayBeProduct(section, clause)
            || !vocabulary.glass().speaksOfTile(ProductArticles.opening(clause))) continue;
        if (articles.areGlass(clause.text())) {
          add(NAMELESS, clause.text(), clause).asGlass.add(clause);
          return;
        }
      }
    }
    sections.stream()
        .filter(s -> s.article() && states(s) && articles.isGlassTitle(s.title()))
        .findFirst()
        .ifPresent(s -> add(NAMELESS, s.title(), s.clauses().get(0)));
  }

  private static boolean states(Section section) {
    return section.clauses().stream().anyMatch(c -> !c.statements().isEmpty());
  }

  private void gather(Section section, Map<String, List<Clause>> products) {
    Map<String, List<Clause>> byTitle = new LinkedHashMap<>();
    for (Clause clause : section.clauses()) {
      if (articles.mayBeProduct(section, clause) && articles.isGlassTitle(clause.heading()))
        byTitle.computeIfAbsent(clause.heading(), title -> new ArrayList<>()).add(clause);
    }
    byTitle.forEach(
        (title, clauses) -> {
          long own =
              clauses.stream()
                  .flatMap(c -> c.statements().stream())
                  .filter(s -> s.attribute().startsWith("tile."))
                  .count();
          if (own >= PRODUCT)
            products.computeIfAbsent(title, any -> new ArrayList<>()).addAll(clauses);
        });
  }

  private void titled(String title, List<Clause> clauses) {
    String name = title.charAt(0) + title.substring(1).toLowerCase(Locale.ROOT);
    Draft draft = add(name.strip(), title, clauses.get(0));
    clauses.forEach(clause -> owned.put(clause, draft.key));
    draft.about.addAll(clauses);
  }

  private Draft add(String tag, String evidence, Clause clause) {
    Draft draft = Draft.specified(tag, evidence, clause);
    drafts.put(draft.key, draft);
    return draft;
  }
}
