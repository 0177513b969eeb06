package clearbed.report.workbook.layout;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.formula.FormulaParseException;
import org.apache.poi.ss.formula.FormulaParser;
import org.apache.poi.ss.formula.FormulaRenderer;
import org.apache.poi.ss.formula.FormulaType;
import org.apache.poi.ss.formula.SharedFormula;
import org.apache.poi.ss.formula.ptg.Ptg;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.util.XMLHelper;
import org.apache.poi.xssf.model.SharedStrings;
import org.apache.poi.xssf.model.StylesTable;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFEvaluationWorkbook;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;

/**
 * Reads a sheet of a saved workbook row by row with its formulas (ECMA-376 part 1, 18.3.1), as an
 * open sheet takes many times the memory of its file.
 */
public final class SheetStream implements SheetRowSource {
  private final InputStream part;
  private final XMLStreamReader xml;
  private final SharedStrings strings;
  private final StylesTable styles;
  private final XSSFEvaluationWorkbook names;
  private final Map<Integer, Master> shared = new HashMap<>();
  private int row = -1;
  private int column;

  /** A formula that other cells share, and where it stands. */
  private record Master(String formula, CellAddress at) {}

  /**
   * @param names the workbook, whose sheets and names formulas speak of; its rows are not needed
   */
  public SheetStream(
      InputStream part, SharedStrings strings, StylesTable styles, XSSFEvaluationWorkbook names)
      throws IOException {
    this.part = part;
    this.names = names;
    this.strings = strings;
    this.styles = styles;
    try {
      this.xml = XMLHelper.newXMLInputFactory().createXMLStreamReader(part);
    } catch (XMLStreamException damaged) {
      throw new IOException("a sheet cannot be read: " + damaged.getMessage(), damaged);
    }
  }

  @Override
  public SheetRow next() throws IOException {
    try {
      while (xml.hasNext()) {
        if (xml.next() != XMLStreamConstants.START_ELEMENT || !isAt("row")) continue;
        SheetRow found = row();
        if (!found.cells().isEmpty()) return found;
      }
      return null;
    } catch (XMLStreamException | IllegalArgumentException damaged) {
      throw new IOException("a sheet cannot be read: " + damaged.getMessage(), damaged);
    }
  }

  private boolean isAt(String element) {
    return xml.getLocalName().equals(element);
  }

  private SheetRow row() throws XMLStreamException {
    String number = xml.getAttributeValue(null, "r");
    row = number == null ? row + 1 : Integer.parseInt(number) - 1;
    column = -1;
    List<CellContent> cells = new ArrayList<>();
    while (!(xml.next() == XMLStreamConstants.END_ELEMENT && isAt("row"))) {
      if (!xml.isStartElement() || !isAt("c")) continue;
      CellContent cell = cell();
      if (cell != null) cells.add(cell);
    }
    return new SheetRow(row, false, cells);
  }

  private CellContent cell() throws XMLStreamException {
    String address = xml.getAttributeValue(null, "r");
    column = address == null ? column + 1 : new CellAddress(address).getColumn();
    String type = xml.getAttributeValue(null, "t");
    String look = xml.getAttributeValue(null, "s");
    int style = look == null ? 0 : Integer.parseInt(look);
    String formula = null;
    String value = "";
    StringBuilder inline = new StringBuilder();
    while (!(xml.next() == XMLStreamConstants.END_ELEMENT && isAt("c"))) {
      if (!xml.isStartElement()) continue;
      switch (xml.getLocalName()) {
        case "f" -> formula = formula();
        case "v" -> value = xml.getElementText();
        case "t" -> inline.append(xml.getElementText());
        // How the word is spoken is no part of it.
        case "rPh" -> skip("rPh");
        default -> {}
      }
    }
    if (formula != null) return new CellContent(column, CellContent.Type.FORMULA, formula, style);
    return content(type == null ? "n" : type, value, inline.toString(), style);
  }

  private void skip(String element) throws XMLStreamException {
    while (!(xml.next() == XMLStreamConstants.END_ELEMENT && isAt(element))) continue;
  }

  private CellContent content(String type, String value, String inline, int style) {
    return switch (type) {
      case "s" -> {
        String shared = strings.getItemAt(Integer.parseInt(value.strip())).getString();
        yield CellContent.text(column, shared, style);
      }
      case "inlineStr" -> CellContent.text(column, decoded(inline), style);
      case "str" -> CellContent.text(column, decoded(value), style);
      case "b" -> CellContent.text(column, value.strip().equals("1") ? "true" : "false", style);
      case "n" ->
          value.isBlank()
              ? null
              : CellContent.number(column, Double.parseDouble(value), isDate(style), style);
      default -> CellContent.text(column, value, style);
    };
  }

  /** Characters that XML does not take are written {@code _x0007_}. */
  private static String decoded(String text) {
    return text.contains("_x") ? new XSSFRichTextString(text).getString() : text;
  }

  private boolean isDate(int style) {
    if (style >= styles.getNumCellStyles()) return false;
    XSSFCellStyle look = styles.getStyleAt(style);
    return DateUtil.isADateFormat(look.getDataFormat(), look.getDataFormatString());
  }

  private String formula() throws XMLStreamException {
    boolean isShared = "shared".equals(xml.getAttributeValue(null, "t"));
    String index = xml.getAttributeValue(null, "si");
    String text = xml.getElementText();
    if (!isShared || index == null) return text;
    CellAddress here = new CellAddress(row, column);
    if (!text.isEmpty()) shared.put(Integer.valueOf(index), new Master(text, here));
    Master master = shared.get(Integer.valueOf(index));
    return master == null || !text.isEmpty() ? text : moved(master, here);
  }

  /** The formula of another cell as it reads in this one. */
  private String moved(Master master, CellAddress here) {
    int down = here.getRow() - master.at().getRow();
    int across = here.getColumn() - master.at().getColumn();
    try {
      Ptg[] parts = FormulaParser.parse(master.formula(), names, FormulaType.CELL, 0);
      SharedFormula filled = new SharedFormula(SpreadsheetVersion.EXCEL2007);
      return FormulaRenderer.toFormulaString(
          names, filled.convertSharedFormulas(parts, down, across));
    } catch (FormulaParseException unforeseen) {
      return master.formula();
    }
  }

  @Override
  public void close() throws IOException {
    part.close();
  }
}
