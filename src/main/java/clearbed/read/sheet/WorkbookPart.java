package clearbed.read.sheet;

import java.util.ArrayList;
import java.util.List;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** The list of sheets of a workbook. */
final class WorkbookPart extends DefaultHandler {
  private final List<ListedSheet> sheets = new ArrayList<>();
  private boolean from1904;

  /**
   * @param link relationship id of its part
   * @param state {@code hidden}, {@code veryHidden}, or else visible
   */
  record ListedSheet(String name, String link, String state) {}

  List<ListedSheet> sheets() {
    return sheets;
  }

  boolean from1904() {
    return from1904;
  }

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes) {
    if (name.equals("sheet")) {
      String state = attributes.getValue("state");
      sheets.add(new ListedSheet(attributes.getValue("name"), link(attributes), state));
    }
    if (name.equals("workbookPr")) {
      String flag = attributes.getValue("date1904");
      from1904 = "1".equals(flag) || "true".equals(flag);
    }
  }

  private static String link(Attributes attributes) {
    for (int i = 0; i < attributes.getLength(); i++) {
      if (attributes.getLocalName(i).equals("id") && !attributes.getURI(i).isEmpty()) {
        return attributes.getValue(i);
      }
    }
    return null;
  }
}
