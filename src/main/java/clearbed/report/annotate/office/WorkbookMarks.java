package clearbed.report.annotate.office;

import clearbed.report.annotate.note.FindingNote;
import clearbed.report.annotate.note.Job;
import clearbed.report.annotate.note.MarkedCopy;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellAddress;

/** Puts the notes of a workbook at their cells: a mark that prints, and a comment. */
final class WorkbookMarks {
  private final Workbook workbook;
  private final CellMarks marks;

  WorkbookMarks(Workbook workbook) {
    this.workbook = workbook;
    this.marks = new CellMarks(workbook);
  }

  private record CellPlace(String sheet, CellAddress cell) {}

  /** Marks every cell that has a note, and returns the sheets that they are on. */
  Set<Sheet> mark(Job job) throws MarkedCopy.CannotMark {
    Map<CellPlace, List<FindingNote>> byPlace = new LinkedHashMap<>();
    for (FindingNote note : job.notes()) {
      byPlace.computeIfAbsent(place(note, job), k -> new ArrayList<>()).add(note);
    }
    Set<Sheet> sheets = new LinkedHashSet<>();
    byPlace.forEach(
        (place, notes) -> {
          Sheet sheet = workbook.getSheet(place.sheet());
          Cell cell = cell(sheet, place.cell());
          marks.mark(
              cell, notes.stream().map(FindingNote::level).min(Enum::compareTo).orElseThrow());
          new CellComments(sheet).add(cell, notes, job);
          sheets.add(sheet);
        });
    return sheets;
  }

  private CellPlace place(FindingNote note, Job job) throws MarkedCopy.CannotMark {
    String name = note.place().sheet();
    Sheet sheet = name == null ? null : workbook.getSheet(name);
    if (sheet == null) {
      if (workbook.getNumberOfSheets() == 0) {
        throw new MarkedCopy.CannotMark("a workbook without sheets");
      }
      sheet = workbook.getSheetAt(Math.max(0, workbook.getFirstVisibleTab()));
      job.near(note, "it names no sheet that is there; noted at the first cell of the first sheet");
    } else if (address(note) == null) {
      job.near(note, "it names no cell; noted at the first cell of the sheet");
    }
    CellAddress address = name == null || address(note) == null ? CellAddress.A1 : address(note);
    return new CellPlace(sheet.getSheetName(), address);
  }

  private CellAddress address(FindingNote note) {
    String cell = note.place().cell();
    if (cell == null || !cell.matches("[A-Z]{1,3}[1-9][0-9]{0,6}")) return null;
    CellAddress address = new CellAddress(cell);
    boolean inside =
        address.getRow() <= workbook.getSpreadsheetVersion().getLastRowIndex()
            && address.getColumn() <= workbook.getSpreadsheetVersion().getLastColumnIndex();
    return inside ? address : null;
  }

  /** The cell, made when it is blank, in the style that a reader sees there. */
  static Cell cell(Sheet sheet, CellAddress at) {
    return cell(sheet, at.getRow(), at.getColumn());
  }

  static Cell cell(Sheet sheet, int rowIndex, int column) {
    Row row = sheet.getRow(rowIndex);
    if (row == null) row = sheet.createRow(rowIndex);
    Cell cell = row.getCell(column);
    if (cell != null) return cell;
    Cell made = row.createCell(column);
    CellStyle shown = row.getRowStyle() != null ? row.getRowStyle() : sheet.getColumnStyle(column);
    if (shown != null) made.setCellStyle(shown);
    return made;
  }
}
