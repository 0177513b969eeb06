package clearbed.check;

import clearbed.base.Memo;
import clearbed.model.Finding;
import clearbed.model.Kind;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import clearbed.recognise.Clause;
import clearbed.recognise.Section;
import clearbed.recognise.TileWords;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A section or article that the words send the reader to is not in the set. */
final class DanglingReferenceCheck implements SetComputation {
  private static final Pattern SECTION =
      Pattern.compile("\\b[Ss]ections?\\s+(\\d{2} ?\\d{2} ?\\d{2})\\b");
  private static final Pattern ARTICLE =
      Pattern.compile("\\b(?:[Aa]rticle|[Pp]aragraph|[Cc]lause)s?\\s+(\\d\\.\\d{1,2})\\b");

  // "Detail 9/A-990", "3 on sheet A-402"
  private static final Pattern DETAIL =
      Pattern.compile(
          "\\b[Dd](?:etail|ETAIL)s?\\s+(\\d{1,3}[A-Z]?)\\s*(?:/|on (?:sheet |drawing )?)\\s*([A-Z]{1,2}[-.]?\\d{1,4}(?:\\.\\d{1,3})?)\\b");

  /**
   * What a text refers to; most refer to nothing.
   *
   * @param details as written, with the sheet each stands on
   */
  private record References(
      List<String> sections, Map<String, String> details, List<String> articles) {
    static References in(String text) {
      List<String> sections = new ArrayList<>();
      Matcher m = SECTION.matcher(text);
      while (m.find()) {
        sections.add(m.group(1).replaceAll("(\\d{2}) ?(\\d{2}) ?(\\d{2})", "$1 $2 $3"));
      }
      Map<String, String> details = new LinkedHashMap<>();
      m = DETAIL.matcher(text);
      while (m.find()) details.put(m.group(), m.group(2).toUpperCase(Locale.ROOT));
      List<String> articles = new ArrayList<>();
      m = ARTICLE.matcher(text);
      while (m.find()) articles.add(m.group(1));
      return new References(sections, details, articles);
    }
  }

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    Map<String, Finding> out = new LinkedHashMap<>();
    if (scene.project().glass().isEmpty()) return List.of();
    Set<String> numbers =
        scene.project().sections().stream().map(Section::number).collect(Collectors.toSet());
    // Issue after issue says the same words.
    Memo<String, References> known = Memo.ofTexts();
    for (Section section : scene.project().sections()) {
      Set<String> articles = null;
      for (Clause clause : section.clauses()) {
        if (!section.article() && !bears(section, clause)) continue;
        String text = clause.text();
        References references = known.get(text, () -> References.in(text));
        for (String number : references.sections()) {
          if (!numbers.contains(number))
            out.putIfAbsent(
                number, finding(rule, scene, "", section, "section " + number, clause.origin()));
        }
        references
            .details()
            .forEach(
                (words, sheet) -> {
                  if (!onSheet(scene, sheet))
                    out.putIfAbsent(
                        words, finding(rule, scene, "", section, words.trim(), clause.origin()));
                });
        for (String article : references.articles()) {
          if (articles == null) articles = articles(section);
          if (!articles.contains(article) && articles.size() > 3)
            out.putIfAbsent(
                section.name() + article,
                finding(
                    rule, scene, section.name(), section, "article " + article, clause.origin()));
        }
      }
    }
    return new ArrayList<>(out.values());
  }

  /** Outside tile sections only what speaks of glass tile bears on it. */
  private static boolean bears(Section section, Clause clause) {
    return clause.limits().glass() || section.notes() && TileWords.tile(clause.text());
  }

  private static Set<String> articles(Section section) {
    return section.clauses().stream()
        .map(c -> c.number().split(" ")[0])
        .collect(Collectors.toSet());
  }

  /** Drawing sheets are known by the name of their file, sheet or title. */
  private static boolean onSheet(Scene scene, String sheet) {
    Pattern named =
        Pattern.compile(
            "(?<![A-Z0-9])" + Pattern.quote(sheet).replace("-", "\\E[-. ]?\\Q") + "(?![0-9])",
            Pattern.CASE_INSENSITIVE);
    return scene.documents().stream()
        .anyMatch(
            d ->
                named.matcher(d.path()).find()
                    || d.blocks().stream()
                        .anyMatch(
                            b ->
                                b instanceof Paragraph p
                                    && p.text().length() < 60
                                    && !DETAIL.matcher(p.text()).find()
                                    && named.matcher(p.text()).find()));
  }

  /**
   * @param whose section an article belongs to; empty for a section, which several may refer to
   */
  private static Finding finding(
      Rule rule, Scene scene, String whose, Section section, String what, Origin origin) {
    String message = capital(section.name()) + " refers to " + what + ", which is not in the set.";
    return scene
        .writer()
        .write(
            rule,
            new FindingWriter.Case(
                whose + " " + what,
                "",
                Kind.MISSING,
                rule.level(),
                List.of(),
                origin,
                List.of(),
                message,
                what,
                "in the set",
                List.of()));
  }

  private static String capital(String text) {
    return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }
}
