package clearbed.check.computed;

import clearbed.base.Memo;
import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.SetComputation;
import clearbed.check.rules.Rule;
import clearbed.model.Finding;
import clearbed.model.Kind;
import clearbed.model.Level;
import clearbed.model.Origin;
import clearbed.recognise.section.Clause;
import clearbed.recognise.section.Section;
import clearbed.recognise.statement.ClauseNumbers;
import clearbed.recognise.vocabulary.TileWords;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A section or article that the words send the reader to is not in the set. */
public final class DanglingReferenceCheck implements SetComputation {
  private static final int LONGEST_TITLE = 60;
  private static final Pattern NUMBERED = Pattern.compile("\\d{2} \\d{2} \\d{2}.*");

  /** Sections on tile work have numbers that begin so. */
  private static final String OF_TILE = "09 3";

  private static final Pattern DIGITS = Pattern.compile("\\d+");

  /** A section of no more articles may well be an extract. */
  private static final int FEW = 3;

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    Map<String, Finding> out = new LinkedHashMap<>();
    if (scene.project().glass().isEmpty()) return List.of();
    Set<String> numbers =
        scene.project().sections().stream().map(Section::number).collect(Collectors.toSet());
    // A tile section by itself refers to those of other trades that its reader does not hold.
    long numbered = numbers.stream().filter(n -> NUMBERED.matcher(n).matches()).count();
    // Issue after issue says the same words.
    Memo<String, References> known = Memo.ofTexts();
    OpenReferences open = null;
    Set<String> coded = null;
    for (Section section : scene.project().sections()) {
      Set<String> articles = null;
      CountedLabels notes = CountedLabels.of(section);
      for (Clause clause : section.clauses()) {
        if (!bears(section, clause)) continue;
        String text = clause.text();
        References references = known.get(text, () -> References.in(text));
        for (String number : references.sections()) {
          if (!numbers.contains(number))
            out.putIfAbsent(
                number,
                finding(
                    rule,
                    isMissed(number, numbers, numbered > 1) ? rule.level() : Level.NOTE,
                    scene,
                    "",
                    section,
                    "section " + number,
                    clause.origin()));
        }
        references
            .details()
            .forEach(
                (words, sheet) -> {
                  if (!onSheet(scene, sheet))
                    out.putIfAbsent(
                        words, finding(rule, scene, "", section, words.trim(), clause.origin()));
                });
        for (Map.Entry<String, String> other : references.others().entrySet()) {
          if (open == null) open = new OpenReferences(scene.project(), scene.documents());
          if (open.isMissed(other.getValue()))
            out.putIfAbsent(
                other.getKey(), finding(rule, scene, "", section, other.getKey(), clause.origin()));
        }
        for (String number : ClauseNumbers.in(text)) {
          if (coded == null) coded = coded(scene);
          if (!coded.contains(number)
              && coded.stream()
                  .map(ClauseNumbers::code)
                  .anyMatch(ClauseNumbers.code(number)::equals))
            out.putIfAbsent(
                number, finding(rule, scene, "", section, "clause " + number, clause.origin()));
        }
        for (String note : notes.missedIn(clause))
          out.putIfAbsent(note, finding(rule, scene, "", section, "note " + note, clause.origin()));
        for (String article : references.articles()) {
          if (articles == null) articles = articles(section);
          if (!articles.contains(article) && alike(articles, article) > FEW)
            out.putIfAbsent(
                section.name() + article,
                finding(
                    rule, scene, section.name(), section, "article " + article, clause.origin()));
        }
      }
    }
    return new ArrayList<>(out.values());
  }

  /**
   * Sections of other trades are missed only beside some; those on procedures, which every section
   * names, only beside others of their own division.
   */
  private static boolean isMissed(String number, Set<String> numbers, boolean several) {
    if (number.startsWith("00 ") || number.startsWith("01 "))
      return numbers.stream().anyMatch(n -> n.startsWith("00 ") || n.startsWith("01 "));
    return several || number.startsWith(OF_TILE);
  }

  /** Outside tile sections only what speaks of glass tile bears on it. */
  static boolean bears(Section section, Clause clause) {
    return section.article()
        || clause.limits().glass()
        || section.notes() && TileWords.tile(clause.text());
  }

  /** Numbers of clauses below the codes of work sections, of the whole set. */
  private static Set<String> coded(Scene scene) {
    return scene.project().sections().stream()
        .flatMap(s -> s.clauses().stream())
        .map(Clause::article)
        .filter(ClauseNumbers::isOne)
        .collect(Collectors.toSet());
  }

  /** A supplement that numbers its own articles S2.4 calls 2.4 in what it supplements. */
  private static long alike(Set<String> articles, String called) {
    String form = DIGITS.matcher(called).replaceAll("1");
    return articles.stream()
        .filter(a -> DIGITS.matcher(a).replaceAll("1").startsWith(form))
        .count();
  }

  private static Set<String> articles(Section section) {
    return section.clauses().stream().map(Clause::article).collect(Collectors.toSet());
  }

  /** Drawing sheets are known by the name of their file, sheet or title. */
  private static boolean onSheet(Scene scene, String sheet) {
    Pattern named =
        Pattern.compile(
            "(?<![A-Z0-9])" + Pattern.quote(sheet).replace("-", "\\E[-. ]?\\Q") + "(?![0-9])",
            Pattern.CASE_INSENSITIVE);
    return scene.documents().stream().anyMatch(d -> named.matcher(d.path()).find())
        || scene.project().sections().stream()
            .anyMatch(
                s ->
                    named.matcher(s.title()).find()
                        || s.clauses().stream().anyMatch(c -> titled(named, c.text())));
  }

  private static boolean titled(Pattern named, String text) {
    return text.length() < LONGEST_TITLE
        && References.in(text).details().isEmpty()
        && named.matcher(text).find();
  }

  /**
   * @param whose section an article belongs to; empty for a section, which several may refer to
   */
  private static Finding finding(
      Rule rule, Scene scene, String whose, Section section, String what, Origin origin) {
    return finding(rule, rule.level(), scene, whose, section, what, origin);
  }

  private static Finding finding(
      Rule rule,
      Level level,
      Scene scene,
      String whose,
      Section section,
      String what,
      Origin origin) {
    String message = capital(section.name()) + " refers to " + what + ", which is not in the set.";
    return scene
        .writer()
        .write(
            rule,
            new FindingWriter.Case(
                whose + " " + what,
                "",
                Kind.MISSING,
                level,
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
