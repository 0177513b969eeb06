package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The project and its people, from the command line or a layer to everything that is sent. */
class ProjectNamesTest {
  @TempDir Path folder;
  private Path schedule;
  private Path workbook;

  @BeforeEach
  void a_schedule() throws Exception {
    schedule =
        Files.writeString(
            folder.resolve("schedule.csv"),
            "Tag,Material,Size,Mortar\nGT-1,\"Glass tile, translucent\",4 x 4 in,ANSI A118.1\n");
    workbook = folder.resolve("findings.xlsx");
  }

  @Test
  void they_stand_on_summary_letter_page_and_in_the_properties_of_the_files() throws Exception {
    Path page = folder.resolve("page.html");
    check(
        workbook,
        "--project",
        "Heron Baths",
        "--from",
        "Tile & Sons",
        "--to",
        "Design team",
        "--view",
        page);
    assertThat(summary(workbook)).contains("Project|Heron Baths", "From|Tile & Sons", "To|Design");
    try (XSSFWorkbook book = open(workbook)) {
      assertThat(book.getProperties().getCoreProperties().getSubject()).startsWith("Heron Baths, ");
      assertThat(book.getProperties().getExtendedProperties().getCompany())
          .isEqualTo("Tile & Sons");
    }
    assertThat(Files.readString(page)).contains("Heron Baths", "Tile &amp; Sons");
    Path letter = folder.resolve("letter.docx");
    assertThat(Shell.run("questions", workbook, "-o", letter).code()).isZero();
    try (InputStream in = Files.newInputStream(letter);
        XWPFDocument word = new XWPFDocument(in)) {
      assertThat(word.getParagraphs().stream().map(p -> p.getText()).toList())
          .contains("Project:\tHeron Baths", "From:\tTile & Sons", "To:\tDesign team");
      assertThat(word.getProperties().getCoreProperties().getSubject()).isEqualTo("Heron Baths");
    }
  }

  @Test
  void a_layer_gives_them_and_the_command_line_wins() throws Exception {
    Path layer =
        Files.writeString(
            folder.resolve("office.yaml"),
            "layer: ours\nproject: {name: Heron Baths, from: Tile office}\n");
    check(workbook, "--rules", layer, "--from", "Estimating");
    assertThat(summary(workbook)).contains("Project|Heron Baths", "From|Estimating");
  }

  @Test
  void the_next_issue_has_them_from_the_workbook_that_it_carries_on() throws Exception {
    check(workbook, "--project", "Heron Baths", "--to", "Design team");
    Path next = folder.resolve("next.xlsx");
    check(next, "--carry", workbook, "--to", "Owner");
    assertThat(summary(next)).contains("Project|Heron Baths", "To|Owner");
    String letter = Shell.run("questions", next, "--to", "Engineer").out();
    assertThat(letter).contains("- Project: Heron Baths", "- To: Engineer");
  }

  @Test
  void why_it_matters_is_the_reason_of_the_rule_in_workbook_letter_and_page() throws Exception {
    String why = "mortar has nothing to key into";
    Path page = folder.resolve("page.html");
    check(workbook, "--view", page);
    assertThat(Files.readString(page)).contains(why);
    assertThat(Shell.run("questions", workbook).out())
        .containsPattern("- Why it matters: [^\\n]*" + why);
    try (XSSFWorkbook book = open(workbook)) {
      for (String sheet : new String[] {"Findings", "Questions"}) {
        StringBuilder all = new StringBuilder();
        for (Row row : book.getSheet(sheet)) row.forEach(cell -> all.append(cell).append('\n'));
        assertThat(all).contains("Why it matters", why);
      }
    }
  }

  private void check(Path output, Object... more) {
    Object[] line = new Object[more.length + 5];
    System.arraycopy(new Object[] {"check", schedule, "--quiet", "-o", output}, 0, line, 0, 5);
    System.arraycopy(more, 0, line, 5, more.length);
    Shell run = Shell.run(line);
    assertThat(run.code()).as(run.err()).isEqualTo(1);
  }

  private static String summary(Path workbook) throws Exception {
    StringBuilder all = new StringBuilder();
    try (XSSFWorkbook book = open(workbook)) {
      for (Row row : book.getSheet("Summary"))
        row.forEach(cell -> all.append(cell).append(cell.getColumnIndex() == 0 ? "|" : "\n"));
    }
    return all.toString();
  }

  private static XSSFWorkbook open(Path file) throws Exception {
    try (InputStream in = Files.newInputStream(file)) {
      return new XSSFWorkbook(in);
    }
  }
}
