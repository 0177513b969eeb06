package clearbed.recognise.statement;

import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Finds places where a value belongs and stands open: bracketed choices, blanks, {@code TBD}. */
final class OpenItems {

  /**
   * @param text the open words
   * @param inner what stands between the brackets, or empty
   */
  record OpenItem(int start, int end, String text, String inner) {}

  // Metric equivalents and note numbers also stand in brackets.
  private static final Pattern NOT_A_CHOICE =
      Pattern.compile(
          "\\[\\s*(?:\\d{1,2}|(?:see )?notes?\\s*\\d*[\\d, and]*|sic|(?:approx\\.?|min\\.?|max\\.?|about)?\\s*[-+]?[\\d.,/ ]+\\s*(?:(?:x|by)\\s*[\\d.,/ ]+\\s*)*(?:to\\s*[\\d.,/ ]+\\s*)?(?:mm|cm|m|in\\.?|ft\\.?|\"|'|psi|MPa|kPa|N/mm2|°?\\s?[CFK]|deg\\.? ?[CF]|sq\\.? ?m|m2|sq\\.? ?ft|kg|lb|%)[^\\]]{0,20})\\s*\\]|<\\s*=.*|<\\s*/?\\w+\\s*>",
          Pattern.CASE_INSENSITIVE);

  private final Phrases open;

  OpenItems(Vocabulary vocabulary) {
    open = vocabulary.list("open");
  }

  /** Open items of a text; neighbouring bracketed choices count as one. */
  List<OpenItem> find(String text) {
    List<OpenItem> found = new ArrayList<>();
    for (Phrases.Hit hit : open.all(text)) {
      String words = text.substring(hit.start(), hit.end());
      if (NOT_A_CHOICE.matcher(words).matches()) {
        if (!metricWithoutTwin(text, hit) && !neighboured(text, hit)) continue;
      }
      OpenItem last = found.isEmpty() ? null : found.get(found.size() - 1);
      boolean together =
          last != null
              && text.substring(last.end(), hit.start()).matches("\\s*(?:,|or|and|/)?\\s*");
      String inner =
          words.startsWith("[") || words.startsWith("<")
              ? words.substring(1, words.length() - 1)
              : "";
      if (together) {
        found.set(
            found.size() - 1,
            new OpenItem(
                last.start(),
                hit.end(),
                text.substring(last.start(), hit.end()),
                last.inner() + "; " + inner));
      } else {
        found.add(new OpenItem(hit.start(), hit.end(), words, inner));
      }
    }
    return found;
  }

  /**
   * A bracketed figure with a unit is a choice, not an equivalent, when no figure stands before it.
   */
  private static boolean metricWithoutTwin(String text, Phrases.Hit hit) {
    String words = text.substring(hit.start(), hit.end());
    if (!words.matches("(?s).*\\d.*[A-Za-z\"'%°].*") || words.matches("(?i).*note.*")) return false;
    String before = text.substring(Math.max(0, hit.start() - 40), hit.start());
    return !before.matches("(?s).*\\d[^.;]{0,24}\\s*$")
        || before.matches("(?s).*\\]\\s*(?:or\\s*)?$");
  }

  /** Two brackets side by side are a choice, whatever stands in them. */
  private static boolean neighboured(String text, Phrases.Hit hit) {
    return text.startsWith("[", hit.start())
        && (text.substring(hit.end()).matches("(?s)\\s*(?:or\\s*)?\\[.*")
            || text.substring(0, hit.start()).matches("(?s).*\\]\\s*(?:or\\s*)?"));
  }

  /** The text with its open items blanked out, same length. */
  String closed(String text) {
    List<OpenItem> found = find(text);
    if (found.isEmpty()) return text;
    StringBuilder out = new StringBuilder(text);
    for (OpenItem o : found) {
      for (int i = o.start(); i < o.end(); i++) out.setCharAt(i, ' ');
    }
    return out.toString();
  }
}
