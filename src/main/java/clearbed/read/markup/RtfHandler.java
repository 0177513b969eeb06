package clearbed.read.markup;

import clearbed.model.document.Paragraph.Region;
import clearbed.read.block.Mark;
import java.util.ArrayDeque;
import java.util.Deque;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** Hands the text of a marked RTF file on, and the marks by what they mean. */
final class RtfHandler extends DefaultHandler {
  private static final Mark[] MARKS = Mark.values();

  private final MarkupBlocks blocks;
  private final Deque<Character> open = new ArrayDeque<>();

  RtfHandler(MarkupBlocks blocks) {
    this.blocks = blocks;
  }

  @Override
  public void startElement(String uri, String local, String name, Attributes attributes) {
    blocks.startElement(uri, local, name, attributes);
  }

  @Override
  public void endElement(String uri, String local, String name) {
    blocks.endElement(uri, local, name);
  }

  @Override
  public void characters(char[] chars, int start, int length) {
    int from = start;
    int end = start + length;
    for (int i = start; i < end; i++) {
      if (chars[i] < RtfRows.CELL || chars[i] > RtfMarks.END) continue;
      if (i > from) blocks.characters(chars, from, i - from);
      mark(chars[i]);
      from = i + 1;
    }
    if (end > from) blocks.characters(chars, from, end - from);
  }

  private void mark(char c) {
    switch (c) {
      case RtfRows.CELL, RtfRows.ROW, RtfRows.START -> blocks.structure(c);
      case RtfMarks.HEADER -> start(c, () -> blocks.startMargin(Region.HEADER));
      case RtfMarks.FOOTER -> start(c, () -> blocks.startMargin(Region.FOOTER));
      case RtfMarks.FOOTNOTE -> start(c, () -> blocks.startAside("footnote", Region.NOTE));
      case RtfMarks.ENDNOTE -> start(c, () -> blocks.startAside("endnote", Region.NOTE));
      case RtfMarks.COMMENT -> start(c, () -> blocks.startAside("comment", Region.COMMENT));
      case RtfMarks.END -> end();
      default -> {
        int number = c - RtfMarks.FIRST_MARK;
        blocks.mark(MARKS[number / 2], number % 2 == 0);
      }
    }
  }

  private void start(char mark, Runnable starting) {
    open.push(mark);
    starting.run();
  }

  private void end() {
    if (open.isEmpty()) return;
    char mark = open.pop();
    if (mark == RtfMarks.HEADER || mark == RtfMarks.FOOTER) blocks.endMargin();
    else blocks.endAside();
  }

  @Override
  public void ignorableWhitespace(char[] chars, int start, int length) {
    blocks.ignorableWhitespace(chars, start, length);
  }
}
