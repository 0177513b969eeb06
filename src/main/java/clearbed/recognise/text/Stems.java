package clearbed.recognise.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tartarus.snowball.ext.EnglishStemmer;

/** The words of a text, each with the stem that its forms share. */
public final class Stems {
  /** A word; offsets are of the text that it stands in. */
  public record Word(int start, int end, String text, String stem) {}

  private static final Pattern WORD = Pattern.compile("\\p{L}[\\p{L}\\p{M}']{0,40}");
  private static final int MOST = 2_000;

  private Stems() {}

  /** In order; of a text without end the first two thousand. */
  public static List<Word> of(String text) {
    List<Word> words = new ArrayList<>();
    EnglishStemmer stemmer = new EnglishStemmer();
    Matcher m = WORD.matcher(text);
    while (m.find() && words.size() < MOST) {
      words.add(new Word(m.start(), m.end(), m.group(), stem(stemmer, m.group())));
    }
    return words;
  }

  public static String stem(EnglishStemmer stemmer, String word) {
    stemmer.setCurrent(word.toLowerCase(Locale.ROOT));
    stemmer.stem();
    return stemmer.getCurrent();
  }

  /**
   * True when the letters of the short form stand in the word in their order and the first of them
   * is the word's first: {@code SVC} of service, {@code clr} of colour.
   */
  public static boolean abbreviates(String shortForm, String word) {
    String s = shortForm.toLowerCase(Locale.ROOT).replace("'", "");
    if (s.length() < 2 || s.length() >= word.length() || s.charAt(0) != word.charAt(0))
      return false;
    int at = 0;
    for (int i = 0; i < s.length(); i++) {
      at = word.indexOf(s.charAt(i), at) + 1;
      if (at == 0) return false;
    }
    return true;
  }
}
