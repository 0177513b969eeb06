package clearbed.read;

import java.util.ArrayList;
import java.util.List;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** The texts of a workbook, each kept once; formatting and reading aids are left out. */
final class SharedStrings extends DefaultHandler {
  private final List<String> strings = new ArrayList<>();
  private final StringBuilder text = new StringBuilder();
  private boolean inText;
  private boolean inPhonetic;

  String at(int index) {
    return index >= 0 && index < strings.size() ? strings.get(index) : null;
  }

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes) {
    switch (name) {
      case "si" -> text.setLength(0);
      case "t" -> inText = !inPhonetic;
      case "rPh" -> inPhonetic = true;
      default -> {}
    }
  }

  @Override
  public void endElement(String uri, String name, String qName) {
    switch (name) {
      case "si" -> strings.add(ExcelText.of(text.toString()));
      case "t" -> inText = false;
      case "rPh" -> inPhonetic = false;
      default -> {}
    }
  }

  @Override
  public void characters(char[] chars, int start, int length) {
    if (inText) text.append(chars, start, length);
  }
}
