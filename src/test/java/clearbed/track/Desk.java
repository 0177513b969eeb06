package clearbed.track;

import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.layout.SheetLayout;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** What people do to a workbook between two issues. */
final class Desk {
  private Desk() {}

  static void edit(Path file, Consumer<XSSFWorkbook> work) throws IOException {
    try (XSSFWorkbook book = open(file)) {
      work.accept(book);
      try (OutputStream out = Files.newOutputStream(file)) {
        book.write(out);
      }
    }
  }

  static XSSFWorkbook open(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return new XSSFWorkbook(in);
    }
  }

  static SheetLayout layout(XSSFWorkbook book, String name) {
    Sheet sheet = book.getSheet(name);
    SheetLayout all = SheetLayout.of(sheet, Headers.of(name), Set.of());
    Set<String> ids = new HashSet<>();
    for (SheetLayout.Stray stray : all.strays()) ids.add(all.text(stray.row(), Headers.ID));
    return SheetLayout.of(sheet, Headers.of(name), ids);
  }

  static Row row(XSSFWorkbook book, String sheet, String id) {
    return layout(book, sheet).rows().get(id);
  }

  static String text(XSSFWorkbook book, String sheet, String id, String header) {
    SheetLayout layout = layout(book, sheet);
    return layout.text(layout.rows().get(id), header);
  }

  static void type(XSSFWorkbook book, String sheet, String id, String header, String text) {
    cell(book, sheet, id, header).setCellValue(text);
  }

  static Cell cell(XSSFWorkbook book, String sheet, String id, String header) {
    SheetLayout layout = layout(book, sheet);
    Row row = layout.rows().get(id);
    return row.getCell(layout.column(header), Row.MissingCellPolicy.CREATE_NULL_AS_BLANK);
  }

  /** Adds a column after the last one. */
  static void addColumn(XSSFWorkbook book, String sheet, String header) {
    Row row = book.getSheet(sheet).getRow(0);
    row.createCell(row.getLastCellNum()).setCellValue(header);
  }
}
