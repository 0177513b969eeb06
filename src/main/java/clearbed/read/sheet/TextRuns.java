package clearbed.read.sheet;

import clearbed.read.xml.Xml;
import org.xml.sax.Attributes;

/** Follows the elements of a text in an Excel file; reading aids are left out. */
final class TextRuns {
  private final StringBuilder words = new StringBuilder();
  private RichText runs = new RichText();
  private Boolean struck;
  private boolean inText;
  private boolean inPhonetic;
  private boolean inLook;

  void clear() {
    words.setLength(0);
    runs = new RichText();
    struck = null;
    inText = false;
    inPhonetic = false;
    inLook = false;
  }

  void start(String name, Attributes attributes) {
    switch (name) {
      case "t" -> inText = !inPhonetic;
      case "rPh" -> inPhonetic = true;
      case "rPr" -> {
        inLook = true;
        struck = false;
      }
      case "strike" -> {
        if (inLook) struck = Xml.isOn(attributes);
      }
      default -> {}
    }
  }

  void end(String name) {
    switch (name) {
      case "t" -> inText = false;
      case "rPh" -> inPhonetic = false;
      case "rPr" -> inLook = false;
      case "r", "si", "is" -> endRun();
      default -> {}
    }
  }

  private void endRun() {
    runs.add(ExcelText.unescaped(words.toString()), struck);
    words.setLength(0);
    struck = null;
  }

  void characters(char[] chars, int start, int length) {
    if (inText) words.append(chars, start, length);
  }

  /** To be asked at its end. */
  RichText text() {
    return runs;
  }
}
