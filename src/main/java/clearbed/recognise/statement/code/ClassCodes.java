package clearbed.recognise.statement.code;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * The classes of ISO 13007-1 and -3 (EN 12004, EN 13888), EN 14891, EN 15651, ISO 11600, EN 16165,
 * AS 4586, ASTM C920 and DIN 18534, by the way they are put together.
 */
public final class ClassCodes {
  public static final Pattern ANY =
      Pattern.compile(
          "(?:(?<![\\w-])|(?<=\\d-))(?:[CDR][12](?: ?[TEF][TEFPS]{0,2}|[PS])?(?: ?S[12])?|CG[12] ?[WA]{0,2}|RG|(?:CM|DM|RM) ?(?:O[12]P?|P)|O[12]P?|XS[1-3]|[FG]-? ?\\d{1,2}(?:[.,]\\d)?(?:LM|HM|E|P)?"
              + "|R(?:9|1[0-3])|P[0-5]|(?i:class|type|grade|use) (?!CG[12]|RG\\b|[CDR][12][TEFPS ])(?:\\d{2,3}(?:/\\d{2})?|[A-Z]{1,2}\\d?))(?![\\w-]|\\.\\d)");

  /** Such as no mark of a tile looks like. */
  private static final Pattern UNMISTAKABLE =
      Pattern.compile(
          "(?:(?<![\\w-])|(?<=\\d-))(?:[CDR][12] ?[TEF][TEFPS]{0,2}(?: ?S[12])?|C[12] ?S[12]|CG[12](?: ?[WA]{1,2})?|(?:CM|DM|RM) ?(?:O[12]P?|P)|O[12]P|XS[1-3]|W ?[0-3] ?- ?[IB]|[FG]-? ?\\d{1,2}(?:[.,]\\d)?(?:LM|HM|E|P))(?![\\w-]|\\.\\d)");

  private ClassCodes() {}

  public static boolean opensWithUnmistakable(String text) {
    return UNMISTAKABLE.matcher(text).lookingAt();
  }

  public static List<MatchResult> unmistakable(String text) {
    return UNMISTAKABLE.matcher(text).results().toList();
  }
}
