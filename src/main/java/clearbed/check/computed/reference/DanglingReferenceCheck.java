package clearbed.check.computed.reference;

import clearbed.base.Memo;
import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.SetComputation;
import clearbed.check.judge.Subjects;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Rule;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.ClauseNumbers;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A section or article that the words send the reader to is not in the set. */
public final class DanglingReferenceCheck implements SetComputation {

  private static final Pattern FIGURE = Pattern.compile("\\d");
  private static final Pattern NUMBERED = Pattern.compile("\\d{2} \\d{2} \\d{2}.*");

  /** Sections on tile work have numbers that begin so. */
  private static final String OF_TILE = "09 3";

  private static final Pattern DIGITS = Pattern.compile("\\d+");

  /** A section of no more articles may well be an extract. */
  private static final int FEW = 3;

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    if (scene.project().glass().isEmpty()) return List.of();
    Map<String, Finding> out = new LinkedHashMap<>();
    Vocabulary vocabulary = scene.vocabulary();
    Search search = new Search(rule, scene, out);
    Set<String> glass = scene.project().glassKeys();
    for (Section section : scene.project().sections()) {
      CountedLabels notes = CountedLabels.of(section);
      for (Clause clause : section.clauses()) {
        boolean bears = bears(section, clause, glass, vocabulary);
        // All of an answer: whatever was asked, the clause is one of the set.
        if (!bears && !vocabulary.list("checks.callAlone").matches(clause.text().strip())) continue;
        search.words(section.name(), clause.text(), clause.origin(), clause.listed());
        if (!bears) continue;
        search.articles(section, clause);
        for (String note : notes.missedIn(clause))
          search.missing(section.name(), "note " + note, clause.origin());
      }
    }
    scene
        .text()
        .each(
            (text, cell) -> FIGURE.matcher(text).find(),
            piece ->
                search.words(
                    Subjects.document(piece.origin()), piece.text(), piece.origin(), false));
    return new ArrayList<>(out.values());
  }

  /** Looks in one set for what its words refer to. */
  private static final class Search {
    private final Rule rule;
    private final Scene scene;
    private final Map<String, Finding> out;
    private final Set<String> numbers;

    // A tile section by itself refers to those of other trades that its reader does not hold.
    private final boolean several;

    // Issue after issue says the same words; all but articles are asked of the set as a whole.
    private final Memo<String, References> known = Memo.ofTexts();
    private final Set<String> referring = new HashSet<>();
    private OpenReferences open;
    private LabelledNumbers labelled;
    private LetteredParts parts;
    private Set<String> coded;

    Search(Rule rule, Scene scene, Map<String, Finding> out) {
      this.rule = rule;
      this.scene = scene;
      this.out = out;
      this.numbers =
          scene.project().sections().stream().map(Section::number).collect(Collectors.toSet());
      this.several = numbers.stream().filter(n -> NUMBERED.matcher(n).matches()).count() > 1;
    }

    /**
     * @param whose words they are
     * @param listed true in a list of related work
     */
    void words(String whose, String text, Origin origin, boolean listed) {
      References references = known.get(text, () -> References.in(text, scene.vocabulary()));
      Set<String> clauses = ClauseNumbers.in(text);
      if (LetteredParts.mayBeIn(text, scene.vocabulary())) lettered(whose, text, origin);
      if (references.isNothing() && clauses.isEmpty() || !referring.add(text)) return;
      references
          .sections()
          .forEach(
              (number, opens) -> {
                if (numbers.contains(number)) return;
                boolean asks = !opens && !listed && !isDraft(text);
                boolean missed = isMissed(number, numbers, several || asks);
                Level level = missed ? rule.level() : Level.NOTE;
                out.putIfAbsent(number, finding(level, "", whose, "section " + number, origin));
              });
      references
          .details()
          .forEach(
              (words, detail) -> {
                if (!Sheets.show(scene, detail)) missing(whose, words.trim(), origin);
              });
      references.others().forEach((words, key) -> counted(whose, words, key, origin));
      references.loose().forEach((words, key) -> counted(whose, words, key, origin));
      for (String number : clauses) {
        if (coded == null) coded = coded(scene);
        boolean alike =
            coded.stream().map(ClauseNumbers::code).anyMatch(ClauseNumbers.code(number)::equals);
        if (alike && !coded.contains(number)) missing(whose, "clause " + number, origin);
      }
    }

    private void lettered(String whose, String text, Origin origin) {
      if (parts == null) parts = new LetteredParts(scene);
      for (String part : parts.missedIn(text))
        out.putIfAbsent(part, finding(rule.level(), "", whose, part, origin));
    }

    /** What whoever edits a guide still has to choose or strike asks for nothing yet. */
    private boolean isDraft(String text) {
      return scene.vocabulary().list("checks.drafting").startsAt(text, 0)
          || scene.vocabulary().list("open").in(text);
    }

    private void counted(String whose, String words, String key, Origin origin) {
      if (open == null)
        open = new OpenReferences(scene.project(), scene.documents(), scene.vocabulary());
      if (labelled == null) labelled = new LabelledNumbers(scene.project(), scene.vocabulary());
      if (open.isMissed(key) || labelled.isBeyond(words)) missing(whose, words, origin);
    }

    void missing(String whose, String what, Origin origin) {
      // "clause M41/790" and "M41/790" are one.
      String number = what.substring(what.lastIndexOf(' ') + 1);
      out.putIfAbsent(number, finding(rule.level(), "", whose, what, origin));
    }

    void articles(Section section, Clause clause) {
      Set<String> articles = null;
      String text = clause.text();
      for (String article :
          known.get(text, () -> References.in(text, scene.vocabulary())).articles()) {
        if (articles == null) articles = DanglingReferenceCheck.articles(section);
        if (articles.contains(article) || alike(articles, article) <= FEW) continue;
        String name = section.name();
        out.putIfAbsent(
            name + article,
            finding(rule.level(), name, name, "article " + article, clause.origin()));
      }
    }

    /**
     * @param subject section an article belongs to; empty for a section, which several may refer to
     * @param whose words refer to it
     */
    private Finding finding(Level level, String subject, String whose, String what, Origin origin) {
      String message = capital(whose) + " refers to " + what + ", which is not in the set.";
      return scene
          .writer()
          .write(
              rule,
              new FindingWriter.Case(
                  subject + " " + what,
                  "",
                  FindingKind.MISSING,
                  level,
                  List.of(),
                  FoundAt.at(origin),
                  FindingWords.of(message, what, "in the set")));
    }
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

  /** So do notes on movement joints, and those that name one of its marks. */
  static boolean bears(Section section, Clause clause, Set<String> glass, Vocabulary vocabulary) {
    if (bears(section, clause)) return true;
    if (!section.notes() || clause.limits().otherTileOnly()) return false;
    String text = clause.text();
    return vocabulary.list("checks.ofTileWork").in(text)
        || FIGURE.matcher(text).find()
            && TagFinder.tags(PlainText.of(text)).stream().map(Tags::key).anyMatch(glass::contains);
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

  private static String capital(String text) {
    return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }
}
