package clearbed.read;

import java.util.HashMap;
import java.util.Map;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** The comments of a sheet by cell address. */
final class SheetComments extends DefaultHandler {
  private static final int MOST = 100_000;

  /** Excel puts this before the words of a threaded comment, for programs that lack threads. */
  private static final String THREAD_MARK = "[Threaded comment]";

  private final Map<String, String> byCell = new HashMap<>();
  private final StringBuilder text = new StringBuilder();
  private String cell;
  private boolean inText;

  Map<String, String> byCell() {
    return byCell;
  }

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes) {
    if (name.equals("comment")) {
      cell = attributes.getValue("ref");
      text.setLength(0);
    }
    inText = name.equals("t");
  }

  @Override
  public void endElement(String uri, String name, String qName) {
    inText = false;
    if (!name.equals("comment") || cell == null || byCell.size() >= MOST) return;
    byCell.put(cell, words(ExcelText.of(text.toString())));
  }

  private static String words(String comment) {
    int start = comment.startsWith(THREAD_MARK) ? comment.indexOf("\nComment:") : -1;
    return start < 0 ? comment : comment.substring(start + "\nComment:".length()).strip();
  }

  @Override
  public void characters(char[] chars, int start, int length) {
    if (inText) text.append(chars, start, length);
  }
}
