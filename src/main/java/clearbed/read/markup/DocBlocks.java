package clearbed.read.markup;

import clearbed.model.document.Block;
import clearbed.model.document.Document.GapFate;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Paragraph.Region;
import clearbed.model.document.Table;
import clearbed.read.block.CleanText;
import clearbed.read.block.Gaps;
import clearbed.read.block.Remarks;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Puts what an old Word file says of its words to the blocks that the library made of it: notes and
 * comments come behind the paragraph that calls them, not behind the last one.
 */
final class DocBlocks {
  /** Blocks without words, such as pictures, may stand between. */
  private static final int FAR = 40;

  private final String document;
  private final List<Block> blocks;
  private final Gaps gaps = new Gaps();
  private final Map<Integer, List<Block>> behind = new HashMap<>();
  private int at = -1;

  DocBlocks(String document, List<Block> blocks) {
    this.document = document;
    this.blocks = new ArrayList<>(blocks);
  }

  Gaps gaps() {
    return gaps;
  }

  List<Block> with(DocMarks marks) {
    takeOff(marks.asides());
    for (DocMarks.Told told : marks.paragraphs()) {
      if (find(letters(told.shown())) && told.text().isCut()) cut(told);
      Origin place = place();
      gaps.add(place, told.text());
      List<Block> here = behind.computeIfAbsent(at, index -> new ArrayList<>());
      for (DocMarks.DocNote aside : told.asides()) add(aside, place, here);
    }
    List<Block> all = new ArrayList<>(behind.getOrDefault(-1, List.of()));
    for (int i = 0; i < blocks.size(); i++) {
      Block block = blocks.get(i);
      boolean empty = block instanceof Paragraph p && p.text().isEmpty();
      if (!empty) all.add(block);
      all.addAll(behind.getOrDefault(i, List.of()));
    }
    return all;
  }

  /** Takes words out of the block that the library took for text. */
  private void cut(DocMarks.Told told) {
    String shown = CleanText.line(told.shown());
    String left = CleanText.line(told.text().raw());
    Block block = blocks.get(at);
    if (block instanceof Paragraph p) {
      String words = CleanText.of(CleanText.line(p.text()).replace(shown, left));
      Origin origin = p.origin().withText(words);
      blocks.set(
          at, new Paragraph(origin, p.label(), p.headingLevel(), p.listLevel(), words, p.region()));
    } else if (block instanceof Table t) {
      List<Table.Row> rows = new ArrayList<>();
      for (Table.Row row : t.rows()) {
        List<Table.Cell> cells =
            row.cells().stream()
                .map(c -> c.withText(CleanText.of(CleanText.line(c.text()).replace(shown, left))))
                .toList();
        rows.add(row.withCells(cells));
      }
      blocks.set(at, t.withRows(rows));
    }
  }

  /** The library gives the lines of notes and comments behind the text, as text. */
  private void takeOff(List<DocMarks.DocNote> asides) {
    List<String> lines = new ArrayList<>();
    asides.forEach(aside -> aside.lines().forEach(line -> lines.add(letters(line))));
    for (int i = blocks.size() - 1; i >= 0 && !lines.isEmpty(); i--) {
      if (!(blocks.get(i) instanceof Paragraph p)) return;
      if (p.region() == Region.FOOTER || p.region() == Region.HEADER) continue;
      if (!lines.remove(letters(p.text()))) return;
      blocks.remove(i);
    }
  }

  /** Goes on to the block that holds the words, if there is one. */
  private boolean find(String words) {
    if (words.isEmpty()) return false;
    for (int i = Math.max(0, at); i < Math.min(blocks.size(), Math.max(0, at) + FAR); i++) {
      if (!holds(blocks.get(i), words)) continue;
      at = i;
      return true;
    }
    return false;
  }

  private static boolean holds(Block block, String words) {
    // What the library shows before it, such as a number, is no part of the paragraph.
    if (block instanceof Paragraph p) {
      return p.region() == Region.BODY && letters(p.text()).endsWith(words);
    }
    return block instanceof Table t
        && t.rows().stream()
            .anyMatch(r -> r.cells().stream().anyMatch(c -> letters(c.text()).contains(words)));
  }

  private Origin place() {
    Integer ordinal = at < 0 ? null : blocks.get(at).origin().paragraph();
    return new Origin(document, null, null, null, ordinal, null, null);
  }

  private void add(DocMarks.DocNote aside, Origin place, List<Block> here) {
    if (aside.lines().isEmpty()) return;
    String words = String.join("\n", aside.lines());
    Origin origin = place.withText(words).withPart(aside.part());
    boolean comment = aside.part().equals("comment");
    if (comment) gaps.add(origin, Remarks.COMMENT, GapFate.PASSED_OVER);
    here.add(new Paragraph(origin, "", 0, -1, words, comment ? Region.COMMENT : Region.NOTE));
  }

  private static String letters(String text) {
    return text.replaceAll("[^\\p{L}\\p{N}]+", "");
  }
}
