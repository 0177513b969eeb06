package clearbed.check.computed.reference;

import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.text.Quantities;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a text refers to; most refer to nothing.
 *
 * @param sections with true for each that a sentence only opens with, as a list of them does
 * @param details as written, with the sheet each stands on
 * @param others in any other form: the words, and what they name, in one way of writing
 * @param loose likewise, behind words that lead to much else: "as T.465", "by Pos. 24.09.07"
 */
record References(
    Map<String, Boolean> sections,
    Map<String, Detail> details,
    List<String> articles,
    Map<String, String> others,
    Map<String, String> loose) {

  /**
   * A detail on a sheet.
   *
   * @param number as {@code 7} of {@code 7/A-612}
   */
  record Detail(String number, String sheet) {}

  /** True of most texts. */
  boolean isNothing() {
    return sections.isEmpty()
        && details.isEmpty()
        && articles.isEmpty()
        && others.isEmpty()
        && loose.isEmpty();
  }

  private static final Pattern SECTION =
      Pattern.compile(
          "\\b[Ss]ections?\\s+(\\d{2} ?\\d{2} ?\\d{2})\\b(?:,? (?:article|paragraph|clause)s? [\\d.]+)?");
  private static final Pattern ARTICLE =
      Pattern.compile("\\b(?:[Aa]rticle|[Pp]aragraph|[Cc]lause)s?\\s+(\\d\\.\\d{1,2})\\b");

  // "Detail 9/A-990", "3 on sheet A-402"
  private static final Pattern DETAIL =
      Pattern.compile(
          "\\b[Dd](?:etail|ETAIL)s?\\s+([A-Z]?\\d{1,3}[A-Z]?)\\s*(?:/|on (?:sheet |drawing )?)\\s*([A-Z]{1,2}[-.]?\\d{1,4}(?:\\.\\d{1,3})?)\\b");

  /** Letters and figures as sheets, details and clauses are numbered. */
  private static final String NUMBER =
      "((?:\\d{1,3}[A-Z]?/)?[A-Z]{0,3}[-.]?\\d{1,5}[A-Z]?(?:[-./][A-Z]?\\d{1,4}[A-Z]?){0,4})(?![\\w/])";

  private static final Pattern NAMED =
      Pattern.compile(
          "\\b(?i:details?|drawings?|dwgs?|sheets?|sections?|clauses?|articles?|paragraphs?|para|positions?|appendix|annex|notes?|tables?|figures?|fig|schedules?|elevations?)\\.?\\s+(?:(?i:no|nos)\\.?\\s*)?"
              + NUMBER);

  /** One more of them, with letters, which no figure has. */
  private static final Pattern MORE =
      Pattern.compile("(?:, | and |, and | & | to | / )(?=[A-Z])" + NUMBER);

  private static final Pattern POINTED =
      Pattern.compile(
          "\\b(?i:see|refer to|as per|acc\\.? to|according to|in accordance with|described (?:in|under)|shown (?:on|in)|given in|set out in)\\s+(?:(?i:the)\\s+)?"
              + NUMBER);

  /** A number in parts, or one that letters open: any other is a figure. */
  private static final Pattern LOOSE =
      Pattern.compile(
          "\\b(?i:as|by|per|under|rule|rules|pos|item|items|like)\\.?\\s+(?:(?i:pos|item|no)\\.?\\s*)?(?=[A-Z]|\\d+[./-]\\d+[./-]|\\d{2,}[./-]\\d{2})"
              + NUMBER);

  private static final Pattern WORDS_BEFORE =
      Pattern.compile(".*\\p{L}{2}[^.:;]*$", Pattern.DOTALL);
  private static final Pattern ANY = Pattern.compile("(?<![\\w./-])" + NUMBER);

  /** What stands between the parts of a number, in whatever form. */
  private static final Pattern BETWEEN = Pattern.compile("[\\s.-]+");

  /** So near to a standard a table or a note is one of that standard. */
  private static final int OF_A_STANDARD = 30;

  static References in(String text) {
    List<int[]> taken = new ArrayList<>();
    Map<String, Boolean> sections = new LinkedHashMap<>();
    Matcher m = SECTION.matcher(text);
    while (m.find()) {
      taken.add(new int[] {m.start(), m.end()});
      boolean opens = !WORDS_BEFORE.matcher(text.substring(0, m.start())).matches();
      sections.merge(
          m.group(1).replaceAll("(\\d{2}) ?(\\d{2}) ?(\\d{2})", "$1 $2 $3"),
          opens,
          Boolean::logicalAnd);
    }
    Map<String, Detail> details = new LinkedHashMap<>();
    m = DETAIL.matcher(text);
    while (m.find()) {
      taken.add(new int[] {m.start(), m.end()});
      details.put(
          m.group(),
          new Detail(m.group(1).toUpperCase(Locale.ROOT), m.group(2).toUpperCase(Locale.ROOT)));
    }
    List<String> articles = new ArrayList<>();
    m = ARTICLE.matcher(text);
    while (m.find()) {
      // "Section 09 30 19, paragraph 3.4" is no paragraph of this one.
      int start = m.start();
      if (taken.stream().anyMatch(t -> t[0] <= start && start < t[1])) continue;
      taken.add(new int[] {m.start(), m.end()});
      articles.add(m.group(1));
    }
    Map<String, String> others = others(text, List.of(NAMED, POINTED), taken);
    Map<String, String> loose = others(text, List.of(LOOSE), taken);
    return new References(sections, details, articles, others, loose);
  }

  private static Map<String, String> others(
      String text, List<Pattern> patterns, List<int[]> taken) {
    Map<String, String> out = new LinkedHashMap<>();
    for (Pattern pattern : patterns) {
      Matcher m = pattern.matcher(text);
      while (m.find()) {
        if (taken.stream().anyMatch(t -> m.start() < t[1] && t[0] < m.end())) continue;
        taken.add(new int[] {m.start(), m.end()});
        if (ofAStandard(text, m.start(), m.end()) || measures(text, m.start(1))) continue;
        if (pattern == NAMED) listed(text, m.end(), out);
        out.put(pattern == LOOSE ? m.group(1) : m.group().trim(), key(m.group(1)));
      }
    }
    return out;
  }

  /** "Details D-01, D-02 and D-06". */
  private static void listed(String text, int from, Map<String, String> out) {
    Matcher more = MORE.matcher(text).region(from, text.length());
    while (more.lookingAt()) {
      out.put(more.group(1), key(more.group(1)));
      more.region(more.end(), text.length());
    }
  }

  static boolean ofAStandard(String text, int start, int end) {
    return Citations.find(text).stream()
        .anyMatch(c -> c.start() < end + OF_A_STANDARD && start - OF_A_STANDARD < c.end());
  }

  private static boolean measures(String text, int at) {
    return Quantities.find(text).stream().anyMatch(q -> q.start() <= at && at < q.end());
  }

  /** Everything in a text that is written as a sheet, a detail or a clause is numbered. */
  static Set<String> numbersIn(String text) {
    Set<String> out = new LinkedHashSet<>();
    Matcher m = ANY.matcher(text);
    while (m.find()) out.add(key(m.group(1)));
    return out;
  }

  /** True where a text only sends the reader on. */
  static boolean refers(String text) {
    return DETAIL.matcher(text).find()
        || NAMED.matcher(text).find()
        || POINTED.matcher(text).find()
        || LOOSE.matcher(text).find();
  }

  /** One way of writing a number. */
  static String key(String number) {
    String joined = BETWEEN.matcher(number.toUpperCase(Locale.ROOT)).replaceAll("-");
    int from = joined.startsWith("-") ? 1 : 0;
    int end =
        joined.length() > from && joined.endsWith("-") ? joined.length() - 1 : joined.length();
    return joined.substring(from, end);
  }
}
