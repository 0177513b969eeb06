package clearbed.recognise.statement.code;

import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tags of tiles, as schedules and articles write them. */
public final class Tags {
  /**
   * Letters of a mark, some of them small in {@code GMo-01}, {@code GlTi-2} and {@code Gg-1};
   * behind the number of a family in {@code 9G-1}.
   */
  static final String LETTERS =
      "(?:[A-Z]{1,5}|[A-Z][A-Za-z]?[A-Z][a-z]{1,2}(?=-\\d)|(?!No)[A-Z][a-z](?=-\\d)|\\d[A-Z]{1,2}(?=-\\d{1,2}(?!\\d)))";

  /** One mark of a schedule: {@code GT-1}, {@code GL-W1}, {@code LH.G1}, {@code GLS-A}. */
  public static final String MARK =
      "(?:" + LETTERS + "[-. ]?\\d{1,3}[A-Z]?|[A-Z]{1,4}[-.][A-Z]{1,3}-?\\d{1,3}|[A-Z]{2,4}-[A-Z])";

  /** A code of an office's own, in parts: {@code 0930.G1}, {@code POOL/1A}. */
  public static final String CODE = "[\\p{Lu}\\d]{1,6}(?:[-./][\\p{Lu}\\d]{1,6}){1,2}";

  /** A mark by itself, in a cell. */
  private static final Pattern ALONE =
      Pattern.compile(
          LETTERS
              + "[- ./]?\\d{1,4}[A-Za-z]?(?:[-.]\\d{1,2})?|[A-Z]{1,4}[-.][A-Z]{1,3}-?\\d{1,3}|[A-Z]{2,4}-[A-Z]|[A-Z]\\d{2}/\\d{2,3}[A-Z]?");

  /** Figures among the parts of a tag: {@code L1-G2}, {@code M4.2}. */
  private static final Pattern IN_PARTS =
      Pattern.compile("([A-Z]{1,4}\\d{1,3}(?:[-./][A-Z]{0,3})+|\\d[A-Z]{1,2}-)\\d{1,3}[A-Z]?");

  /** What is left of {@code TL-G01} without its figures. */
  private static final Pattern OPENING_PARTS = Pattern.compile("[A-Z]{1,4}-[A-Z]{1,3}");

  private static final int OPENING = 100;
  private static final Pattern BEHIND_PREFIX = Pattern.compile("[^A-Za-z].*$");

  // An addendum says "Add tile GT-9: ..."
  private static final Pattern ADDS =
      Pattern.compile(
          "^\\s*(?:[A-Z0-9]{1,2}[.)]\\s+)?add\\s+(?:(?:the|new|following|glass|tile|type|finish|tag)\\s+){0,4}",
          Pattern.CASE_INSENSITIVE);

  /** Ends a key that stands for all tags of its letters. */
  public static final String FAMILY = "*";

  private Tags() {}

  /** One way of writing a tag, to compare by. */
  public static String key(String tag) {
    return TagFinder.tag(PlainText.line(tag));
  }

  /**
   * The tag as a text writes it: {@code GL.01} for the key {@code GL-01}; the key itself where it
   * is not found.
   */
  public static String asWritten(String key, String text) {
    return TagFinder.written(PlainText.of(text)).stream()
        .filter(w -> key(w).equals(key))
        .findFirst()
        .orElse(key);
  }

  /**
   * The tags that a key stands for: {@code T-5X}, written T-5x, for all from T-50 to T-59 where
   * there are such and no T-5X; {@code GW*}, written "GW types", for all of these letters; itself
   * else.
   */
  public static Set<String> meant(String key, Set<String> known) {
    if (key.endsWith(FAMILY)) return family(key, known);
    if (OPENING_PARTS.matcher(key).matches() && !known.contains(key)) return opening(key, known);
    if (!key.endsWith("X") || known.contains(key)) return Set.of(key);
    String opening = key.substring(0, key.length() - 1);
    Set<String> out = new TreeSet<>();
    for (String one : known)
      if (one.length() > opening.length()
          && one.startsWith(opening)
          && one.substring(opening.length()).chars().allMatch(Character::isDigit)) out.add(one);
    return out.isEmpty() ? Set.of(key) : out;
  }

  /** "Each TL-G type" of TL-G01 to TL-G10; itself where no tag begins so. */
  private static Set<String> opening(String key, Set<String> known) {
    Set<String> out = new TreeSet<>();
    for (String one : known)
      if (one.length() > key.length()
          && one.startsWith(key)
          && Character.isDigit(one.charAt(key.length()))) out.add(one);
    return out.isEmpty() ? Set.of(key) : out;
  }

  private static Set<String> family(String key, Set<String> known) {
    String letters = key.substring(0, key.length() - FAMILY.length());
    Set<String> out = new TreeSet<>();
    for (String one : known) if (prefix(one).equals(letters)) out.add(one);
    return out;
  }

  /** The letters of a tag: {@code GT} of {@code GT-12}, {@code L1-G} of {@code L1-G2}. */
  public static String prefix(String key) {
    Matcher parts = IN_PARTS.matcher(key);
    if (parts.matches()) return parts.group(1);
    return BEHIND_PREFIX.matcher(key).replaceAll("");
  }

  /** True when the text is tags and nothing else. */
  public static boolean alone(String text) {
    return TagList.inCell(text) != null;
  }

  /** True when it is a mark of letters and figures, and no description. */
  public static boolean isMark(String tag) {
    String text = PlainText.of(tag).trim();
    // "A118.15" is a standard.
    return ALONE.matcher(text).matches() && Citations.find(text).isEmpty();
  }

  /** The same, or of a form that was taught. */
  public static boolean isMark(String tag, Vocabulary known) {
    return isMark(tag) || known.taught().isTag(tag);
  }

  /** True when the clause adds a tile to those scheduled elsewhere. */
  public static boolean adds(String text) {
    return ADDS.matcher(PlainText.of(text)).find();
  }

  /** Tags in the opening words of a clause, which name what it is about. */
  public static Set<String> inOpening(String text) {
    String plain = PlainText.of(text);
    return TagFinder.tags(opening(plain));
  }

  /** Cut between words: half a tag is another tag. */
  private static String opening(String text) {
    if (text.length() <= OPENING) return text;
    int end = OPENING;
    while (end > 0 && !Character.isWhitespace(text.charAt(end))) end--;
    return text.substring(0, end);
  }
}
