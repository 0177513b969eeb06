package clearbed.read.sheet;

import clearbed.read.block.CleanText;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** The texts of a workbook, each kept once; few have a look of their own. */
final class SharedStrings extends DefaultHandler {
  private final List<String> strings = new ArrayList<>();
  private final Map<Integer, RichText> rich = new HashMap<>();
  private final TextRuns runs = new TextRuns();

  String at(int index) {
    return index >= 0 && index < strings.size() ? strings.get(index) : null;
  }

  /** The text with the looks of its parts, or null where it has none of its own. */
  RichText richAt(int index) {
    return rich.isEmpty() ? null : rich.get(index);
  }

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes) {
    if (name.equals("si")) runs.clear();
    else runs.start(name, attributes);
  }

  @Override
  public void endElement(String uri, String name, String qName) {
    runs.end(name);
    if (!name.equals("si")) return;
    RichText text = runs.text();
    if (text.hasOwnLook()) rich.put(strings.size(), text);
    strings.add(CleanText.of(text.plain()));
  }

  @Override
  public void characters(char[] chars, int start, int length) {
    runs.characters(chars, start, length);
  }
}
