package clearbed.report.workbook.cell;

import clearbed.report.wording.SafeText;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.HashMap;
import java.util.Map;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFHyperlink;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The one writer of cells: text stays text, whatever it begins with. */
public final class Pen {
  /** Each link is kept in memory to the end, and Excel takes no more than 65,530 in a sheet. */
  private static final int MOST_LINKS = 10_000;

  private static final String NO_LINK = "see left";

  private static final Styles.Look COUNT_LINK = Styles.Look.COUNT_LINK;

  private final XSSFWorkbook book;
  private final Styles styles;

  /** The sheet's own search for the link of a cell goes through all of them. */
  private final Map<CellAddress, XSSFHyperlink> existing = new HashMap<>();

  private int links;

  public Pen(XSSFWorkbook book) {
    this.book = book;
    this.styles = new Styles(book);
  }

  public Styles styles() {
    return styles;
  }

  /** Turns to a sheet: each has a link allowance of its own, and the links that it came with. */
  public void turnTo(XSSFSheet sheet) {
    existing.clear();
    for (XSSFHyperlink link : sheet.getHyperlinkList()) {
      existing.put(new CellAddress(link.getCellRef()), link);
    }
    links = existing.size();
  }

  public Cell text(Row row, int column, String text, Styles.Look look) {
    return put(row, column, new Datum.Text(text), look);
  }

  public Cell count(Row row, int column, int number) {
    return put(row, column, new Datum.Count(number), Styles.Look.COUNT);
  }

  /** Writes a number that leads to rows of this workbook, as far as there may be links. */
  public Cell jump(Row row, int column, int number, String location) {
    boolean linked = location != null && number > 0 && links < MOST_LINKS;
    Cell cell = put(row, column, new Datum.Count(number), linked ? COUNT_LINK : Styles.Look.COUNT);
    if (linked) lead(cell, location);
    return cell;
  }

  /** Writes words that lead to rows of this workbook, as far as there may be links. */
  public Cell jump(Row row, int column, String words, String location) {
    boolean linked = location != null && links < MOST_LINKS;
    Cell cell = text(row, column, words, linked ? Styles.Look.LINK : Styles.Look.STRONG);
    if (linked) lead(cell, location);
    return cell;
  }

  private void lead(Cell cell, String location) {
    XSSFHyperlink link = book.getCreationHelper().createHyperlink(HyperlinkType.DOCUMENT);
    link.setAddress(location);
    cell.setHyperlink(link);
    links++;
  }

  /** Writes into the cell; a cell that is already there keeps the looks that people gave it. */
  public Cell put(Row row, int column, Datum datum, Styles.Look look) {
    Cell cell = row.getCell(column);
    if (cell == null) {
      cell = row.createCell(column);
      cell.setCellStyle(styles.get(look));
    }
    set(cell, datum);
    return cell;
  }

  private void set(Cell cell, Datum datum) {
    if (datum instanceof Datum.Count count) cell.setCellValue(count.number());
    else if (datum instanceof Datum.Day day) setDay(cell, day.date());
    else if (datum instanceof Datum.Blank) cell.setBlank();
    else if (datum instanceof Datum.Link link) setLink(cell, link);
    else setText(cell, datum.shown());
  }

  private void setDay(Cell cell, String date) {
    try {
      if (date.isEmpty()) cell.setBlank();
      else cell.setCellValue(LocalDate.parse(date));
    } catch (DateTimeParseException odd) {
      setText(cell, SafeText.of(date));
    }
  }

  private void setText(Cell cell, String safe) {
    // The library would leave the old text in a cell that has it inline, as rows have that went to
    // disk.
    if (cell instanceof XSSFCell old && old.getCTCell().isSetIs()) cell.setBlank();
    if (safe.isEmpty()) cell.setBlank();
    else cell.setCellValue(safe);
    if (SafeText.looksLikeFormula(safe) && !cell.getCellStyle().getQuotePrefixed()) {
      cell.setCellStyle(styles.quoted(cell.getCellStyle()));
    }
  }

  private void setLink(Cell cell, Datum.Link target) {
    XSSFHyperlink old = existing.get(cell.getAddress());
    if (old != null && leads(old, target)) return;
    if (old != null) cell.removeHyperlink();
    boolean full = target.address() != null && links >= MOST_LINKS;
    setText(cell, full ? NO_LINK : target.shown());
    if (target.address() == null || full) return;
    XSSFHyperlink link = book.getCreationHelper().createHyperlink(HyperlinkType.FILE);
    link.setAddress(target.address());
    if (target.location() != null) link.setLocation(target.location());
    cell.setHyperlink(link);
    links++;
  }

  /** True for the words that a cell with a link of ours can hold. */
  public static boolean isOfLink(String text) {
    return text.equals(DocumentLinks.OPEN) || text.equals(NO_LINK);
  }

  /** The address of a link that was read has its location joined on. */
  private static boolean leads(XSSFHyperlink link, Datum.Link target) {
    String location = target.location() == null ? "" : "#" + target.location();
    return target.address() != null && (target.address() + location).equals(link.getAddress());
  }
}
