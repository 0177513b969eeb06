package clearbed.report;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFHyperlink;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The one writer of cells: text stays text, whatever it begins with. */
final class Pen {
  /** Excel takes 65,530 links in a sheet (Excel specifications and limits); text goes on after. */
  private static final int MOST_LINKS = 65_000;

  private final XSSFWorkbook book;
  private final Styles styles;
  private int links;

  Pen(XSSFWorkbook book) {
    this.book = book;
    this.styles = new Styles(book);
  }

  Styles styles() {
    return styles;
  }

  /** A sheet of its own has a link allowance of its own. */
  void newSheet() {
    links = 0;
  }

  Cell text(Row row, int column, String text, Styles.Look look) {
    return put(row, column, new Datum.Words(text), look);
  }

  Cell count(Row row, int column, int number) {
    return put(row, column, new Datum.Count(number), Styles.Look.COUNT);
  }

  /** Writes into the cell; a cell that is already there keeps the looks that people gave it. */
  Cell put(Row row, int column, Datum datum, Styles.Look look) {
    Cell cell = row.getCell(column);
    if (cell == null) {
      cell = row.createCell(column);
      cell.setCellStyle(styles.get(look));
    }
    set(cell, datum);
    return cell;
  }

  private void set(Cell cell, Datum datum) {
    if (cell.getHyperlink() != null) cell.removeHyperlink();
    if (datum instanceof Datum.Count count) cell.setCellValue(count.number());
    else if (datum instanceof Datum.Day day) setDay(cell, day.date());
    else if (datum instanceof Datum.Blank) cell.setBlank();
    else setText(cell, datum.shown());
    if (datum instanceof Datum.Link link && link.address() != null && links < MOST_LINKS) {
      setLink(cell, link);
    }
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
    cell.setCellValue(safe);
    boolean quoted = cell.getCellStyle().getQuotePrefixed();
    if (SafeText.looksLikeFormula(safe) && !quoted) {
      cell.setCellStyle(styles.quoted(cell.getCellStyle()));
    }
  }

  private void setLink(Cell cell, Datum.Link target) {
    XSSFHyperlink link = book.getCreationHelper().createHyperlink(HyperlinkType.FILE);
    link.setAddress(target.address());
    if (target.location() != null) link.setLocation(target.location());
    cell.setHyperlink(link);
    links++;
  }
}
