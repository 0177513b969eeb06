package clearbed.read.sheet;

import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.read.block.CleanText;
import java.util.ArrayList;
import java.util.List;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** The words in text boxes and shapes that lie over a sheet. */
final class SheetDrawing extends DefaultHandler {
  private final String document;
  private final String sheet;
  private final List<Paragraph> notes = new ArrayList<>();
  private final StringBuilder words = new StringBuilder();
  private final StringBuilder field = new StringBuilder();
  private boolean inFrom;
  private int row;
  private int column;

  SheetDrawing(String document, String sheet) {
    this.document = document;
    this.sheet = sheet;
  }

  List<Paragraph> notes() {
    return notes;
  }

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes) {
    field.setLength(0);
    if (name.equals("from")) inFrom = true;
    if (name.equals("br")) words.append('\n');
    if (name.equals("txBody")) words.setLength(0);
  }

  @Override
  public void endElement(String uri, String name, String qName) {
    switch (name) {
      case "from" -> inFrom = false;
      case "row" -> row = inFrom ? number(row) : row;
      case "col" -> column = inFrom ? number(column) : column;
      case "t" -> words.append(field);
      case "p" -> words.append('\n');
      case "txBody" -> add();
      default -> {}
    }
  }

  private void add() {
    String text = CleanText.of(words.toString());
    if (text.isEmpty()) return;
    Origin origin = Origin.ofCell(document, sheet, Table.address(row + 1, column), text);
    notes.add(new Paragraph(origin, "", 0, -1, text, Paragraph.Region.NOTE));
  }

  private int number(int before) {
    try {
      return Math.min(1 << 20, Math.max(0, Integer.parseInt(field.toString().trim())));
    } catch (NumberFormatException e) {
      return before;
    }
  }

  @Override
  public void characters(char[] chars, int start, int length) {
    field.append(chars, start, length);
  }
}
