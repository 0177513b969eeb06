package clearbed.report.annotate;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import clearbed.report.annotate.note.Shortfall;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AnnotatedCopiesTest {
  @TempDir Path folder;
  private Desk desk;

  @BeforeEach
  void desk() throws IOException {
    desk = Desk.in(folder);
  }

  @Test
  void other_formats_get_a_list_beside() throws Exception {
    Files.createDirectories(desk.sources().resolve("rooms"));
    Files.writeString(desk.sources().resolve("rooms/r.csv"), "a,b\n");
    Origin place = Origin.ofCell("rooms/r.csv", null, "B2", "=cmd\nof two lines");
    var result = desk.annotate(report("rooms/r.csv", "csv", place));
    Path list = desk.copies().resolve("rooms/r.csv.findings.txt");
    assertThat(result.files()).containsExactly(list);
    assertThat(result.shortfalls()).isEmpty();
    assertThat(Files.readString(list))
        .startsWith(
            """
            Findings in rooms/r.csv
            Rule set north-america, 2026-03-02

            1. ERROR mortar (GT-1)
               Place: rooms/r.csv, cell B2
               Words: "=cmd of two lines"
               The mortar of GT-1 is not stated.
               Question: Which mortar has GT-1?
               Not a design. Codes, the makers' written instructions and the licensed professional decide; \
            check figures against the edition specified.

            Clearbed list, SHA-256 of all above:""");
  }

  @Test
  void suppressed_and_resolved_findings_leave_no_mark() throws Exception {
    Files.writeString(desk.sources().resolve("r.csv"), "a,b\n");
    Finding finding = Desk.finding("mortar", Level.ERROR, Origin.ofDocument("r.csv"));
    var result =
        desk.annotate(
            Desk.report(
                "r.csv",
                "csv",
                finding.withSuppressed("agreed"),
                finding.withState(State.RESOLVED)));
    assertThat(result.files()).isEmpty();
  }

  @Test
  void a_path_that_leads_out_of_the_folder_is_refused() throws Exception {
    Files.writeString(folder.resolve("r.csv"), "a,b\n");
    for (String path : new String[] {"../r.csv", "a/../../r.csv", "/etc/r.csv", "a\\..\\r.csv"}) {
      var result =
          AnnotatedCopies.write(
              report(path, "csv", Origin.ofDocument(path)),
              document -> folder.resolve("r.csv"),
              desk.copies());
      assertThat(result.files()).isEmpty();
      assertThat(result.failures()).singleElement().asString().contains("leads out of the folder");
      assertThat(result.shortfalls()).hasSize(1);
    }
    try (var files = Files.walk(folder)) {
      assertThat(files.filter(Files::isRegularFile)).hasSize(1);
    }
  }

  @Test
  void a_source_is_never_written_over() throws Exception {
    Path source = workbook("s.xlsx");
    String before = Desk.digest(source);
    var result =
        AnnotatedCopies.write(
            report("s.xlsx", "xlsx", Desk.cell("s.xlsx", "Tile", "A1")),
            document -> source,
            desk.sources());
    assertThat(result.failures()).singleElement().asString().contains("is a source document");
    assertThat(Desk.digest(source)).isEqualTo(before);
  }

  @Test
  void a_link_in_the_folder_is_not_followed() throws Exception {
    Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
    Files.createDirectories(desk.copies());
    Files.createSymbolicLink(desk.copies().resolve("a"), elsewhere);
    Files.createDirectories(desk.sources().resolve("a"));
    Files.writeString(desk.sources().resolve("a/r.csv"), "a,b\n");
    var result = desk.annotate(report("a/r.csv", "csv", Origin.ofDocument("a/r.csv")));
    assertThat(result.failures()).singleElement().asString().contains("is a link");
    assertThat(elsewhere).isEmptyDirectory();
  }

  @Test
  void a_damaged_file_does_not_stop_the_others() throws Exception {
    Files.writeString(desk.sources().resolve("bad.xlsx"), "PK no workbook");
    workbook("good.xlsx");
    Report report =
        Desk.report(
            "bad.xlsx",
            "xlsx",
            Desk.finding("mortar", Level.ERROR, Desk.cell("bad.xlsx", "Tile", "A1")),
            Desk.finding("grout", Level.ERROR, Desk.cell("good.xlsx", "Tile", "A1")));
    var result = desk.annotate(report);
    assertThat(result.failures()).singleElement().asString().startsWith("bad.xlsx: no marked copy");
    assertThat(result.failures().get(0)).doesNotContain("\n");
    assertThat(result.files())
        .containsExactly(
            desk.copies().resolve("bad.xlsx.findings.txt"), desk.copies().resolve("good.xlsx"));
  }

  @Test
  void what_lies_in_an_archive_or_is_gone_is_reported() {
    Origin archived = Origin.ofDocument("b.zip!/s.xlsx");
    Origin gone = Origin.ofDocument("gone.pdf");
    var result =
        desk.annotate(
            Desk.report(
                "gone.pdf",
                "pdf",
                Desk.finding("mortar", Level.ERROR, archived, gone, Origin.ofDocument(""))));
    assertThat(result.shortfalls())
        .extracting(Shortfall::reason)
        .containsExactly(
            "no document states it",
            "the document is not there any more",
            "the document lies in an archive; unpack it and check the folder to get a copy");
  }

  @Test
  void the_same_report_gives_the_same_bytes() throws Exception {
    workbook("s.xlsx");
    Report report = report("s.xlsx", "xlsx", Desk.cell("s.xlsx", "Tile", "A1"));
    desk.annotate(report);
    String first = Desk.digest(desk.copies().resolve("s.xlsx"));
    desk.annotate(report);
    assertThat(Desk.digest(desk.copies().resolve("s.xlsx"))).isEqualTo(first);
  }

  @Test
  void a_copy_is_known_for_one() throws Exception {
    workbook("s.xlsx");
    desk.annotate(report("s.xlsx", "xlsx", Desk.cell("s.xlsx", "Tile", "A1")));
    assertThat(
            Desk.elements(desk.copies().resolve("s.xlsx"), "docProps/custom.xml", "property")
                .get(0)
                .getAttribute("name"))
        .startsWith("Clearbed");
  }

  private static Report report(String document, String format, Origin origin) {
    return Desk.report(document, format, Desk.finding("mortar", Level.ERROR, origin));
  }

  private Path workbook(String name) throws IOException {
    Path file = desk.sources().resolve(name);
    try (XSSFWorkbook book = new XSSFWorkbook();
        OutputStream out = Files.newOutputStream(file)) {
      book.createSheet("Tile").createRow(0).createCell(0).setCellValue("GT-1");
      book.write(out);
    }
    return file;
  }
}
