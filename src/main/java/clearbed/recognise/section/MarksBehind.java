package clearbed.recognise.section;

import clearbed.model.Paragraph;
import clearbed.recognise.statement.Tags;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Items that end with their mark: "Glass mosaic, pearl, steam room [WC-14]". */
public final class MarksBehind {
  private static final Pattern BEHIND =
      Pattern.compile("(.{6,}?)\\s*\\[([^\\[\\]]{2,10})\\]\\.?\\s*");

  /** Typed before an item. */
  public static final String BULLET = "[*\u2022\u00b7-]\\s+";

  private static final Pattern OPENING_BULLET = Pattern.compile("^\\s*" + BULLET);

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
    String text = p.text().stripTrailing();
    if (!text.endsWith("]") && !text.endsWith("].")) return "";
    Matcher m = BEHIND.matcher(p.text());
    return m.matches() && Tags.isMark(m.group(2)) ? m.group(2) : "";
  }

  private static Paragraph opening(Paragraph p, String mark) {
    String words = p.text().substring(0, p.text().lastIndexOf('[')).strip();
    return new Paragraph(
        p.origin(),
        p.label(),
        p.headingLevel(),
        p.listLevel(),
        mark + ": " + OPENING_BULLET.matcher(words).replaceFirst(""),
        p.region());
  }
}
