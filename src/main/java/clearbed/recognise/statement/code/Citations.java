package clearbed.recognise.statement.code;

import clearbed.model.value.Content;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Recognises designations of standards in any of the ways people type them. */
public final class Citations {

  /**
   * @param start offset in the plain form of the text
   * @param end offset behind it
   */
  public record Found(int start, int end, Content.Standard standard, String asWritten) {}

  private static final String YEAR =
      "(?:\\s*[-:]\\s*((?:19|20)?\\d{2}[a-z]?(?:\\([^)]{1,8}\\))?)(?!\\d|/|\\.\\d))?";

  private static final List<DesignationForm> FORMS =
      List.of(
          // ANSI A118.4, A118-4, A 118.15 E, ANSI/TCNA A137.2
          new DesignationForm(
              "108 118 136 137 138 326",
              "(?:ANSI\\s*(?:/\\s*(?:TCNA|TCA))?\\s*[-:]?\\s*)?\\bA\\s?-?(108|118|136|137|138|326)\\s*[.,-]\\s*(\\d{1,2})\\s?([A-Z]{0,3})\\b"
                  + YEAR,
              m -> "ANSI A" + m.group(1) + "." + Integer.parseInt(m.group(2)),
              4),
          new DesignationForm(
              "ansi",
              "\\bANSI\\s*[-:]?\\s*A\\s?-?(108|118|136|137|326)\\b(?!\\s*[.,-]\\s*\\d)()()()",
              m -> "ANSI A" + m.group(1),
              4),
          // ASTM C920, ASTM C-920-18, C 1026
          new DesignationForm(
              "astm",
              "\\bASTM\\s*[-:]?\\s*([A-G])\\s?-?\\s?(\\d{1,4})(M|/[A-G]\\s?\\d{1,4}M?)?\\b" + YEAR,
              m -> "ASTM " + m.group(1).toUpperCase(Locale.ROOT) + m.group(2),
              4),
          new DesignationForm(
              "920 484 1026 373 499 627 1193 1472 719 648 482 1028 510 1248",
              "(?<![\\w-])(C)\\s?-?(920|484|1026|373|499|627|1193|1472|719|648|482|1028|510|1248)(M)?\\b"
                  + YEAR,
              m -> "ASTM C" + m.group(2),
              4),
          // ISO 13007-1, EN 12004-1:2017, BS EN ISO 11600, BS 5385-4
          new DesignationForm(
              "en iso bs",
              "\\b(?:(?:BS|DIN|NF|UNI|(?-i:I\\.S\\.|AS|SS|NS|IS|SN|UNE|NEN|SFS|NBN|CSN|DS|PN|MSZ|SIST))(?:\\s+|[-/]))?(EN\\s+ISO|EN|ISO|BS)\\s*[-:]?\\s*(\\d{3,5})(?:[-.](\\d{1,2}(?:\\.\\d(?!\\d))?)(?!\\d))?"
                  + "(?:\\s*:\\s*((?:19|20)\\d{2})(?:\\s*\\+\\s*A\\d+(?::\\d{4})?)?)?",
              Citations::international,
              4),
          // National ones: DIN 18157-1, AS 3958.1, AS/NZS 4586. "AS 1200 mm" is none.
          new DesignationForm(
              "CEN/T DIN AS NZS SIA DTU UNI UNE NEN NBN SANS SASO GSO PN SFS NS JIS GB JGJ NORM",
              "\\b(?-i:(CEN/T[RS]|DIN|AS/NZS|AS|NZS|SIA|DTU|UNI|UNE|NEN|NBN|SANS|SASO|GSO|PN|SFS|NS|JIS A|GB/T|GB|JGJ|[O\u00d6]NORM(?: [A-Z])?))\\s*(\\d{3,6}|\\d{2})(?:[-.](\\d{1,2})(?!\\d))?(?:\\s*[:-]\\s*((?:19|20)\\d{2}))?"
                  + "(?!\\d|[.,]\\d|\\s*(?:x|by|mm|m|cm|psi|lbs?|ft|in|sq|hours?|days?)\\b)",
              Citations::national,
              4),
          // The ramp tests, whose classes outlived them.
          new DesignationForm(
              "din",
              "\\bDIN\\s*[-:]?\\s*(51097|51130|51131)()()(?:\\s*[-:]\\s*((?:19|20)\\d{2})(?:-\\d{2})?)?(?!\\d)",
              m -> "DIN " + m.group(1),
              4),
          new DesignationForm(
              "ej",
              "\\b(?:TCNA|TCA)?\\s*(?:Handbook|Hdbk\\.?)?\\s*(?:Method|Detail)?\\s*\\b(EJ\\s?-?\\s?171)(?:[A-Z])?()()\\b[A-Z]?(?:\\s*-\\s*((?:19|20)?\\d{2}))?",
              m -> "TCNA EJ171",
              4),
          // Federal specifications of sealants: FS TT-S-00227E.
          new DesignationForm(
              "tt-s-",
              "\\b(?:FS|Fed(?:eral)?\\.? Spec(?:ification)?\\.?)\\s*(TT-S-\\d{5,6})[A-Z]?()()()\\b",
              m -> "FS " + m.group(1).toUpperCase(Locale.ROOT),
              4),
          new DesignationForm(
              "handbook", "\\b(TCNA|TCA)\\s+(?:Handbook|Hdbk)()()()\\b", m -> "TCNA Handbook", 4),
          new DesignationForm(
              "tcna",
              "\\bTCNA\\s+(?:(?:Handbook|Hdbk\\.?),?\\s+)?(?:Methods?\\s+|Details?\\s+)?([A-Z]{1,3}\\d{3}[A-Z]?)()()()\\b",
              m -> "TCNA " + m.group(1).toUpperCase(Locale.ROOT),
              4));

  /**
   * @param needed one of which is in every text that has it; those in capitals stand in capitals
   */
  private record DesignationForm(
      List<String> needed, Pattern pattern, Function<Matcher, String> designation, int year) {
    DesignationForm(String needed, String regex, Function<Matcher, String> designation, int year) {
      this(
          List.of(needed.split(" ")),
          Pattern.compile(bounded(regex), Pattern.CASE_INSENSITIVE),
          designation,
          year);
    }

    boolean mayBeIn(String text, String lower) {
      for (String part : needed) {
        boolean capitals = part.charAt(0) <= 'Z';
        if ((capitals ? text : lower).contains(part)) return true;
      }
      return false;
    }

    /** Gaps end somewhere, so that thousands of blanks take time by their length and no more. */
    private static String bounded(String regex) {
      return regex.replace("\\s*", "\\s{0,9}").replace("\\s+", "\\s{1,9}");
    }
  }

  // "ANSI A108/A118/A136.1" is the title of one book of three series.
  private static final Pattern SERIES =
      Pattern.compile(
          "\\bANSI\\s{0,9}A\\s?(1\\d\\d)((?:\\s?/\\s?A\\s?1\\d\\d(?:\\.\\d{1,2})?)+)(?![\\d.]\\d|\\w)",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern OF_SERIES =
      Pattern.compile("A\\s?(1\\d\\d)(?:\\.(\\d{1,2}))?", Pattern.CASE_INSENSITIVE);

  // "A118.1, .4 and .15" and "ANSI A118.4/A118.11" cite more than the first.
  private static final Pattern CONTINUED =
      Pattern.compile(
          "^\\s*(?:,|/|and|or|&|, and|, or)\\s*(?:A\\s?(\\d{3}))?\\s*\\.(\\d{1,2})\\b",
          Pattern.CASE_INSENSITIVE);

  /** The figures of a designation begin this close behind its letters, in characters. */
  private static final int NEAR = 5;

  private Citations() {}

  /** All citations of a text in order, none inside another. */
  public static List<Found> find(String text) {
    if (!mayCite(text)) return List.of();
    String s = PlainText.of(text);
    List<Found> found = new ArrayList<>();
    String lower = s.toLowerCase(Locale.ROOT);
    if (lower.contains("ansi")) series(found, s);
    for (DesignationForm form : FORMS) {
      if (!form.mayBeIn(s, lower)) continue;
      Matcher m = form.pattern().matcher(s);
      while (m.find()) add(found, s, form, m);
    }
    found.sort((a, b) -> Integer.compare(a.start(), b.start()));
    return found;
  }

  private static void series(List<Found> found, String s) {
    Matcher series = SERIES.matcher(s);
    while (series.find()) {
      Matcher m = OF_SERIES.matcher(s).region(series.start(), series.end());
      while (m.find()) {
        String part = m.group(2) == null ? "" : "." + Integer.parseInt(m.group(2));
        Content.Standard standard = new Content.Standard("ANSI A" + m.group(1) + part, "");
        int start = found.isEmpty() || m.start() > series.start() + 6 ? m.start() : series.start();
        found.add(new Found(start, m.end(), standard, m.group()));
      }
    }
  }

  /** True where a text cites standards and all of them say how work is done, and none with what. */
  public static boolean sayHowToSet(String text, Vocabulary vocabulary) {
    List<Found> cited = find(text);
    return !cited.isEmpty()
        && cited.stream()
            .map(f -> vocabulary.standards().of(f.standard().designation()))
            .allMatch(info -> info.isPresent() && info.get().states().isEmpty());
  }

  /** True when it is cited with others as one book, of which nobody can say which part is meant. */
  public static boolean ofASeries(String text, Found found) {
    return SERIES
        .matcher(text)
        .results()
        .anyMatch(m -> m.start() <= found.start() && found.end() <= m.end());
  }

  /** Every designation has three digits in a row and a letter, or the name of TCNA. */
  public static boolean mayCite(String text) {
    int digits = 0;
    int letter = -NEAR;
    boolean near = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean digit = c >= '0' && c <= '9';
      if (digit && digits == 0) near = i - letter <= NEAR;
      digits = digit ? digits + 1 : 0;
      if (digits >= 2 && near && (digits == 3 || isPart(text, i + 1))) return true;
      if (c > 126 || (c | ' ') >= 'a' && (c | ' ') <= 'z') letter = i;
      boolean named = c == 'T' || c == 't';
      if (named && (at(text, i, "TCA") || at(text, i, "TCNA"))) return true;
    }
    return false;
  }

  /** "DTU 52.2" has two digits and a part. */
  private static boolean isPart(String text, int at) {
    return at + 1 < text.length()
        && text.charAt(at) == '.'
        && Character.isDigit(text.charAt(at + 1));
  }

  private static boolean at(String text, int place, String word) {
    return text.regionMatches(true, place, word, 0, word.length());
  }

  private static void add(List<Found> found, String s, DesignationForm form, Matcher m) {
    int start = m.start();
    while (start < m.end() && s.charAt(start) == ' ') start++;
    if (overlaps(found, start, m.end())) return;
    String designation = form.designation().apply(m);
    String edition = m.group(form.year()) == null ? "" : m.group(form.year());
    found.add(
        new Found(
            start,
            m.end(),
            new Content.Standard(designation, edition),
            s.substring(start, m.end()).trim()));
    if (designation.startsWith("ANSI A") && designation.contains("."))
      continuation(found, s, m.end(), designation);
  }

  private static void continuation(List<Found> found, String s, int from, String designation) {
    Matcher m = CONTINUED.matcher(s.substring(from));
    if (!m.find()) return;
    String series =
        m.group(1) != null
            ? "ANSI A" + m.group(1)
            : designation.substring(0, designation.indexOf('.'));
    String next = series + "." + Integer.parseInt(m.group(2));
    int end = from + m.end();
    if (overlaps(found, from + m.start(), end)) return;
    found.add(new Found(from + m.start(), end, new Content.Standard(next, ""), m.group().trim()));
    continuation(found, s, end, next);
  }

  private static boolean overlaps(List<Found> found, int start, int end) {
    return found.stream().anyMatch(f -> start < f.end() && f.start() < end);
  }

  private static String national(Matcher m) {
    // Australia and New Zealand publish one text under either name.
    return m.group(1)
            .toUpperCase(Locale.ROOT)
            .replace("AS/NZS", "AS")
            .replace("ONORM", "\u00d6NORM")
        + " "
        + m.group(2)
        + (m.group(3) == null ? "" : "-" + m.group(3));
  }

  private static String international(Matcher m) {
    String body = m.group(1).toUpperCase(Locale.ROOT).replaceAll("\\s+", " ");
    // EN ISO 11600 and ISO 11600 are one text; ISO 13007 and EN 12004 are not.
    String publisher = body.equals("EN ISO") ? "ISO" : body;
    return publisher + " " + m.group(2) + (m.group(3) == null ? "" : "-" + m.group(3));
  }
}
