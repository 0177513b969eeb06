package clearbed.recognise.text;

import java.util.regex.Pattern;

/** Tells the word "in" behind a number from inches. */
public final class WordIn {
  /** "To Table J and 0.11 in all tiled surfaces" counts clauses, not inches. */
  private static final Pattern OF_A_CLAUSE =
      Pattern.compile(
          "\\b(?:table|clauses?|sections?|articles?|items?|positions?|paragraphs?|notes?|details?)"
              + "(?: [\\w.]{1,12}(?:,| and| or|, and))? $",
          Pattern.CASE_INSENSITIVE);

  /** "Not less than 0.55 in accordance with ANSI A326.3" is no length. */
  public static final String ACCORDING = "\\s+(?:accord|conform|complian|keeping)";

  private static final Pattern ACCORDING_TO = Pattern.compile(ACCORDING, Pattern.CASE_INSENSITIVE);

  private static final int LONGEST_CLAUSE = 40;
  private static final Pattern GOES_ON = Pattern.compile("\\s+(?:all|the|any|each|every|this)\\b");

  private WordIn() {}

  /**
   * True when that is what was taken for the unit of a figure.
   *
   * @param start of the figure in the text
   * @param end behind its unit
   */
  static boolean isUnit(String unit, String text, int start, int end) {
    if (!unit.equals("in")) return false;
    if (ACCORDING_TO.matcher(text).region(end, text.length()).lookingAt()) return true;
    if (!GOES_ON.matcher(text).region(end, text.length()).lookingAt()) return false;
    int from = Math.max(0, start - LONGEST_CLAUSE);
    return OF_A_CLAUSE.matcher(text.substring(from, start)).find();
  }
}
