package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.report.DemoReport;
import clearbed.report.workbook.FindingsWorkbook;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class QuestionsCommandTest {
  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private Path workbook;

  @BeforeEach
  void a_workbook_with_some_addressees() throws Exception {
    workbook = folder.resolve("findings.xlsx");
    FindingsWorkbook.write(DemoReport.report(), workbook);
    try (InputStream in = Files.newInputStream(workbook);
        XSSFWorkbook book = new XSSFWorkbook(in)) {
      XSSFSheet sheet = book.getSheet("Questions");
      type(sheet, 1, "Asked of", "Tile supplier");
      type(sheet, 2, "Asked of", "Engineer");
      type(sheet, 2, "Question", "How *strong* is it?");
      type(sheet, 3, "Status", "answered");
      try (OutputStream to = Files.newOutputStream(workbook)) {
        book.write(to);
      }
    }
  }

  private static void type(XSSFSheet sheet, int row, String header, String text) {
    for (var cell : sheet.getRow(0)) {
      if (cell.getStringCellValue().equals(header)) {
        sheet.getRow(row).getCell(cell.getColumnIndex()).setCellValue(text);
      }
    }
  }

  private int run(String... arguments) {
    return new CommandLine(new QuestionsCommand())
        .setOut(new PrintWriter(out, true))
        .setErr(new PrintWriter(err, true))
        .execute(arguments);
  }

  @Test
  void questions_are_grouped_by_addressee_in_peoples_own_words() {
    assertThat(run(workbook.toString())).isZero();
    String text = out.toString();
    assertThat(text).contains("17 questions are open");
    assertThat(text.indexOf("## Engineer")).isLessThan(text.indexOf("## Tile supplier"));
    assertThat(text.indexOf("## Tile supplier")).isLessThan(text.indexOf("## Not yet addressed"));
    assertThat(text)
        .contains("### Question 2: GT-2\n\nHow \\*strong\\* is it?\n\n- Place: Moorhen Baths/");
    assertThat(text).contains("- What was found: ").contains("- Suggested wording: For GT-1");
    assertThat(text).doesNotContain("Question 3: GT-3");
  }

  @Test
  void answered_ones_come_along_when_all_are_wanted() {
    assertThat(run(workbook.toString(), "--all")).isZero();
    assertThat(out.toString()).contains("### Question 3: GT-3");
  }

  @Test
  void an_answer_so_far_and_a_dropped_question_are_told_in_a_word_file_too() throws Exception {
    try (InputStream in = Files.newInputStream(workbook);
        XSSFWorkbook book = new XSSFWorkbook(in)) {
      type(book.getSheet("Questions"), 1, "Answer", "some 400 psi");
      type(book.getSheet("Questions"), 4, "Status", "dropped");
      try (OutputStream to = Files.newOutputStream(workbook)) {
        book.write(to);
      }
    }
    Path letter = folder.resolve("questions.docx");
    assertThat(run(workbook.toString(), "-o", letter.toString(), "--all")).isZero();
    try (InputStream in = Files.newInputStream(letter);
        XWPFDocument word = new XWPFDocument(in)) {
      assertThat(word.getParagraphs())
          .extracting(XWPFParagraph::getText)
          .contains("Question 1: GT-1", "Answer so far: some 400 psi", "Question 4: GT-4")
          .contains("Status: dropped: not asked any more; the finding is still open");
    }
  }

  @Test
  void a_word_file_has_headings_and_is_the_same_each_time() throws Exception {
    Path one = folder.resolve("questions.docx");
    Path two = folder.resolve("again.docx");
    assertThat(run(workbook.toString(), "-o", one.toString())).isZero();
    assertThat(run(workbook.toString(), "--format", "docx", "-o", two.toString())).isZero();
    assertThat(two).hasSameBinaryContentAs(one);
    try (InputStream in = Files.newInputStream(one);
        XWPFDocument word = new XWPFDocument(in)) {
      assertThat(word.getParagraphs())
          .filteredOn(paragraph -> "Heading1".equals(paragraph.getStyle()))
          .extracting(XWPFParagraph::getText)
          .containsExactly("Engineer", "Tile supplier", "Not yet addressed to anybody");
      assertThat(word.getParagraphs())
          .extracting(XWPFParagraph::getText)
          .contains("Question 2: GT-2", "How *strong* is it?");
    }
    Files.createDirectories(Path.of("target/demo"));
    Path demo = Path.of("target/demo/questions.docx");
    Files.copy(one, demo, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
  }

  @Test
  void a_file_that_is_no_findings_workbook_is_one_line_and_exit_3() throws IOException {
    Path other = Files.writeString(folder.resolve("other.xlsx"), "not a workbook");
    assertThat(run(other.toString())).isEqualTo(3);
    assertThat(err.toString().lines()).hasSize(1);
    assertThat(err.toString()).contains("cannot carry on " + other);
  }

  @Test
  void a_format_that_is_not_known_is_a_usage_error() {
    assertThat(run(workbook.toString(), "--format", "pdf")).isEqualTo(2);
    assertThat(err.toString()).contains("--format is docx or md, not 'pdf'");
    assertThat(run(workbook.toString(), "--format", "docx")).isEqualTo(2);
  }
}
