package clearbed.read.word;

import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph.Region;
import clearbed.read.block.Mark;
import java.util.Set;

/**
 * What stands around a paragraph of a Word document.
 *
 * @param anchor ordinal for paragraphs outside the body: where their note or text box hangs, or
 *     null
 * @param cell address, or null outside tables
 * @param part as in {@link Origin#part()}
 * @param region of paragraphs
 * @param marks of rows and tracked changes
 */
record Around(Integer anchor, String cell, String part, Region region, Set<Mark> marks) {
  Around marked(Mark mark) {
    return mark == null ? this : new Around(anchor, cell, part, region, WordText.with(marks, mark));
  }

  Around inCell(String address) {
    return new Around(anchor, address, part, region, marks);
  }
}
