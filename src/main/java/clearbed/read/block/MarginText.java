package clearbed.read.block;

import clearbed.model.document.Block;
import clearbed.model.document.Document.GapFate;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Paragraph.Region;
import clearbed.model.document.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Page headers and footers: they come again on every page and say where one is. */
public final class MarginText {
  private MarginText() {}

  /** The paragraphs, and each row of a table as one. */
  public static List<Paragraph> lines(List<Block> blocks, String part, Region region) {
    List<Paragraph> lines = new ArrayList<>();
    for (Block block : blocks) {
      if (block instanceof Paragraph paragraph) lines.add(paragraph);
      if (!(block instanceof Table table)) continue;
      for (Table.Row row : table.rows()) {
        String text =
            row.cells().stream()
                .filter(c -> !c.continued())
                .map(c -> CleanText.line(c.text()))
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(" | "));
        Origin origin = table.origin().withText(text).withPart(part);
        if (!text.isEmpty()) lines.add(new Paragraph(origin, "", 0, -1, text, region));
      }
    }
    return lines;
  }

  /** Says of a header or footer that it is no requirement. */
  public static void tell(Gaps gaps, String document, String part, List<String> words) {
    if (words.isEmpty()) return;
    Origin origin = Origin.ofDocument(document).withPart(part).withText(String.join(" / ", words));
    gaps.add(origin, reason(part), GapFate.PASSED_OVER);
  }

  public static String reason(String part) {
    return "a page " + part + ": no requirement by itself";
  }
}
