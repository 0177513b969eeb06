package clearbed.recognise.statement.code;

import clearbed.recognise.text.UnitWords;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * What has the form of a tag in a text and is none: classes of materials, figures, numbers of
 * clauses and methods, words in capitals.
 */
final class TagLookalikes {
  // In capitals "AT 16 FT" looks like a mark.
  private static final Pattern NO_MARK =
      Pattern.compile(
          "(?:AT|SET|TO|IN|OF|FOR|AND|OR|BY|PER|MIN|MAX|NO|THE|ON|IS|AS|ALL|WITH|FROM|OVER|THAN|UNDER|EACH|EVERY|USE|CLASS|TYPE|PART|STEP|LEVEL|SHEET|NOTE|ROOM|ITEM|ABOUT|AFTER|UNTIL|CURE|WAIT|GROUT|FIRST|LAST|ARE|NOT|ONLY|WHEN|BE|HOLD|KEEP|PAST) .*");
  // Adhesives, grouts and sealants of ISO 13007 and ISO 11600 have classes that look like marks.
  private static final Pattern ISO_CLASS =
      Pattern.compile(
          "C[12][A-Z]{0,2}\\d?|[RD][12][A-Z]?|CG[12][A-Z]?|S[12]|[FG][- ]?\\d{1,2}[A-Z]?");
  private static final Pattern ISO_CLASSES =
      Pattern.compile(
          "\\b(?:12004|13007|13888|11600)\\b|\\bclass\\b|\\bdeformab", Pattern.CASE_INSENSITIVE);

  /** As the handbook of installation methods names its own. */
  private static final Pattern METHOD = Pattern.compile("[A-Z]{1,3}\\d{3}[A-Z]?");

  private static final Pattern OF_METHODS =
      Pattern.compile(
          "\\b(?:TCNA|Hdbk\\.?|handbook|methods?)[, ]{1,2}(?:details? )?(?:[A-Z]{1,3}\\d{3}[A-Z]?(?:, | and | or |, and |, or ))*$",
          Pattern.CASE_INSENSITIVE);

  /** Movement joints among them, wherever they are named. */
  private static final String JOINTS = "EJ";

  private static final int METHODS_REACH = 60;

  // So have the tests of slip: "slip: R11 to EN 16165".
  private static final Pattern SLIP_CLASS = Pattern.compile("R ?(?:9|1[0-3])|P[0-5]|V[468]");
  private static final Pattern SLIP =
      Pattern.compile(
          "\\b(?:16165|51097|51130|4586|slip|ramp|pendulum)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern CLAUSE_BEHIND = Pattern.compile("/(?:\\d{3}(?!\\d)|\\d{1,2}\\.\\d)");
  private static final Pattern MEASURED =
      Pattern.compile("\\s?(?:" + UnitWords.PATTERN + ")(?![A-Za-z])", Pattern.CASE_INSENSITIVE);
  private static final Pattern PUBLISHER =
      Pattern.compile("(?i).*(?:ansi|astm|iso|en|bs|tcna|ul)[ /-]*");

  /** "To Part K, clause K1". */
  private static final Pattern OF_CLAUSES =
      Pattern.compile(
          "\\b(?:clauses?|articles?|paras?\\.?|paragraphs?) (?:no\\.? ?)?$",
          Pattern.CASE_INSENSITIVE);

  private static final int CLAUSES_REACH = 16;

  private static final Pattern DECIMALS = Pattern.compile(",\\d{1,3}(?![\\d,])(?!, ?[A-Z])");

  private static final Pattern LABEL = Pattern.compile("(?: \\([^()]{2,40}\\))?:");

  /** A class code is no longer, in characters. */
  private static final int CODE = 12;

  private final String text;

  /** Looked for once, and when asked. */
  private Boolean iso;

  private Boolean slip;

  TagLookalikes(String text) {
    this.text = text;
  }

  private boolean ofIso() {
    if (iso == null) iso = ISO_CLASSES.matcher(text).find();
    return iso;
  }

  private boolean ofSlip() {
    if (slip == null) slip = SLIP.matcher(text).find();
    return slip;
  }

  /**
   * @param m a place in the text that has the form of a tag
   */
  boolean isOne(MatchResult m) {
    // "S1 (walls): neutral silicone, ISO 11600 ..." is the mark of a sealant, however it looks.
    boolean label =
        m.start() == 0 && LABEL.matcher(text).region(m.end(), text.length()).lookingAt();
    boolean isoClass = !label && ISO_CLASS.matcher(m.group()).matches() && ofIso();
    boolean slipClass = SLIP_CLASS.matcher(m.group()).matches() && ofSlip();
    String before = text.substring(Math.max(0, m.start() - 6), m.start());
    // "Build a 4 ft panel", in capitals.
    boolean measured =
        m.group().indexOf(' ') > 0
            && MEASURED.matcher(text).region(m.end(), text.length()).lookingAt();
    // "DCOF 0,36" is a figure with a comma before its decimals.
    boolean decimal =
        m.group().indexOf(' ') > 0
            && DECIMALS.matcher(text).region(m.end(), text.length()).lookingAt();
    // "T20/110" is the number of a clause.
    boolean clause =
        CLAUSE_BEHIND.matcher(text).region(m.end(), text.length()).lookingAt()
            || OF_CLAUSES
                .matcher(text.substring(Math.max(0, m.start() - CLAUSES_REACH), m.start()))
                .find();
    // "JOINT 1/16 IN." is a figure.
    boolean fraction =
        m.group().indexOf(' ') > 0
            && m.end() + 1 < text.length()
            && text.charAt(m.end()) == '/'
            && Character.isDigit(text.charAt(m.end() + 1));
    // "By method W244C" is a page of the handbook.
    boolean method =
        METHOD.matcher(m.group()).matches()
            && (m.group().startsWith(JOINTS)
                || OF_METHODS
                    .matcher(text.substring(Math.max(0, m.start() - METHODS_REACH), m.start()))
                    .find());
    if (method) return true;
    int from = Math.max(0, m.start() - CODE);
    String near = text.substring(from, Math.min(text.length(), m.end() + CODE));
    boolean code =
        ClassCodes.unmistakable(near).stream()
            .anyMatch(c -> from + c.start() < m.end() && m.start() < from + c.end());
    return isoClass
        || slipClass
        || measured
        || decimal
        || clause
        || code
        || fraction
        || NO_MARK.matcher(m.group()).matches()
        || PUBLISHER.matcher(before).matches();
  }
}
