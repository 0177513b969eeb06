package clearbed.read.markup;

import clearbed.read.block.CleanText;
import java.util.function.Consumer;

/**
 * Keeps the tables of RTF files, whose cells the library gives as paragraphs like any other: the
 * ends of rows and cells bear marks ({@link RtfMarks}), which are looked for in the text.
 */
final class RtfRows {
  static final char CELL = '\uE0C0';
  static final char ROW = '\uE0C1';
  static final char START = '\uE0C2';

  private final Consumer<String> paragraphs;
  private final Consumer<MarkupTable> tables;
  private final StringBuilder text = new StringBuilder();
  private MarkupTable table;
  private boolean inRow;

  RtfRows(Consumer<String> paragraphs, Consumer<MarkupTable> tables) {
    this.paragraphs = paragraphs;
    this.tables = tables;
  }

  /** True while rows of a table may still follow. */
  boolean isOpen() {
    return table != null;
  }

  /** Takes the words of a paragraph, or of several with the marks between them. */
  void take(String words) {
    for (int i = 0; i < words.length(); i++) {
      char c = words.charAt(i);
      switch (c) {
        case START -> startRow();
        case CELL -> endCell();
        case ROW -> endRow();
        default -> text.append(c);
      }
    }
    if (inRow) text.append('\n');
    else endParagraph();
  }

  void end() {
    inRow = false;
    endParagraph();
    endTable();
  }

  private void startRow() {
    // Each row is defined once before its cells and often once more after them.
    if (inRow) return;
    endParagraph();
    if (table == null) table = new MarkupTable();
    table.startRow();
    inRow = true;
  }

  private void endCell() {
    if (!inRow) startRow();
    table.startCell(1, 1);
    table.endCell(CleanText.of(text.toString()), "");
    text.setLength(0);
  }

  private void endRow() {
    if (table != null) table.endRow();
    inRow = false;
    text.setLength(0);
  }

  private void endParagraph() {
    String words = text.toString();
    text.setLength(0);
    if (words.isBlank()) return;
    endTable();
    paragraphs.accept(words);
  }

  private void endTable() {
    if (table != null) tables.accept(table);
    table = null;
  }
}
