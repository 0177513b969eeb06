package clearbed.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import clearbed.report.DemoReport;
import clearbed.report.workbook.FindingsWorkbook;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RefusedWorkbookTest {
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("earlier.xlsx");
  }

  private void isRefused(String why) {
    assertThatThrownBy(() -> EarlierLog.read(file))
        .isInstanceOf(RefusedWorkbook.class)
        .hasMessageStartingWith("cannot carry on " + file + ": ")
        .hasMessageContaining(why)
        .satisfies(thrown -> assertThat(thrown.getMessage()).doesNotContain("\n"));
  }

  @Test
  void a_file_that_is_not_there() {
    isRefused("there is no such file");
  }

  @Test
  void a_folder() throws Exception {
    Files.createDirectory(file);
    isRefused("it is not a file");
  }

  @Test
  void a_text_file() throws Exception {
    Files.writeString(file, "Id,Status\nx,answered\n");
    isRefused("it is not an .xlsx workbook");
  }

  @Test
  void an_empty_file() throws Exception {
    Files.createFile(file);
    isRefused("it is not an .xlsx workbook");
  }

  @Test
  void a_workbook_of_somebody_else() throws Exception {
    try (XSSFWorkbook book = new XSSFWorkbook();
        OutputStream out = Files.newOutputStream(file)) {
      book.createSheet("Findings").createRow(0).createCell(0).setCellValue("Id");
      book.write(out);
    }
    isRefused("not findings that clearbed wrote");
  }

  @Test
  void a_workbook_cut_short() throws Exception {
    FindingsWorkbook.write(DemoReport.report(), file);
    byte[] whole = Files.readAllBytes(file);
    Files.write(file, Arrays.copyOf(whole, whole.length / 2));
    isRefused("it is damaged");
  }

  @Test
  void a_workbook_with_a_password() throws Exception {
    FindingsWorkbook.write(DemoReport.report(), file);
    byte[] plain = Files.readAllBytes(file);
    try (POIFSFileSystem files = new POIFSFileSystem()) {
      Encryptor encryptor = new EncryptionInfo(EncryptionMode.agile).getEncryptor();
      encryptor.confirmPassword("reed");
      try (OutputStream out = encryptor.getDataStream(files)) {
        out.write(plain);
      }
      try (OutputStream out = Files.newOutputStream(file)) {
        files.writeFilesystem(out);
      }
    }
    isRefused("locked with a password");
  }

  @Test
  void a_workbook_of_the_old_format() throws Exception {
    try (HSSFWorkbook book = new HSSFWorkbook();
        OutputStream out = Files.newOutputStream(file)) {
      book.createSheet("Findings");
      book.write(out);
    }
    isRefused("old .xls format");
  }

  @Test
  void a_workbook_that_is_open_in_another_program() throws Exception {
    FindingsWorkbook.write(DemoReport.report(), file);
    Files.createFile(folder.resolve("~$earlier.xlsx"));
    isRefused("open in another program (~$earlier.xlsx)");
  }

  @Test
  void a_workbook_of_a_later_layout() throws Exception {
    FindingsWorkbook.write(DemoReport.report(), file);
    Desk.edit(
        file,
        book ->
            book.getProperties()
                .getCustomProperties()
                .getProperty(FindingsWorkbook.MARK)
                .setLpwstr("2"));
    isRefused("its layout is version 2");
  }

  @Test
  void a_workbook_that_the_memory_cannot_hold() throws Exception {
    FindingsWorkbook.write(DemoReport.report(), file);
    WorkbookFile.refuseTooLarge(file, Files.readAllBytes(file), true, 512L << 20);
    assertThatThrownBy(
            () -> WorkbookFile.refuseTooLarge(file, Files.readAllBytes(file), false, 100_000))
        .isInstanceOf(RefusedWorkbook.class)
        .hasMessageContaining("start with CLEARBED_JAVA_OPTS=-Xmx");
  }
}
