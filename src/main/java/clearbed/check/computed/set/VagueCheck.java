package clearbed.check.computed.set;

import clearbed.base.Memo;
import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.SetComputation;
import clearbed.check.judge.SetText;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Rule;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.BiFunction;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** "Suitable", "approved" or "as required" stands where a requirement belongs. */
public final class VagueCheck implements SetComputation {
  /** Behind a whole word a stop ends what is said, though a small letter follows. */
  private static final Pattern ITEM = Pattern.compile("(?:;|(?<=[a-z]{5})\\.)\\s+");

  /** What may stand between a vague word and the thing that it says nothing of. */
  private static final Pattern BETWEEN = Pattern.compile("\\s+(?:[\\w-]+\\s+){0,2}");

  /** From a thing to the words that leave it to somebody, in characters. */
  private static final int NEAR = 40;

  private static final Pattern ENDED = Pattern.compile("\\s*\\.?\\s*");

  private static final Pattern STOPS = Pattern.compile("[.;:]");

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    List<Finding> out = new ArrayList<>();
    // Issue after issue says the same words.
    Memo<String, String> cells = Memo.ofTexts();
    Memo<String, String> clauses = Memo.ofTexts();
    BiFunction<String, Boolean, String> vague =
        (text, cell) ->
            cell
                ? cells.get(text, () -> ofCell(text, scene.vocabulary()))
                : clauses.get(text, () -> ofClause(text, scene.vocabulary()));
    scene
        .text()
        .each(
            (text, cell) -> !vague.apply(text, cell).isEmpty(),
            piece -> {
              String words = vague.apply(piece.text(), piece.origin().cell() != null);
              out.add(finding(rule, scene, piece, words));
            });
    return out;
  }

  private static String ofCell(String text, Vocabulary vocabulary) {
    String cell = text.trim();
    return isVague(cell, vocabulary) ? cell : ofClause(text, vocabulary);
  }

  /** "As approved.", "standard grout": the heading of the column says what is wanted, no more. */
  private static boolean isVague(String cell, Vocabulary vocabulary) {
    String words = cell.endsWith(".") ? cell.substring(0, cell.length() - 1) : cell;
    return Stream.of("words", "left", "alone")
        .flatMap(list -> vocabulary.list("vague." + list).all(words).stream())
        .filter(hit -> hit.start() == 0)
        .map(hit -> words.substring(hit.end()))
        .anyMatch(rest -> rest.isEmpty() || vocabulary.list("vague.ofCells").matches(rest.strip()));
  }

  private static String ofClause(String text, Vocabulary vocabulary) {
    // What is reasonably flat may be measured by the sentence behind.
    Phrases.Hit degree = vocabulary.list("vague.degree").first(text);
    if (degree != null && !exact(text, vocabulary))
      return text.substring(degree.start(), degree.end());
    boolean may =
        vocabulary.list("vague.words").mayBeIn(text) || vocabulary.list("vague.left").mayBeIn(text);
    if (!may) return "";
    for (Sentences.Sentence sentence : Sentences.of(text)) {
      for (String item : ITEM.split(sentence.text())) {
        String words = ofItem(item, vocabulary);
        if (!words.isEmpty() && !exact(item, vocabulary)) return words;
      }
    }
    return "";
  }

  /** "A suitable mortar", "primer as required"; of several the first. */
  private static String ofItem(String item, Vocabulary vocabulary) {
    List<Phrases.Hit> things = vocabulary.list("vague.things").all(item);
    if (things.isEmpty()) return "";
    List<Phrases.Hit> left = vocabulary.list("vague.left").all(item);
    Stream<Phrases.Hit> before =
        vocabulary.list("vague.words").all(item).stream()
            .map(
                word ->
                    reaching(word, things, between -> BETWEEN.matcher(between).matches(), item));
    Stream<Phrases.Hit> behind =
        things.stream()
            .map(
                thing ->
                    reaching(
                        thing,
                        left,
                        between -> between.length() <= NEAR && !STOPS.matcher(between).find(),
                        item));
    Stream<Phrases.Hit> wanted =
        vocabulary.list("vague.words").all(item).stream()
            .filter(word -> isWanted(word, item, vocabulary));
    return Stream.concat(Stream.concat(before, behind), wanted)
        .filter(Objects::nonNull)
        .min(Comparator.comparingInt(Phrases.Hit::start))
        .map(hit -> item.substring(hit.start(), hit.end()))
        .orElse("");
  }

  /** "Lippage shall be suitable." wants nothing that could be measured. */
  private static boolean isWanted(Phrases.Hit word, String item, Vocabulary vocabulary) {
    return vocabulary.list("checks.shallBe").in(item.substring(0, word.start()))
        && ENDED.matcher(item).region(word.end(), item.length()).matches()
        && !vocabulary.list("checks.condition").in(item);
  }

  /** From a hit to the last of others that what stands between lets it reach, or null. */
  private static Phrases.Hit reaching(
      Phrases.Hit from, List<Phrases.Hit> others, Predicate<String> may, String item) {
    Phrases.Hit out = null;
    for (Phrases.Hit to : others) {
      if (to.start() < from.end()) continue;
      boolean joined = out != null && item.substring(out.end(), to.start()).isBlank();
      if (joined || may.test(item.substring(from.end(), to.start())))
        out = new Phrases.Hit(from.start(), to.end());
    }
    return out;
  }

  /** A clause that also names a standard or a figure says what it wants. */
  private static boolean exact(String text, Vocabulary vocabulary) {
    return !Citations.find(text).isEmpty()
        || !Quantities.find(text).isEmpty()
        || vocabulary.list("vague.exact").in(text);
  }

  private static Finding finding(Rule rule, Scene scene, SetText.TextPiece piece, String words) {
    return scene
        .writer()
        .write(
            rule,
            new FindingWriter.Case(
                piece.tag().isEmpty() ? piece.text() : piece.tag() + " " + piece.text(),
                "",
                FindingKind.INADEQUATE,
                rule.level(),
                piece.tags(),
                FoundAt.at(piece.origin()),
                FindingWords.of(
                    "\"" + words + "\" stands where a requirement belongs.",
                    words,
                    "a standard, a figure or a product")));
  }
}
