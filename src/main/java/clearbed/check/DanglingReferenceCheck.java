package clearbed.check;

import clearbed.model.Finding;
import clearbed.model.Kind;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import clearbed.recognise.Clause;
import clearbed.recognise.Section;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
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

  private static final Pattern TILE =
      Pattern.compile("\\b(?:tiles?|mosaics?|tiling)\\b", Pattern.CASE_INSENSITIVE);

  // "Detail 9/A-990", "3 on sheet A-402"
  private static final Pattern DETAIL =
      Pattern.compile(
          "\\b[Dd](?:etail|ETAIL)s?\\s+(\\d{1,3}[A-Z]?)\\s*(?:/|on (?:sheet |drawing )?)\\s*([A-Z]{1,2}[-.]?\\d{1,4}(?:\\.\\d{1,3})?)\\b");

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    Map<String, Finding> out = new LinkedHashMap<>();
    if (scene.project().glass().isEmpty()) return List.of();
    Set<String> numbers =
        scene.project().sections().stream().map(Section::number).collect(Collectors.toSet());
    for (Section section : scene.project().sections()) {
      Set<String> articles =
          section.clauses().stream().map(c -> c.number().split(" ")[0]).collect(Collectors.toSet());
      for (Clause clause : section.clauses()) {
        if (!section.article() && !bears(section, clause)) continue;
        Matcher m = SECTION.matcher(clause.text());
        while (m.find()) {
          String number = m.group(1).replaceAll("(\\d{2}) ?(\\d{2}) ?(\\d{2})", "$1 $2 $3");
          if (!numbers.contains(number))
            out.putIfAbsent(
                number, finding(rule, scene, "", section, "section " + number, clause.origin()));
        }
        m = DETAIL.matcher(clause.text());
        while (m.find()) {
          String sheet = m.group(2).toUpperCase(java.util.Locale.ROOT);
          if (!onSheet(scene, sheet))
            out.putIfAbsent(
                m.group(), finding(rule, scene, "", section, m.group().trim(), clause.origin()));
        }
        m = ARTICLE.matcher(clause.text());
        while (m.find()) {
          if (!articles.contains(m.group(1)) && articles.size() > 3)
            out.putIfAbsent(
                section.name() + m.group(1),
                finding(
                    rule,
                    scene,
                    section.name(),
                    section,
                    "article " + m.group(1),
                    clause.origin()));
        }
      }
    }
    return new ArrayList<>(out.values());
  }

  /** Outside tile sections only what speaks of glass tile bears on it. */
  private static boolean bears(Section section, Clause clause) {
    return clause.limits().glass() || section.notes() && TILE.matcher(clause.text()).find();
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
