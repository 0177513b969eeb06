package clearbed.read.block;

import clearbed.model.document.Block;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Document.GapFate;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Paragraph.Region;
import clearbed.model.document.Table;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The blocks of a text in the making. Each paragraph and each table counts one in the ordinals,
 * what hangs on them counts as they do, and what stands in the margins has no number.
 */
public final class BlockList {
  private final String document;
  private final List<Block> blocks = new ArrayList<>();
  private final Gaps gaps = new Gaps();
  private final Map<String, List<String>> margins = new LinkedHashMap<>();
  private final Set<String> marginTexts = new HashSet<>();
  private int ordinal;

  /** Words that hang on a paragraph or a cell. */
  public record Aside(String part, Region region, MarkedText words) {}

  public BlockList(String document) {
    this.document = document;
  }

  public List<Block> blocks() {
    return blocks;
  }

  public List<Gap> gaps() {
    margins.forEach((part, words) -> MarginText.tell(gaps, document, part, words));
    margins.clear();
    return gaps.list();
  }

  public void gap(String reason) {
    gaps.add(Origin.ofDocument(document), reason);
  }

  public int ordinal() {
    return ordinal;
  }

  /** Of the paragraph or the table that comes next. */
  public Origin nextPlace() {
    return new Origin(document, null, null, null, ordinal + 1, null, null);
  }

  /** What the marks on words of a paragraph or a cell say. */
  public void tell(Origin place, MarkedText text) {
    gaps.add(place, text);
  }

  /** A paragraph of which nothing is left counts, too. */
  public void countEmpty() {
    ordinal++;
  }

  public void paragraph(String words, String label, int heading, int level, Region region) {
    if (isMargin(region)) {
      inMargin(words, region);
      return;
    }
    Origin origin = nextPlace().withText(words);
    ordinal++;
    blocks.add(new Paragraph(origin, label, heading, level, words, region));
  }

  public void table(Table table, Region region) {
    if (isMargin(region)) {
      MarginText.lines(List.of(table), "", region).forEach(p -> inMargin(p.text(), region));
      return;
    }
    ordinal++;
    blocks.add(table);
  }

  private static boolean isMargin(Region region) {
    return region == Region.HEADER || region == Region.FOOTER;
  }

  private void inMargin(String words, Region region) {
    String part = region == Region.HEADER ? "header" : "footer";
    if (!marginTexts.add(part + words)) return;
    Origin origin = Origin.ofDocument(document).withText(words).withPart(part);
    blocks.add(new Paragraph(origin, "", 0, -1, words, region));
    margins.computeIfAbsent(part, p -> new ArrayList<>()).add(words);
  }

  /** Comments on a cell, which go into it; notes are left, for they follow the table. */
  public String remarks(Origin cell, List<Aside> waiting) {
    List<String> remarks = new ArrayList<>();
    for (Aside aside : List.copyOf(waiting)) {
      if (aside.region() != Region.COMMENT) continue;
      waiting.remove(aside);
      String words = CleanText.of(aside.words().raw());
      if (words.isEmpty()) continue;
      remarks.add(words);
      gaps.add(cell.withText(words).withPart(aside.part()), Remarks.COMMENT, GapFate.PASSED_OVER);
    }
    return String.join("\n", remarks);
  }

  /** What hung on the paragraph or the table that has ended; none of it waits any longer. */
  public void tell(List<Aside> waiting) {
    Integer place = ordinal == 0 ? null : (Integer) ordinal;
    for (Aside aside : waiting) {
      Origin origin = new Origin(document, null, null, null, place, null, null, aside.part());
      gaps.add(origin, aside.words());
      String words = CleanText.of(aside.words().raw());
      if (words.isEmpty()) continue;
      Origin at = origin.withText(words);
      if (aside.region() == Region.COMMENT) gaps.add(at, Remarks.COMMENT, GapFate.PASSED_OVER);
      blocks.add(new Paragraph(at, "", 0, -1, words, aside.region()));
    }
    waiting.clear();
  }
}
