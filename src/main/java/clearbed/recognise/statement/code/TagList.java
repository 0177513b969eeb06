package clearbed.recognise.statement.code;

import clearbed.model.document.Document.Gap;
import clearbed.model.document.Origin;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.UnitWords;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Lists and ranges of tags as people write them: {@code GT-1, GT-2}, {@code GT-5 thru GT-8}, {@code
 * GT-5...8}, {@code GT-5, 6 & 7}, {@code GT-05, -06}, {@code GT-5/6/7}, {@code GT-5A-C}.
 */
public final class TagList {
  /** A range of more is not believed. */
  static final int MOST = 60;

  /** In a cell of tags, where nothing else stands. */
  private static final Pattern IN_CELL = tag("[-. /]?");

  private static final Pattern IN_TEXT = tag("[-. ]?");
  private static final Pattern NUMBER =
      Pattern.compile("(\\d{1,4})([A-Za-z]?)(?![A-Za-z0-9]|\\.\\d)");
  private static final Pattern HUNG = Pattern.compile("[-.]?" + NUMBER.pattern());
  private static final Pattern DASH =
      Pattern.compile("(?<=\\d|\\d[A-Za-z])\\s*[\\u2013\\u2014]\\s*");
  private static final Pattern OVER = Pattern.compile("/\\d");
  private static final Pattern LETTER = Pattern.compile("([A-Za-z])(?![A-Za-z0-9])");

  // With a blank before it alone, a dash is the sign of the figure behind it: "GT-5 -10 to 140 F".
  static final Pattern RANGE =
      Pattern.compile(" +(?i:through|thru|to|until) +| *\\.{2,4} *|-| +- +");
  private static final Pattern JOIN_IN_CELL =
      Pattern.compile("\\s*(?:[,;&/+\\n]|\\s(?i:and|or)\\s)\\s*(?:(?:(?i:and|or)\\b|&)\\s*)?");
  private static final Pattern JOIN_IN_TEXT =
      Pattern.compile(" *(?:[,&/+]| (?i:and|or) ) *(?:(?:(?i:and|or)\\b|&) *)?");
  private static final Pattern UNIT =
      Pattern.compile("\\s?-?(?:" + UnitWords.PATTERN + ")", Pattern.CASE_INSENSITIVE);

  /** What goes on behind a list that has ended, so that its last figure counts nothing. */
  private static final Pattern GOES_ON =
      Pattern.compile(
          "\\s*(?:$|[.;:)\\]](?!\\d)|,\\s+[a-z]|-\\s+\\D)|\\s+(?i:shall|must|will|may|should|can|are|is"
              + "|be|has|have|gets?|at|on|for|with|from|where|when|which|that|only|as|see|use|set|both"
              + "|all|unless|except|not|also)\\b");

  /**
   * @param tags as written, ranges spelt out
   * @param end behind the last character of the list
   * @param unspelt a range whose ends alone are among the tags, in its own words, or empty
   */
  public record Found(List<String> tags, int end, String unspelt) {}

  private record Item(String prefix, String between, int number, int digits, String suffix) {
    boolean isLetter() {
      return number < 0;
    }

    Item withNumber(int now) {
      return new Item(prefix, between, now, digits, suffix);
    }

    Item withSuffix(String now) {
      return new Item(prefix, between, number, digits, now);
    }

    /** GT-01 to GT-12 runs over GT-02, not over GT-2. */
    String written() {
      if (isLetter()) return prefix + between + suffix;
      String figures = Integer.toString(number);
      return prefix
          + between
          + "0".repeat(Math.max(0, digits - figures.length()))
          + figures
          + suffix;
    }
  }

  private record Next(Item item, int end) {}

  private final String text;
  private final boolean cell;
  private final Set<String> tags = new LinkedHashSet<>();
  private String unspelt = "";

  /** Up to here figures are known to be tags. */
  private int accepted = -1;

  private TagList(String text, boolean cell) {
    this.text = text;
    this.cell = cell;
  }

  private static Pattern tag(String between) {
    return Pattern.compile(
        // "GT-A 3 mm" is a tag and a figure.
        "("
            + Tags.LETTERS
            + "|[A-Z]{1,4}[-.][A-Z]{1,3}(?! ))("
            + between
            + ")(\\d{1,4})([A-Za-z]?)(?![A-Za-z0-9]|\\.\\d)|([A-Z]{2,4})(-)([A-Z])(?![A-Za-z0-9])");
  }

  /** "GR-2 / 1/16" is a mark and a width. */
  private static final Pattern FRACTION =
      Pattern.compile("(?<=\\s)\\d{1,2}/(?:2|4|8|16|32|64)(?![\\w/])");

  /** The tags of a cell that holds nothing else, or null. */
  public static Found inCell(String cell) {
    // To a dash between figures, as printers set it for "to", a hyphen is part of a tag.
    String spaced = DASH.matcher(cell).replaceAll(" - ");
    String text = PlainText.of(spaced).trim();
    if (FRACTION.matcher(text).find()) return null;
    Found found = new TagList(text, true).read(0);
    return found != null && found.end() == text.length() ? found : null;
  }

  /** The list that begins with a tag at a place in running text, in plain form; null for none. */
  static Found inText(String text, int start) {
    return new TagList(text, false).read(start);
  }

  public static Gap gap(String range, Origin origin) {
    String reason =
        "the range \"%s\" is not spelt out: it has more than %d tags, or its ends do not fit;"
            + " its ends alone are read, so list the tags";
    return new Gap(origin, reason.formatted(range, MOST));
  }

  private Found read(int start) {
    Next next = tag(start);
    if (next == null) return null;
    int end = start;
    while (next != null) {
      tags.add(next.item().written());
      end = next.end();
      Next last = next;
      next = range(start, last);
      if (next == null) next = joined(last);
    }
    return new Found(new ArrayList<>(tags), end, unspelt);
  }

  private Next tag(int at) {
    Matcher m = matcher(cell ? IN_CELL : IN_TEXT, at);
    if (!m.lookingAt()) return null;
    if (m.group(5) != null) {
      return new Next(new Item(m.group(5), m.group(6), -1, 0, m.group(7)), m.end());
    }
    int digits = m.group(3).length();
    int number = Integer.parseInt(m.group(3));
    return new Next(new Item(m.group(1), m.group(2), number, digits, m.group(4)), m.end());
  }

  private Matcher matcher(Pattern pattern, int at) {
    return pattern.matcher(text).region(at, text.length()).useTransparentBounds(true);
  }

  private Next range(int start, Next left) {
    Matcher m = matcher(RANGE, left.end());
    if (!m.lookingAt()) return null;
    boolean tight = m.group().equals("-");
    boolean spaced = m.group().endsWith("- ");
    Next right = tag(m.end());
    if (right != null) right = withOpening(right, left.item());
    if (right != null && !right.item().prefix().equals(left.item().prefix())) return null;
    boolean bare = right == null;
    if (bare) right = bare(m.end(), left.item(), spaced);
    if (right == null) return null;
    boolean letter = right.item().number() == left.item().number();
    // In a cell "GT-5-1" is a tag like another; "GT-5A-C" can be nothing but three.
    if (tight && cell && bare && !letter) return null;
    boolean told = spread(left.item(), right.item());
    if (!told && bare && !cell && right.item().number() <= left.item().number()) return null;
    if (!told) unspelt = text.substring(start, right.end());
    return right;
  }

  /**
   * A figure or a letter that goes on with what the tag before it is.
   *
   * @param doubtful when the figure may as well count something
   */
  private Next bare(int at, Item like, boolean doubtful) {
    // "GT-05, -07": of as many figures, or it might be a temperature.
    boolean hung = !like.between().isBlank() && text.startsWith(like.between(), at);
    Matcher m = matcher(NUMBER, hung ? at + like.between().length() : at);
    if (!like.isLetter() && m.lookingAt() && (!hung || m.group(1).length() == like.digits())) {
      // Behind a comma "1/2" is a half.
      boolean fraction = doubtful && !cell && text.charAt(at - 1) != '/';
      if (fraction && matcher(OVER, m.end()).lookingAt()) return null;
      Item item = like.withNumber(Integer.parseInt(m.group(1))).withSuffix(m.group(2));
      return isTag(m.end(), doubtful) ? new Next(item, m.end()) : null;
    }
    m = matcher(LETTER, at);
    if (like.suffix().isEmpty() || !m.lookingAt()) return null;
    boolean alike = isUpper(m.group(1)) == isUpper(like.suffix());
    boolean tag = alike && isTag(m.end(), doubtful);
    return tag ? new Next(like.withSuffix(m.group(1)), m.end()) : null;
  }

  private static boolean isUpper(String letter) {
    return Character.isUpperCase(letter.charAt(0));
  }

  /** In running text a figure may count or measure something: "GT-1, 2 coats". */
  private boolean isTag(int end, boolean doubtful) {
    if (cell || end <= accepted) return true;
    if (!doubtful) return !matcher(UNIT, end).lookingAt();
    int at = end;
    while (!matcher(UNIT, at).lookingAt()) {
      if (matcher(GOES_ON, at).lookingAt()) {
        accepted = at;
        return true;
      }
      Matcher more = matcher(JOIN_IN_TEXT, at);
      if (!more.lookingAt()) more = matcher(RANGE, at);
      if (!more.lookingAt()) return false;
      if (tag(more.end()) != null) return true;
      Matcher number = matcher(HUNG, more.end());
      if (!number.lookingAt()) return false;
      at = number.end();
    }
    return false;
  }

  /** False when the tags between cannot be told. */
  private boolean spread(Item left, Item right) {
    boolean alike = left.suffix().equalsIgnoreCase(right.suffix()) && !left.isLetter();
    if (alike && right.number() > left.number()) {
      if (right.number() - left.number() >= MOST) return false;
      for (int n = left.number(); n <= right.number(); n++) tags.add(left.withNumber(n).written());
      return true;
    }
    boolean letters =
        right.number() == left.number() && !left.suffix().isEmpty() && !right.suffix().isEmpty();
    if (!letters || right.suffix().charAt(0) <= left.suffix().charAt(0)) return false;
    if (isUpper(left.suffix()) != isUpper(right.suffix())) return false;
    for (char c = left.suffix().charAt(0); c <= right.suffix().charAt(0); c++) {
      tags.add(left.withSuffix(String.valueOf(c)).written());
    }
    return true;
  }

  private Next joined(Next last) {
    Matcher m = matcher(cell ? JOIN_IN_CELL : JOIN_IN_TEXT, last.end());
    if (!m.lookingAt()) return null;
    Next next = tag(m.end());
    if (next != null) next = withOpening(next, last.item());
    if (next != null) {
      // "L1/T/14" is one code in parts.
      if (m.group().equals("/") && next.item().between().equals("/")) return null;
      // Elsewhere a mark of other letters stands for itself, and may be none.
      return cell || next.item().prefix().equals(last.item().prefix()) ? next : null;
    }
    next = bare(m.end(), last.item(), true);
    boolean rises = next != null && (cell || rises(last.item(), next.item()));
    return rises ? next : null;
  }

  /** "TL-G03, G04": the letters that all begin with are said once. */
  private static Next withOpening(Next next, Item last) {
    int dash = Math.max(last.prefix().lastIndexOf('-'), last.prefix().lastIndexOf('.'));
    boolean dropped = dash > 0 && next.item().prefix().equals(last.prefix().substring(dash + 1));
    if (!dropped) return next;
    Item whole = next.item();
    return new Next(
        new Item(last.prefix(), whole.between(), whole.number(), whole.digits(), whole.suffix()),
        next.end());
  }

  private static boolean rises(Item last, Item next) {
    boolean further = next.number() > last.number() && next.number() - last.number() < MOST;
    return further || next.number() == last.number() && !next.suffix().equals(last.suffix());
  }
}
