package clearbed.recognise.vocabulary;

import clearbed.recognise.text.Stems;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * How well a short form stands for a word. Offices cut words off ({@code ADH}, {@code SUBSTR}),
 * leave their vowels out ({@code CLR}, {@code THK}), or do both ({@code MAT'L}).
 */
public final class ShortForms {
  private static final double CUT_OFF = 0.9;
  private static final double LETTERS = 0.8;

  /** Two letters may stand for many words. */
  private static final double TWO_LETTERS = 0.6;

  private static final String VOWELS = "aeiou";

  private static final Pattern NO_LETTER = Pattern.compile("[^\\p{L}]");

  private ShortForms() {}

  /**
   * From 0, no short form of it, to 1, the word itself.
   *
   * @param word in small letters
   */
  public static double quality(String shortForm, String word) {
    if (!beginsLike(shortForm, word)) return 0;
    int mark = shortForm.indexOf('\'');
    if (mark > 0 && mark < shortForm.length() - 2 && elided(shortForm, mark, word)) return LETTERS;
    String s = NO_LETTER.matcher(shortForm.toLowerCase(Locale.ROOT)).replaceAll("");
    if (s.equals(word)) return 1;
    if (s.length() < 2 || s.length() >= word.length() || !Stems.abbreviates(s, word)) return 0;
    int kept = 0;
    while (kept < s.length() && s.charAt(kept) == word.charAt(kept)) kept++;
    boolean silent = s.endsWith("e") && word.endsWith("e");
    int end = silent ? s.length() - 1 : s.length();
    for (int i = kept; i < end; i++) if (VOWELS.indexOf(s.charAt(i)) >= 0) return 0;
    if (s.length() == 2) return kept == 2 ? TWO_LETTERS - 0.1 : TWO_LETTERS;
    if (kept < s.length()) return LETTERS;
    // Words are cut off behind a consonant; "bare" is a word of its own.
    return VOWELS.indexOf(s.charAt(kept - 1)) >= 0 && !shortForm.endsWith(".") ? 0 : CUT_OFF;
  }

  /** A short form begins with the first letter of its word; of many words this leaves few. */
  private static boolean beginsLike(String shortForm, String word) {
    char first = word.charAt(0);
    for (int i = 0; i < shortForm.length(); i++) {
      char c = Character.toLowerCase(shortForm.charAt(i));
      if (c == first) return true;
      if (Character.isLetter(c)) return false;
    }
    return false;
  }

  /** {@code M'BRANE}, {@code W'PROOFING}. */
  private static boolean elided(String shortForm, int mark, String word) {
    String s = shortForm.toLowerCase(Locale.ROOT);
    return word.length() >= s.length()
        && word.startsWith(s.substring(0, mark))
        && word.endsWith(s.substring(mark + 1));
  }
}
