package clearbed.recognise.text;

import clearbed.model.value.Bound;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The words around a figure that bound it: {@code not less than}, {@code 400 psi minimum}. */
public final class BoundWords {
  private static final int FLAGS = Pattern.CASE_INSENSITIVE;

  private static final String LEAST_BEFORE =
      "(?:not less than|no less than|nowhere less than|never less than|nor less than|not under|never under|not below|no fewer than|at least|minimum(?: of)?|min\\.?(?: of)?|>=|no lower than|no closer (?:together )?than|not closer (?:together )?than)";
  private static final String ABOVE_BEFORE =
      "(?:in excess of|exceeding|exceeds?|(?:greater|more|higher|wider|thicker|deeper|larger) than|above|over|>)";
  private static final String MOST_BEFORE =
      "(?:not more than|nowhere more than|never more than|no more than|not greater than|not over|not to exceed|not exceeding|shall not exceed|maximum(?: of)?|max\\.?(?: of)?|at most|<=|up to|no greater than|no wider than|no f[au]rther (?:apart )?than|not f[au]rther (?:apart )?than)";
  private static final String BELOW_BEFORE =
      "(?:(?:less|lower|narrower|thinner|shallower|smaller) than|below|under|<)";
  private static final Pattern BEFORE =
      Pattern.compile(
          "(?<![a-z])(?:("
              + LEAST_BEFORE
              + ")|("
              + MOST_BEFORE
              + ")|("
              + ABOVE_BEFORE
              + ")|("
              + BELOW_BEFORE
              + "))[\\s:]*$",
          FLAGS);
  private static final Pattern AFTER =
      Pattern.compile(
          "^[\\s,(]*(?:(?:wide|deep|thick|apart)[\\s,]+)?(?:(minimum|min\\b|or (?:more|greater|better|higher|stiffer|wider|deeper|thicker|above)|and (?:above|wider))|(maximum|max\\b|or (?:less|below|flatter|fewer|closer|narrower|thinner)))",
          FLAGS);

  // "Neither may have a bond of less than 400 psi", "reset any tile with less than 95 percent".
  private static final Pattern DENIED =
      Pattern.compile(
          "\\b(?:not|no|never|neither|nor|none|cannot|reject\\w*|reset|redo|replace|remove|refuse)\\b"
              + "(?:(?!\\b(?:until|unless|before|when|if|after|because)\\b)[^.;:]){0,70}$",
          FLAGS);

  /** Letters before and behind a figure among which the words that bound it are looked for. */
  static final int NEAR = 30;

  /** The same before a figure for words that turn a bound round. */
  static final int REACH = 100;

  private BoundWords() {}

  /** What the words around a figure make of it. */
  public static Bound bound(String before, String after) {
    int near = Math.max(0, before.length() - NEAR);
    Matcher m = BEFORE.matcher(before.substring(near));
    if (m.find()) {
      if (m.group(1) != null) return Bound.AT_LEAST;
      if (m.group(2) != null) return Bound.AT_MOST;
      String earlier = before.substring(Math.max(0, before.length() - REACH), near + m.start());
      boolean denied = DENIED.matcher(earlier).find();
      if (m.group(3) != null) return denied ? Bound.AT_MOST : Bound.ABOVE;
      return denied ? Bound.AT_LEAST : Bound.BELOW;
    }
    m = AFTER.matcher(after);
    if (m.find()) return m.group(1) != null ? Bound.AT_LEAST : Bound.AT_MOST;
    return Bound.EXACT;
  }
}
