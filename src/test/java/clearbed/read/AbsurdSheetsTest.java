package clearbed.read;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.model.document.Table;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that claim more rows, columns, areas and levels than anybody ever filled in. */
class AbsurdSheetsTest {
  private static final int MILLION = 1_000_000;
  private static final String HEAD =
      row(1, cell("A1", "Mark") + cell("B1", "Drain")) + row(2, cell("A2", "D-1"));
  private static final String ODS_HEAD =
      "<table:table-row>" + odsCell("", "Mark") + "</table:table-row>";

  @TempDir Path folder;

  @Test
  void aMillionMergedAreasAreCutShortWithAWordAndTheCellsAreRead() throws IOException {
    String areas =
        IntStream.rangeClosed(1, MILLION)
            .mapToObj(i -> "<mergeCell ref=\"D" + i + ":E" + (i + 1) + "\"/>")
            .collect(Collectors.joining("", "<mergeCells>", "</mergeCells>"));

    Document document = workbook("<sheetData>" + HEAD + "</sheetData>" + areas);

    assertThat(texts(document)).containsExactly("Mark", "Drain", "D-1");
    assertThat(reasons(document))
        .containsExactly("more merged areas than a sheet can hold; the rest left out");
  }

  @Test
  void aMillionMergedAreasOverTheWholeSheetAreNoMoreWork() throws IOException {
    String areas = "<mergeCell ref=\"A1:XFD1048576\"/>".repeat(MILLION);

    Document document =
        workbook("<sheetData>" + HEAD + "</sheetData><mergeCells>" + areas + "</mergeCells>");

    assertThat(document.status()).isEqualTo(Status.PARTLY);
    assertThat(reasons(document)).hasSizeLessThan(30).contains("hidden under a merged area");
  }

  @Test
  void theLastCellOfASheetIsReadAndNothingIsMadeOfTheEmptinessBefore() throws IOException {
    Document document =
        workbook(
            "<dimension ref=\"A1:XFD1048576\"/><sheetData>"
                + HEAD
                + row(500_000, cell("C500000", "middle"))
                + row(1_048_576, cell("XFD1048576", "last"))
                + "</sheetData>");

    Table table = (Table) document.blocks().get(0);
    assertThat(table.rows())
        .extracting(Table.Row::number)
        .containsExactly(1, 2, 500_000, 1_048_576);
    assertThat(table.origin(table.rows().get(3).cells().get(0)).cell()).isEqualTo("XFD1048576");
  }

  @Test
  void cellsOutsideOfASheetAreNamedAsLeftOut() throws IOException {
    Document document =
        workbook(
            "<sheetData>"
                + HEAD
                + row(2_000_000_000, cell("A2000000000", "below"))
                + row(3, cell("ZZZZ3", "beside"))
                + "</sheetData>");

    assertThat(texts(document)).containsExactly("Mark", "Drain", "D-1");
    assertThat(reasons(document)).hasSize(2).containsOnly("beyond the last cell of a sheet");
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 400})
  void rowsAndColumnsRepeatedByTheMillionAreCutShortWithAWord(int times) throws IOException {
    String wide = odsCell("table:number-columns-repeated=\"16384\"", "D-2");
    String repeated = "<table:table-row table:number-rows-repeated=\"1048574\">" + wide;

    Document document = sheet((repeated + "</table:table-row>").repeat(times));

    assertThat(texts(document)).startsWith("Mark", "D-2").hasSizeLessThan(12 * MILLION / 10);
    assertThat(reasons(document))
        .hasSizeLessThan(30)
        .contains("a row repeated too often; rest left out");
  }

  @Test
  void emptyRowsRepeatedByTheMillionAreNothing() throws IOException {
    String blank = "<table:table-cell table:number-columns-repeated=\"16384\"/>";
    String rows = "<table:table-row table:number-rows-repeated=\"1048574\">" + blank;

    Document document = sheet(rows + "</table:table-row>");

    assertThat(document.status()).isEqualTo(Status.READ);
    assertThat(texts(document)).containsExactly("Mark");
  }

  @ParameterizedTest
  @ValueSource(ints = {30, 6_000})
  void theInnermostOfManyNestedTablesIsRead(int deep) throws IOException {
    String word =
        "<w:tbl><w:tr><w:tc>".repeat(deep)
            + "<w:p><w:r><w:t>innermost</w:t></w:r></w:p>"
            + "</w:tc></w:tr></w:tbl>".repeat(deep);
    Files.write(
        folder.resolve("deep.docx"),
        HostileFiles.part(
            FaultCorpus.sound().get("docx"),
            "word/document.xml",
            x -> HostileFiles.WORD.formatted(word)));
    String html = "<table><tr><td>".repeat(deep) + "innermost" + "</td></tr></table>".repeat(deep);
    Files.writeString(folder.resolve("deep.html"), "<html><body>" + html + "</body></html>");

    List<Document> documents = ReadAll.of(folder);

    assertThat(documents).hasSize(2).allSatisfy(d -> assertThat(texts(d)).contains("innermost"));
  }

  @Test
  void spansByTheMillionMakeNoCells() throws IOException {
    String rows =
        "<tr><td colspan=\"100000000\" rowspan=\"1000000\">D-1</td><td>Drain</td></tr>"
            .repeat(2_000);
    Path file = Files.writeString(folder.resolve("spans.html"), "<table>" + rows + "</table>");

    assertThat(texts(read(file))).contains("D-1").hasSizeLessThan(MILLION);
  }

  /** What cannot be written as UTF-8 would spoil every file that quotes it. */
  @Test
  void halfACharacterIsReadAsAMarkThatItIsMissing() throws IOException {
    Path xls = folder.resolve("half.xls");
    try (HSSFWorkbook workbook = new HSSFWorkbook();
        var out = Files.newOutputStream(xls)) {
      workbook
          .createSheet("Drains")
          .createRow(0)
          .createCell(0)
          .setCellValue("D\ud800-1 \ud83d\ude00");
      workbook.write(out);
    }

    assertThat(texts(read(xls))).containsExactly("D\ufffd-1 \ud83d\ude00");
    assertThat(texts(workbook("<sheetData>" + row(1, cell("A1", "D_xDC00_")) + "</sheetData>")))
        .containsExactly("D\ufffd");
  }

  private static String row(int number, String cells) {
    return "<row r=\"" + number + "\">" + cells + "</row>";
  }

  private static String cell(String address, String text) {
    return "<c r=\"" + address + "\" t=\"inlineStr\"><is><t>" + text + "</t></is></c>";
  }

  private static String odsCell(String attributes, String text) {
    return "<table:table-cell " + attributes + "><text:p>" + text + "</text:p></table:table-cell>";
  }

  private Document workbook(String content) throws IOException {
    byte[] file =
        HostileFiles.part(
            FaultCorpus.sound().get("xlsx"),
            "xl/worksheets/sheet1.xml",
            x -> HostileFiles.SHEET.formatted(content));
    return read(Files.write(folder.resolve("sheet.xlsx"), file));
  }

  private Document sheet(String rows) throws IOException {
    String content =
        "<office:spreadsheet><table:table table:name=\"t\">"
            + ODS_HEAD
            + rows
            + "</table:table></office:spreadsheet>";
    byte[] file =
        HostileFiles.part(
            FaultCorpus.sound().get("ods"),
            "content.xml",
            x -> HostileFiles.ODF.formatted(content));
    return read(Files.write(folder.resolve("sheet.ods"), file));
  }

  private static Document read(Path file) {
    return ReadAll.of(file).get(0);
  }

  private static List<String> reasons(Document document) {
    return document.gaps().stream().map(Document.Gap::reason).toList();
  }

  private static List<String> texts(Document document) {
    assertThat(document.status()).as(document.reason()).isNotEqualTo(Status.UNREADABLE);
    return document.blocks().stream().flatMap(b -> texts(b).stream()).toList();
  }

  private static List<String> texts(Block block) {
    if (!(block instanceof Table table)) return List.of();
    return table.rows().stream()
        .flatMap(r -> r.cells().stream().filter(c -> !c.continued()).map(Table.Cell::text))
        .toList();
  }
}
