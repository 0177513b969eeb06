package clearbed.check.computed.reference;

import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
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

  private static final String NAMING = "checks.naming";
  private static final String POINTING = "checks.pointing";
  private static final String LEADING = "checks.leading";

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

  /** Behind the word for what is named. */
  private static final Pattern NAMED = Pattern.compile("\\.?\\s+(?:(?i:no|nos)\\.?\\s*)?" + NUMBER);

  /** One more of them, with letters, which no figure has. */
  private static final Pattern MORE =
      Pattern.compile("(?:, | and |, and | & | to | / )(?=[A-Z])" + NUMBER);

  /** Behind words that point to it. */
  private static final Pattern POINTED = Pattern.compile("\\s+(?:(?i:the)\\s+)?" + NUMBER);

  /** A number in parts, or one that letters open: any other is a figure. */
  private static final Pattern LOOSE =
      Pattern.compile(
          "\\.?\\s+(?:(?i:pos|item|no)\\.?\\s*)?(?=[A-Z]|\\d+[./-]\\d+[./-]|\\d{2,}[./-]\\d{2})"
              + NUMBER);

  /** Lists of words, each with what stands behind them where they refer to something. */
  private static final Map<String, Pattern> WORDS =
      Map.of(NAMING, NAMED, POINTING, POINTED, LEADING, LOOSE);

  private static final Pattern WORDS_BEFORE =
      Pattern.compile(".*\\p{L}{2}[^.:;]*$", Pattern.DOTALL);
  private static final Pattern ANY = Pattern.compile("(?<![\\w./-])" + NUMBER);

  /** What stands between the parts of a number, in whatever form. */
  private static final Pattern BETWEEN = Pattern.compile("[\\s.-]+");

  /** So near to a standard a table or a note is one of that standard. */
  private static final int OF_A_STANDARD = 30;

  static References in(String text, Vocabulary vocabulary) {
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
    Map<String, String> others = others(text, List.of(NAMING, POINTING), vocabulary, taken);
    Map<String, String> loose = others(text, List.of(LEADING), vocabulary, taken);
    return new References(sections, details, articles, others, loose);
  }

  private static Map<String, String> others(
      String text, List<String> lists, Vocabulary vocabulary, List<int[]> taken) {
    Map<String, String> out = new LinkedHashMap<>();
    for (String list : lists) {
      Matcher m = WORDS.get(list).matcher(text);
      int from = 0;
      for (Phrases.Hit word : vocabulary.list(list).all(text)) {
        int start = word.start();
        if (start < from || !m.region(word.end(), text.length()).lookingAt()) continue;
        from = m.end();
        if (taken.stream().anyMatch(t -> start < t[1] && t[0] < m.end())) continue;
        taken.add(new int[] {start, m.end()});
        if (ofAStandard(text, start, m.end()) || measures(text, m.start(1))) continue;
        if (list.equals(NAMING)) listed(text, m.end(), out);
        String words = text.substring(start, m.end()).trim();
        out.put(list.equals(LEADING) ? m.group(1) : words, key(m.group(1)));
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
  static boolean refers(String text, Vocabulary vocabulary) {
    return DETAIL.matcher(text).find()
        || WORDS.keySet().stream().anyMatch(list -> refers(list, text, vocabulary));
  }

  private static boolean refers(String list, String text, Vocabulary vocabulary) {
    Matcher m = WORDS.get(list).matcher(text);
    return vocabulary.list(list).all(text).stream()
        .anyMatch(word -> m.region(word.end(), text.length()).lookingAt());
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
