package clearbed.check.computed.reference;

import clearbed.check.judge.SetComputation.Scene;
import clearbed.model.document.Document;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Appendices and annexes with a letter. "Appendix D of this standard" leads to nothing where no
 * title and no file is called so; of other papers nobody knows whether they have one, unless the
 * set has its others.
 */
final class LetteredParts {
  /** Behind the word. */
  private static final Pattern LETTER = Pattern.compile("\\s+([A-Z])(?!\\w)");

  private static final Pattern NUMBERED = Pattern.compile("[.-]\\d");

  /** Longer words are a sentence that opens with a reference, in characters. */
  private static final int LONGEST_TITLE = 90;

  /**
   * An appendix in a text.
   *
   * @param numbered true of A1 and A-2, which have a letter and more
   */
  private record Lettered(String word, String letter, int start, int end, boolean numbered) {
    String key() {
      return word.toLowerCase(Locale.ROOT) + " " + letter;
    }
  }

  private final Vocabulary vocabulary;
  private final Set<String> titled = new HashSet<>();

  LetteredParts(Scene scene) {
    this.vocabulary = scene.vocabulary();
    for (Document d : scene.documents()) {
      for (Lettered part : in(d.path().replace('_', ' '), vocabulary))
        if (!part.numbered()) titled.add(part.key());
    }
    for (Section section : scene.project().sections()) {
      title(section.title());
      for (Clause clause : section.clauses()) {
        title(clause.heading());
        title(clause.text());
      }
    }
  }

  private static List<Lettered> in(String text, Vocabulary vocabulary) {
    List<Lettered> out = new ArrayList<>();
    for (Phrases.Hit word : vocabulary.list("checks.lettered").all(text)) {
      Matcher m = LETTER.matcher(text).region(word.end(), text.length());
      if (!m.lookingAt()) continue;
      boolean numbered = NUMBERED.matcher(text).region(m.end(), text.length()).lookingAt();
      String called = text.substring(word.start(), word.end());
      out.add(new Lettered(called, m.group(1), word.start(), m.end(), numbered));
    }
    return out;
  }

  private void title(String text) {
    Lettered part = titleIn(text);
    if (part != null) titled.add(part.key());
  }

  /** What a short text opens with, or null. */
  private Lettered titleIn(String text) {
    if (text.length() >= LONGEST_TITLE) return null;
    List<Lettered> parts = in(text, vocabulary);
    boolean opens = !parts.isEmpty() && text.substring(0, parts.get(0).start()).isBlank();
    return opens ? parts.get(0) : null;
  }

  /** True of few texts. */
  static boolean mayBeIn(String text, Vocabulary vocabulary) {
    return vocabulary.list("checks.lettered").in(text);
  }

  /** What a text refers to and the set does not have, as written. */
  List<String> missedIn(String text) {
    List<String> out = new ArrayList<>();
    if (titleIn(text) != null) return out;
    for (Lettered part : in(text, vocabulary)) {
      if (part.numbered() || titled.contains(part.key())) continue;
      boolean ofThis = vocabulary.list("checks.ofThis").startsAt(text, part.end());
      if (References.ofAStandard(text, part.start(), part.end())) continue;
      String word = part.word().toLowerCase(Locale.ROOT) + " ";
      boolean others = titled.stream().anyMatch(t -> t.startsWith(word));
      if (ofThis || others) out.add(part.word() + " " + part.letter());
    }
    return out;
  }
}
