package clearbed.recognise.vocabulary;

import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.recognise.vocabulary.phrase.Together;
import java.util.Map;
import java.util.Set;

/**
 * An attribute of an entry, as the vocabulary defines it.
 *
 * @param label as people read it
 * @param single true when two different values for one entry contradict each other
 * @param alongside terms that contradict no other: what was done to a tile however it was made
 * @param alike terms that people use for one another, and that do not contradict each other
 * @param alone true when a figure of its kind with none of its words near is still of it
 * @param dimension of an amount, else null
 * @param plausible figures outside it are about something else; null when any will do
 */
public record Attribute(
    String id,
    String label,
    String family,
    Kind kind,
    boolean single,
    Set<String> alongside,
    Set<String> alike,
    boolean needsFamily,
    boolean alone,
    Dimension dimension,
    Content.Amount plausible,
    Words words) {

  /** How its values are recognised. */
  public enum Kind {
    STANDARD,
    TERM,
    AMOUNT,
    SIZE,
    FLATNESS,
    REQUIRED,
    WORDS
  }

  /**
   * The phrases it is recognised by.
   *
   * @param terms in the order of the vocabulary file
   * @param anyTerm the phrases of all terms: few texts hold any of them
   */
  public record Words(
      Phrases headers,
      Phrases cues,
      Together together,
      Phrases not,
      Map<String, Phrases> terms,
      Phrases anyTerm) {

    /** True when a sentence requires it; for {@link Kind#REQUIRED}. */
    public boolean requiredIn(String sentence) {
      return (cues.in(sentence) && !not.in(sentence)) || together.in(sentence);
    }

    /** True when a sentence requires it together with its title, which does not by itself. */
    public boolean requiredUnder(String title, String sentence) {
      return !not.in(sentence) && !together.in(title) && together.in(title + ": " + sentence);
    }
  }

  /** True when a text uses the words that the vocabulary has for it. */
  public boolean namedIn(String text) {
    String plain = PlainText.of(text);
    return words.headers().in(plain)
        || (kind == Kind.REQUIRED && (words.cues().in(plain) || words.together().in(plain)));
  }

  /** True when the vocabulary has that term for it. */
  public boolean hasTerm(String term) {
    return words.terms().containsKey(term);
  }

  /** The names of its terms, in the order of the vocabulary. */
  public Set<String> terms() {
    return words.terms().keySet();
  }

  /** True when a text is one of its terms and no more. */
  public boolean isTerm(String text) {
    return words.anyTerm().matches(text);
  }

  /** False where no term of it begins so. */
  public boolean mayBeginTerm(String start) {
    return words.anyTerm().mayBegin(start);
  }

  /** A column headed "slip resistance" may give a class or a pendulum value for a coefficient. */
  public boolean mayGive(Attribute other) {
    return dimension == Dimension.RATIO && family.equals(other.family);
  }

  public boolean accepts(Content.Amount amount) {
    if (plausible == null) return true;
    return amount.low().compareTo(plausible.low()) >= 0
        && amount.high().compareTo(plausible.high()) <= 0;
  }
}
