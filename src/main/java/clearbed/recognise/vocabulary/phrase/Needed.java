package clearbed.recognise.vocabulary.phrase;

import java.util.List;

/**
 * Reads off a regular expression words of which one must be in every text that it finds, so that
 * most texts need not be searched. Knows only the plain parts of expressions: what it does not
 * understand it takes to need nothing.
 *
 * @param words in lower case; empty when there are none
 * @param named the same but for short codes, which name nothing by themselves
 */
public record Needed(List<String> words, List<String> named) {
  private static final Needed NOTHING = new Needed(List.of(), List.of());

  /** In lower case; empty when there are no such words. */
  public static List<String> by(String regex) {
    return of(regex).words();
  }

  static Needed of(String regex) {
    try {
      List<String> named = new ExpressionReader(regex, false).read().named();
      if (!named.isEmpty() && named.size() <= ExpressionPart.MOST) return new Needed(named, named);
      return new Needed(new ExpressionReader(regex, true).read().needed(), List.of());
    } catch (ExpressionReader.NotPlain e) {
      return NOTHING;
    }
  }
}
