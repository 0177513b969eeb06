package clearbed.read;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.model.document.Document.GapFate;
import clearbed.model.document.Document.Status;
import clearbed.model.document.Table;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.CreationHelper;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.RichTextString;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a sheet shows of its cells beyond their words, and what it does not show. */
class SheetMarksTest {
  private static final String REMARK =
      "a person's comment, no requirement; what it leaves open is open";

  @TempDir Path folder;

  @Test
  void struck_cells_and_words_are_no_part_of_a_sheet_and_are_said() throws IOException {
    for (Document document :
        List.of(struck(new XSSFWorkbook(), "s.xlsx"), struck(new HSSFWorkbook(), "s.xls"))) {
      assertThat(rows(document))
          .containsExactly("1: Tag/Mortar/Bond", "2: GT-1/ANSI A118.15", "4: GT-3/alive");
      assertThat(said(document))
          .containsExactly(
              "B2 struck through, not in force: ANSI A118.4 | 450",
              "A3 struck through, not in force: GT-2 | ANSI A118.15",
              "B4 struck through, not in force: void");
      assertThat(document.gaps()).allMatch(g -> g.fate() == GapFate.NOT_IN_FORCE);
      assertThat(document.status()).isEqualTo(Status.READ);
    }
  }

  private Document struck(Workbook workbook, String name) throws IOException {
    try (workbook) {
      Font line = workbook.createFont();
      line.setStrikeout(true);
      Font plain = workbook.createFont();
      CellStyle struck = workbook.createCellStyle();
      struck.setFont(line);
      Sheet sheet = workbook.createSheet("Tile");
      row(sheet, 0, "Tag", "Mortar", "Bond");
      row(sheet, 1, "GT-1", "", "");
      CreationHelper helper = workbook.getCreationHelper();
      RichTextString text = helper.createRichTextString("ANSI A118.4 ANSI A118.15");
      text.applyFont(0, 11, line);
      text.applyFont(11, 24, plain);
      sheet.getRow(1).getCell(1).setCellValue(text);
      sheet.getRow(1).getCell(2).setCellValue(450);
      sheet.getRow(1).getCell(2).setCellStyle(struck);
      for (Cell cell : row(sheet, 2, "GT-2", "ANSI A118.15")) cell.setCellStyle(struck);
      row(sheet, 3, "GT-3", "");
      RichTextString alive = helper.createRichTextString("void alive");
      alive.applyFont(5, 10, plain);
      sheet.getRow(3).getCell(1).setCellValue(alive);
      sheet.getRow(3).getCell(1).setCellStyle(struck);
      return read(name, workbook);
    }
  }

  @Test
  void hidden_sheets_rows_and_columns_are_read_and_said_once() throws IOException {
    for (Document document :
        List.of(hidden(new XSSFWorkbook(), "h.xlsx"), hidden(new HSSFWorkbook(), "h.xls"))) {
      assertThat(document.blocks()).hasSize(4);
      assertThat(((Table) document.blocks().get(0)).rows()).hasSize(9);
      assertThat(said(document))
          .containsExactly(
              "B1 hidden columns B to C; read like the rest",
              "E1 hidden column E; read like the rest",
              "A3 hidden rows 3 to 6; read like the rest",
              "A9 hidden row 9; read like the rest",
              "Old a hidden sheet; read like the rest",
              "Deep a sheet hidden so that Excel does not offer to show it; read like the rest");
      assertThat(document.gaps()).allMatch(g -> g.fate() == GapFate.READ);
      assertThat(document.status()).isEqualTo(Status.READ);
    }
  }

  private Document hidden(Workbook workbook, String name) throws IOException {
    try (workbook) {
      Sheet sheet = workbook.createSheet("Tile");
      for (int r = 0; r < 10; r++) {
        if (r != 4) row(sheet, r, "GT-" + r, "b", "c", "d", "e");
      }
      sheet.createRow(4);
      for (int r : new int[] {2, 3, 4, 5, 8}) sheet.getRow(r).setZeroHeight(true);
      for (int c : new int[] {1, 2, 4, 7}) sheet.setColumnHidden(c, true);
      row(workbook.createSheet("Old"), 0, "GT-9");
      row(workbook.createSheet("Deep"), 0, "GT-9");
      workbook.createSheet("Empty");
      workbook.setSheetVisibility(1, SheetVisibility.HIDDEN);
      workbook.setSheetVisibility(2, SheetVisibility.VERY_HIDDEN);
      workbook.setSheetVisibility(3, SheetVisibility.HIDDEN);
      return read(name, workbook);
    }
  }

  @Test
  void comments_are_said_where_their_cell_is_empty_too() throws IOException {
    for (Document document :
        List.of(remarked(new XSSFWorkbook(), "c.xlsx"), remarked(new HSSFWorkbook(), "c.xls"))) {
      assertThat(said(document))
          .containsExactly("A2 " + REMARK + ": Verify", "D7 " + REMARK + ": Nothing here yet");
      assertThat(document.gaps())
          .allMatch(g -> g.fate() == GapFate.PASSED_OVER && g.origin().part().equals("comment"));
      assertThat(document.status()).isEqualTo(Status.READ);
    }
  }

  private Document remarked(Workbook workbook, String name) throws IOException {
    try (workbook) {
      Sheet sheet = workbook.createSheet("Tile");
      row(sheet, 0, "Tag", "Mortar");
      row(sheet, 1, "GT-1", "ANSI A118.15");
      comment(sheet, 1, 0, "Verify");
      comment(sheet, 6, 3, "Nothing here yet");
      return read(name, workbook);
    }
  }

  @Test
  void an_open_document_sheet_says_the_same() throws IOException {
    String content =
        """
        <office:document-content xmlns:office="o" xmlns:table="t" xmlns:text="x" xmlns:style="s"
          xmlns:fo="f" xmlns:dc="d"><office:automatic-styles>
        <style:style style:name="ce1" style:family="table-cell" style:parent-style-name="Void"/>
        <style:style style:name="T1" style:family="text"><style:text-properties
          style:text-line-through-style="solid" style:text-line-through-type="single"/></style:style>
        <style:style style:name="T2" style:family="text"><style:text-properties
          style:text-line-through-style="none"/></style:style>
        <style:style style:name="ta2" style:family="table"><style:table-properties
          table:display="false"/></style:style>
        </office:automatic-styles><office:body><office:spreadsheet>
        <table:table table:name="Tile"><table:table-column/>
        <table:table-column table:visibility="collapse" table:number-columns-repeated="2"/>
        <table:table-row><table:table-cell><text:p>GT-1</text:p></table:table-cell>
        <table:table-cell><office:annotation><dc:creator>Desk</dc:creator><dc:date>2026</dc:date>
        <text:p>Verify</text:p></office:annotation>
        <text:p><text:span text:style-name="T1">A118.4</text:span> A118.15</text:p></table:table-cell>
        <table:table-cell table:style-name="ce1"><text:p>450</text:p></table:table-cell>
        <table:table-cell table:style-name="ce1"><text:p>void <text:span
          text:style-name="T2">alive</text:span></text:p></table:table-cell></table:table-row>
        <table:table-row table:visibility="filter" table:number-rows-repeated="2">
        <table:table-cell><text:p>GT-2</text:p></table:table-cell></table:table-row>
        </table:table>
        <table:table table:name="Old" table:style-name="ta2"><table:table-row><table:table-cell>
        <text:p>GT-9</text:p></table:table-cell></table:table-row></table:table>
        </office:spreadsheet></office:body></office:document-content>
        """;
    String styles =
        """
        <office:document-styles xmlns:office="o" xmlns:style="s"><office:styles>
        <style:style style:name="Void" style:family="table-cell"><style:text-properties
          style:text-line-through-type="single"/></style:style>
        </office:styles></office:document-styles>
        """;
    Path file = folder.resolve("s.ods");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      add(zip, "mimetype", "application/vnd.oasis.opendocument.spreadsheet");
      add(zip, "content.xml", content);
      add(zip, "styles.xml", styles);
    }

    Document document = read(file);

    assertThat(rows(document)).startsWith("1: GT-1/A118.15/alive", "2: GT-2", "3: GT-2");
    assertThat(said(document))
        .containsExactly(
            "B1 hidden columns B to C; read like the rest",
            "A2 hidden rows 2 to 3; read like the rest",
            "B1 struck through, not in force: A118.4 | 450 | void",
            "B1 " + REMARK + ": Verify",
            "Old a hidden sheet; read like the rest");
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  @Test
  void of_very_many_struck_rows_the_rest_is_counted() throws IOException {
    Document document;
    try (SXSSFWorkbook workbook = new SXSSFWorkbook(50)) {
      Font line = workbook.createFont();
      line.setStrikeout(true);
      CellStyle struck = workbook.createCellStyle();
      struck.setFont(line);
      Sheet sheet = workbook.createSheet("Tile");
      for (int r = 0; r < 2_000; r++) {
        for (Cell cell : row(sheet, r, "GT-" + r, "ANSI A118.15")) cell.setCellStyle(struck);
      }
      document = read("many.xlsx", workbook);
    }

    assertThat(document.gaps()).hasSize(501);
    assertThat(document.gaps().get(500).reason())
        .isEqualTo("1500 more places: struck through, not in force");
  }

  private static Iterable<Cell> row(Sheet sheet, int at, String... words) {
    var row = sheet.createRow(at);
    for (int i = 0; i < words.length; i++) row.createCell(i).setCellValue(words[i]);
    return row;
  }

  private static void comment(Sheet sheet, int row, int column, String words) {
    CreationHelper helper = sheet.getWorkbook().getCreationHelper();
    ClientAnchor anchor = helper.createClientAnchor();
    anchor.setRow1(row);
    anchor.setCol1(column);
    Comment comment = sheet.createDrawingPatriarch().createCellComment(anchor);
    comment.setString(helper.createRichTextString(words));
    comment.setAddress(row, column);
  }

  private Document read(String name, Workbook workbook) throws IOException {
    Path file = folder.resolve(name);
    try (OutputStream out = Files.newOutputStream(file)) {
      workbook.write(out);
    }
    return read(file);
  }

  private static Document read(Path file) {
    return ReadAll.of(file).get(0);
  }

  private static void add(ZipOutputStream zip, String name, String content) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(content.getBytes(UTF_8));
  }

  private static List<String> said(Document document) {
    return document.gaps().stream()
        .map(
            g ->
                (g.origin().cell() == null ? g.origin().sheet() : g.origin().cell())
                    + " "
                    + g.reason()
                    + (g.origin().text() == null ? "" : ": " + g.origin().text()))
        .toList();
  }

  private static List<String> rows(Document document) {
    return ((Table) document.blocks().get(0))
        .rows().stream()
            .map(
                r ->
                    r.number()
                        + ": "
                        + String.join("/", r.cells().stream().map(Table.Cell::text).toList()))
            .toList();
  }
}
