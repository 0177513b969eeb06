package clearbed.recognise.section;

import clearbed.model.document.Paragraph;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.Tags;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Items that end with their mark: "Glass mosaic, pearl, steam room [WC-14]", "... (VG/1)". */
public final class MarksBehind {
  private static final Pattern BEHIND =
      Pattern.compile(
          "(.{6,}?)\\s*[\\[({\u00ab\u201c]\\s?([^\\[\\](){}]{2,10}?)\\s?[\\])}\u00bb\u201d]\\.?\\s*",
          Pattern.DOTALL);

  private static final String CLOSING = "])}\u00bb\u201d";

  /** "VG/1", "MV-a". */
  private static final Pattern CODE =
      Pattern.compile("\\p{Lu}{1,5}[-./](?:\\d{1,3}\\p{Ll}?|\\p{Ll})");

  /** Typed before an item. */
  public static final String BULLET = "[*\u2022\u00b7-]\\s+";

  private static final Pattern OPENING_BULLET =
      Pattern.compile("^\\s*(?:" + BULLET + "|\\d{1,2}[.)]\\s+)");

  /** Round brackets stand behind much else; in characters. */
  private static final int SHORTEST_IN_ROUND = 60;

  /** One mark behind a paragraph may be a reference. */
  private static final int FEWEST = 2;

  private MarksBehind() {}

  /** The same paragraphs; where several end with a mark, each such opens with it. */
  public static List<Paragraph> before(List<Paragraph> paragraphs) {
    List<Paragraph> out = new ArrayList<>();
    int marked = 0;
    for (Paragraph p : paragraphs) {
      String mark = mark(p);
      if (!mark.isEmpty()) marked++;
      out.add(mark.isEmpty() ? p : opening(p, mark));
    }
    return marked < FEWEST ? paragraphs : out;
  }

  /** The mark that a paragraph ends with; empty where it ends with none. */
  public static String mark(Paragraph p) {
    return mark(p.text());
  }

  /** The same of a cell. */
  public static String mark(String words) {
    if (!isClosed(words)) return "";
    Matcher m = BEHIND.matcher(words);
    if (!m.matches()) return "";
    String mark = m.group(2);
    // "110 GLASS MOSAIC TO SHOWERS (WF-04)" is the title of an article, and no item.
    boolean title = words.stripTrailing().endsWith(")") && words.length() < SHORTEST_IN_ROUND;
    if (title) return "";
    boolean known = Tags.isMark(mark) || CODE.matcher(mark).matches();
    return known && Citations.find(mark).isEmpty() ? mark : "";
  }

  /** Few texts are. */
  private static boolean isClosed(String words) {
    int last = words.length() - 1;
    while (last >= 0 && Character.isWhitespace(words.charAt(last))) last--;
    if (last > 0 && words.charAt(last) == '.') last--;
    return last >= 0 && CLOSING.indexOf(words.charAt(last)) >= 0;
  }

  private static Paragraph opening(Paragraph p, String mark) {
    String words = p.text().substring(0, p.text().lastIndexOf(mark) - 1).strip();
    return new Paragraph(
        p.origin(),
        p.label(),
        p.headingLevel(),
        p.listLevel(),
        mark + ": " + OPENING_BULLET.matcher(words).replaceFirst(""),
        p.region());
  }
}
