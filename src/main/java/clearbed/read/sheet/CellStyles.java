package clearbed.read.sheet;

import clearbed.read.xml.Xml;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.poi.ss.usermodel.BuiltinFormats;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/**
 * What a workbook's styles say of a cell: how its figure is shown, whether it is struck through.
 */
final class CellStyles extends DefaultHandler {
  private final Map<Integer, String> codes = new HashMap<>();
  private final List<Integer> formats = new ArrayList<>();
  private final BitSet struckFonts = new BitSet();
  private final BitSet struck = new BitSet();
  private final DataFormatter formatter = new DataFormatter(Locale.US);
  private boolean inCells;
  private boolean inFonts;
  private int font = -1;

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes) {
    switch (name) {
      case "numFmt" -> {
        String code = attributes.getValue("formatCode");
        // The same element stands in conditional formats, where it lacks the code at times.
        if (code != null) codes.putIfAbsent(number(attributes, "numFmtId"), code);
      }
      // Conditional formats have fonts, too, outside this list.
      case "fonts" -> inFonts = true;
      case "font" -> font++;
      case "strike" -> {
        if (inFonts && Xml.isOn(attributes)) struckFonts.set(font);
      }
      case "cellXfs" -> inCells = true;
      case "xf" -> {
        if (!inCells) return;
        if (struckFonts.get(Math.max(0, number(attributes, "fontId")))) struck.set(formats.size());
        formats.add(number(attributes, "numFmtId"));
      }
      default -> {}
    }
  }

  @Override
  public void endElement(String uri, String name, String qName) {
    if (name.equals("cellXfs")) inCells = false;
    if (name.equals("fonts")) inFonts = false;
  }

  /** Whether a line is drawn through the words of cells of a style, unless they say otherwise. */
  boolean isStruck(int style) {
    return style >= 0 && struck.get(style);
  }

  /**
   * @param style index of the cell's style
   * @param value as stored
   * @param from1904 true when days are counted from 1904
   */
  String shown(int style, String value, boolean from1904) {
    int id = style >= 0 && style < formats.size() ? formats.get(style) : 0;
    if (id == 0 && isShownAsStored(value)) return value;
    try {
      double number = Double.parseDouble(value);
      return formatter.formatRawCellContents(number, id, code(id), from1904);
    } catch (RuntimeException e) {
      // No number, or a format beyond the library: the stored value is the best there is.
      return value;
    }
  }

  private String code(int id) {
    String own = codes.get(id);
    if (own != null) return own;
    String builtin = BuiltinFormats.getBuiltinFormat(id);
    return builtin == null ? "General" : builtin;
  }

  /** The general format shows up to eleven characters; formatting millions of them takes long. */
  private static boolean isShownAsStored(String value) {
    int length = value.length();
    if (length == 0 || length > 10) return false;
    int point = -1;
    for (int i = 0; i < length; i++) {
      char c = value.charAt(i);
      if (c == '.' && point < 0 && i > 0) point = i;
      else if (c < '0' || c > '9') return false;
    }
    return point < 0 || value.charAt(length - 1) != '0' && point < length - 1;
  }

  private static int number(Attributes attributes, String name) {
    String value = attributes.getValue(name);
    try {
      return value == null ? 0 : Integer.parseInt(value.trim());
    } catch (NumberFormatException e) {
      return 0;
    }
  }
}
