package clearbed.recognise.statement;

import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Words that say what is written of another tile or row: "same as GT-1", "as item A but 25 x 25".
 *
 * @param start where they begin
 * @param mark of the other, as written
 * @param end where what differs begins
 * @param differs true where a word says that something does: "but", "except"
 */
public record Likeness(int start, String mark, int end, boolean differs) {
  private static final Pattern MARK =
      Pattern.compile(
          "\\s+(?:(?:the|item|row|tile|type|finish|mark|code|no|ref|product)s?\\.?\\s+){0,3}"
              + "([\\p{L}\\d](?:[\\p{L}\\d./-]{0,11}[\\p{L}\\d])?)(?![\\p{L}\\d])",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern BEHIND =
      Pattern.compile(
          "(?:\\s*[,;:(\u2013\u2014.-])*\\s*(but|except(?:ing)?|save|apart from|other than)?"
              + "(?<=[\\s,;:(\u2013\u2014.-]|but|except|excepting|save|from|than|\\w)"
              + "(?:\\s+(?:with|for|that|as follows|in))?[:,]?(?:\\s+|$)",
          Pattern.CASE_INSENSITIVE);

  /**
   * The first such words; null where there are none.
   *
   * @param isMark true of what names another
   */
  public static Likeness in(String text, Vocabulary vocabulary, Predicate<String> isMark) {
    String plain = PlainText.of(text);
    for (Phrases.Hit hit : vocabulary.list("sameAs").all(plain)) {
      Matcher mark = MARK.matcher(plain).region(hit.end(), plain.length());
      if (!mark.lookingAt() || !isMark.test(mark.group(1))) continue;
      Matcher behind = BEHIND.matcher(plain).region(mark.end(), plain.length());
      boolean more = behind.lookingAt();
      return new Likeness(
          hit.start(),
          mark.group(1),
          more ? behind.end() : mark.end(),
          more && behind.group(1) != null);
    }
    return null;
  }
}
