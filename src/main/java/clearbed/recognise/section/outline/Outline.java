package clearbed.recognise.section.outline;

import clearbed.model.document.Paragraph;
import clearbed.recognise.section.CountedNotes;
import clearbed.recognise.statement.code.ClauseNumbers;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The numbering of three-part sections: {@code 2.3}, {@code A.}, {@code 1.}, {@code a.}, {@code
 * 1)}, {@code a)}.
 */
public final class Outline {

  /**
   * @param rank 0 part, 1 article, 2 {@code A.}, 3 {@code 1.}, 4 {@code a.}, 5 {@code 1)}, 6 {@code
   *     a)}; -1 without a number
   * @param number without its full stop
   * @param rest the words behind it
   */
  public record Label(int rank, String number, String rest) {}

  private static final Pattern ARTICLE =
      Pattern.compile("^(\\d{1,2}(?:\\.\\d{1,2}){1,4})\\.?(?:\\s+|$)(.*)$", Pattern.DOTALL);

  /** {@code 23.02.0010}, {@code 4.110.20}: positions of a bill of works, and no date. */
  private static final Pattern POSITION =
      Pattern.compile(
          "^(?!\\d{1,2}\\.\\d{1,2}\\.(?:19|20)\\d\\d\\b)(\\d{1,3}(?:\\.\\d{1,4}){2,4})\\.?\\s+(?=\\p{L})(.*)$",
          Pattern.DOTALL);

  /** Before the number of a position: {@code Pos. 43.20.010 Adhesive}. */
  private static final Pattern CALLED =
      Pattern.compile(
          "^(?i:pos(?:ition)?|item)\\b\\.?\\s+(?=\\d{1,3}(?:\\.\\d{1,4}){1,4}\\.?\\s+\\p{Lu})");

  /** {@code G.2.1 Glass tile}: articles that count below the letter of their section. */
  private static final Pattern LETTERED =
      Pattern.compile("^([A-Z]{1,2}(?:\\.\\d{1,2}){1,4})\\.?\\s+(.*)$", Pattern.DOTALL);

  /** {@code S2.3 Grout joints.}: articles of a supplement, by the letter before their number. */
  private static final Pattern GLUED =
      Pattern.compile(
          "^([A-Z]\\d{1,2}(?:\\.\\d{1,2}){1,2})\\.?\\s+(\\p{Lu}\\p{Ll}.*)$", Pattern.DOTALL);

  /** {@code TC-3.1}: clauses that count below the mark of their article. */
  private static final Pattern HYPHENED =
      Pattern.compile("^([A-Z]{1,4}-\\d{1,2}(?:\\.\\d{1,2}){1,3})\\.?\\s+(.*)$", Pattern.DOTALL);

  /** {@code T-09}, as {@link CountedNotes} gives it. */
  private static final Pattern COUNTED = Pattern.compile("[A-Z]{1,3}[-.]?\\d{1,2}");

  /** {@code M40/2 TILE} over {@code M40/2.01}. */
  private static final Pattern CODED_ARTICLE =
      Pattern.compile("^([A-Z]{1,3}\\d{0,2}/\\d{1,2})\\s+(\\p{Lu}.*)$", Pattern.DOTALL);

  /** {@code T20/350 TANKING}, {@code 310 GLASS TILES}: clauses of systems that number by work. */
  private static final Pattern CODED =
      Pattern.compile(
          "^(" + ClauseNumbers.CODED + "|\\d{3}[A-Z]?(?=\\s+[A-Z][^a-z]{3,}$))\\s+(.*)$",
          Pattern.DOTALL);

  private static final Pattern UPPER =
      Pattern.compile("^\\(?([A-Z])[.)](?:\\s+|$)(.*)$", Pattern.DOTALL);
  private static final Pattern NUMBER =
      Pattern.compile("^(\\d{1,2})\\.(?:\\s+|$)(.*)$", Pattern.DOTALL);

  /** {@code 4 GT-1 turns the corner}, as notes of drawings are counted. */
  private static final Pattern HANGING =
      Pattern.compile("^(\\d{1,2}) {2,6}(?=\\p{Lu})(.*)$", Pattern.DOTALL);

  private static final Pattern LOWER =
      Pattern.compile("^([a-z])\\.(?:\\s+|$)(.*)$", Pattern.DOTALL);
  private static final Pattern NUMBER_BRACKET =
      Pattern.compile("^\\(?(\\d{1,2})\\)(?:\\s+|$)(.*)$", Pattern.DOTALL);
  private static final Pattern LOWER_BRACKET =
      Pattern.compile("^\\(?([a-z])\\)(?:\\s+|$)(.*)$", Pattern.DOTALL);
  private static final Pattern BULLET = Pattern.compile("^[-*+•o]\\s+(.*)$", Pattern.DOTALL);
  private static final Pattern QUANTITY_START =
      Pattern.compile("^\\d+\\.\\d+\\s*(?:in|mm|ft|m|psi|MPa|%|percent|°).*", Pattern.DOTALL);

  private static final Pattern STOPPED = Pattern.compile(".*[.;:]\\s*$", Pattern.DOTALL);
  private static final Pattern MARKED_UP = Pattern.compile("^#+\\s+");

  private Outline() {}

  public static Label label(Paragraph p, String text) {
    String auto = p.label().trim();
    String whole = CALLED.matcher(auto.isEmpty() ? text : auto + " " + text).replaceFirst("");
    if (auto.isEmpty() && QUANTITY_START.matcher(text).matches()) return new Label(-1, "", text);
    Matcher m = ARTICLE.matcher(whole);
    if (m.matches()) return new Label(dots(m.group(1)), m.group(1), m.group(2).trim());
    m = POSITION.matcher(whole);
    if (m.matches()) return new Label(dots(m.group(1)), m.group(1), m.group(2).trim());
    m = LETTERED.matcher(whole);
    if (m.matches() && isArticle(p, m.group(1), m.group(2)))
      return new Label(dots(m.group(1)), m.group(1), m.group(2).trim());
    m = HYPHENED.matcher(whole);
    if (m.matches()) return new Label(1 + dots(m.group(1)), m.group(1), m.group(2).trim());
    m = GLUED.matcher(whole);
    if (m.matches()) return new Label(dots(m.group(1)), m.group(1), m.group(2).trim());
    if (COUNTED.matcher(auto).matches())
      return new Label(p.headingLevel() > 0 ? 1 : 3, auto, text.trim());
    m = CODED.matcher(whole);
    // "W41/500 Movement joints" is over W41/510 and W41/520.
    boolean group = m.matches() && p.headingLevel() > 0 && m.group(1).endsWith("00");
    if (m.matches())
      return new Label(group ? 0 : 1 + dots(m.group(1)), m.group(1), m.group(2).trim());
    m = CODED_ARTICLE.matcher(whole);
    if (m.matches() && heading(p, new Label(1, m.group(1), m.group(2))))
      return new Label(1, m.group(1), m.group(2).trim());
    Object[][] forms = {
      {UPPER, 2}, {NUMBER, 3}, {HANGING, 3}, {LOWER, 4}, {NUMBER_BRACKET, 5}, {LOWER_BRACKET, 6}
    };
    for (Object[] form : forms) {
      m = ((Pattern) form[0]).matcher(whole);
      // "2. STANDARDS" over 2.1 and 2.2 is above articles.
      boolean over = form[0] == NUMBER && p.headingLevel() > 0;
      if (m.matches()) return new Label(over ? 0 : (int) form[1], m.group(1), m.group(2).trim());
    }
    m = BULLET.matcher(whole);
    if (m.matches()) return new Label(80, "", m.group(1).trim());
    return new Label(-1, "", MARKED_UP.matcher(text).replaceFirst(""));
  }

  private static int dots(String number) {
    return (int) number.chars().filter(c -> c == '.').count();
  }

  /** "G.2.1" counts articles; "G.2" may be the mark of a tile unless it heads something. */
  private static boolean isArticle(Paragraph p, String number, String rest) {
    // "V.01" counts tiles: articles have no nought before their number.
    if (dots(number) == 1 && number.indexOf(".0") > 0 && !p.label().equals(number)) return false;
    boolean capitals = rest.matches("(?s)[^a-z]*[A-Z]{3}[^a-z]*");
    return dots(number) > 1 || p.headingLevel() > 0 || capitals || p.label().equals(number);
  }

  /** A title rather than a requirement. */
  public static boolean heading(Paragraph p, Label label) {
    String words = label.rest();
    if (words.isEmpty() || words.length() > 90) return false;
    if (p.headingLevel() > 0 && label.rank() <= 1) return true;
    boolean capitals =
        words.equals(words.toUpperCase(Locale.ROOT)) && words.matches(".*[A-Z]{3}.*");
    boolean sentence = STOPPED.matcher(words).matches() || words.contains(": ");
    if (label.rank() == 1)
      return (capitals || !sentence)
          && words.split("\\s+").length <= 9
          && !words.matches(".*\\b(?:shall|must|provide|use|set)\\b.*");
    return label.rank() < 0
        && capitals
        && !sentence
        && words.split("\\s+").length <= 8
        && !words.matches(".*\\d+\\s*(?:IN\\b|MM|FT|PSI|%|/|\\.).*");
  }

  /** {@code 2.3 B.1.a} */
  public static String cite(List<String> numbers) {
    StringBuilder out = new StringBuilder();
    for (String number : numbers) {
      if (number.isEmpty()) continue;
      boolean article = number.contains(".") || number.contains("/");
      if (article) out.setLength(0);
      else if (out.length() > 0)
        out.append(out.indexOf(" ") < 0 && out.indexOf(".") >= 0 ? " " : ".");
      out.append(number);
    }
    return out.toString();
  }

  /** The opening words, which name the subject. */
  static String shorten(String text) {
    int colon = text.indexOf(':');
    String head = colon > 0 && colon < 90 ? text.substring(0, colon) : text;
    return head.length() > 90 ? head.substring(0, 90) : head;
  }
}
