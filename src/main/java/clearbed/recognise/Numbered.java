package clearbed.recognise;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The numbers that paragraphs and cells of a document are called by, whatever they say. */
final class Numbered {
  /** A list of more counts things, not clauses. */
  private static final int MOST = 3_000;

  private static final Pattern OPENING =
      Pattern.compile(
          "\\s*((?:\\d{1,3}[A-Z]?/)?[A-Z]{0,4}[-.]?\\d{1,5}[A-Z]?(?:[-./]\\w{1,5}){0,4})[.:)]*(?=\\s|$)");

  private static final Pattern FIGURE = Pattern.compile("\\d+");

  private Numbered() {}

  static List<String> in(Document document) {
    Set<String> out = new LinkedHashSet<>();
    for (Block block : document.blocks()) {
      if (block instanceof Paragraph p) {
        add(p.label(), out);
        add(p.text(), out);
      } else if (block instanceof Table table) {
        for (Table.Row row : table.rows()) {
          if (out.size() >= MOST) break;
          for (Table.Cell cell : row.cells()) add(cell.text(), out);
        }
      }
    }
    return List.copyOf(out);
  }

  private static void add(String text, Set<String> out) {
    if (text == null || out.size() >= MOST) return;
    Matcher m = OPENING.matcher(text);
    // A figure by itself may be any: an area, a price.
    if (m.lookingAt() && !FIGURE.matcher(m.group(1)).matches()) out.add(m.group(1));
  }
}
