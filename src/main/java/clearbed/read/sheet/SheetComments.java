package clearbed.read.sheet;

import clearbed.mark.OwnNotes;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
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
  private final List<String> authors = new ArrayList<>();
  private String cell;
  private String author;
  private boolean inText;

  Map<String, String> byCell() {
    return byCell;
  }

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes) {
    if (name.equals("comment")) {
      cell = attributes.getValue("ref");
      author = attributes.getValue("authorId");
    }
    if (name.equals("comment") || name.equals("author")) text.setLength(0);
    inText = name.equals("t") || name.equals("author");
  }

  @Override
  public void endElement(String uri, String name, String qName) {
    inText = false;
    if (name.equals("author")) authors.add(text.toString().strip());
    if (!name.equals("comment") || cell == null || byCell.size() >= MOST) return;
    String words = words(ExcelText.of(text.toString()));
    byCell.put(cell, OwnNotes.signed(words, author()));
  }

  private String author() {
    for (int i = 0; i < authors.size(); i++) {
      if (Integer.toString(i).equals(author)) return authors.get(i);
    }
    return null;
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
