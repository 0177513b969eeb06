package clearbed.cli;

import static clearbed.cli.SampleOutputs.assertOwn;
import static clearbed.cli.SampleOutputs.remarks;
import static clearbed.cli.SampleOutputs.save;
import static clearbed.cli.SampleOutputs.schedule;
import static clearbed.cli.SampleOutputs.texts;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.report.workbook.OfficeProgram;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.junit.jupiter.api.Test;

/** A marked copy in which somebody worked is a document of the project. */
class MarkedCopyComesBackTest extends OutputsAmongDocuments {
  private static final String SECTION = "09-30-00-tiling.docx";

  @Test
  void a_marked_workbook_that_was_worked_in_is_read_without_our_notes() throws Exception {
    Path copy = put("marked/" + SCHEDULE);
    assertOwn(read(SCHEDULE));
    String address = "";
    String ours = "";
    try (Workbook book = WorkbookFactory.create(Files.newInputStream(copy))) {
      Sheet sheet = book.getSheetAt(0);
      for (var each : sheet.getCellComments().entrySet()) {
        Comment comment = each.getValue();
        ours = comment.getString().getString();
        address = each.getKey().formatAsString();
        String reply = ours + "\nGrey is agreed with the owner.";
        comment.setString(book.getCreationHelper().createRichTextString(reply));
        break;
      }
      save(book, copy);
    }
    assertThat(ours).startsWith("ERROR ");

    Document document = read(SCHEDULE);

    assertThat(document.status()).isEqualTo(Status.PARTLY);
    assertThat(remarks(document)).containsExactly("Grey is agreed with the owner.");
    String place = address;
    assertThat(document.gaps())
        .anySatisfy(
            gap -> {
              assertThat(gap.origin().cell()).isEqualTo(place);
              assertThat(gap.reason()).isEqualTo("a finding of an earlier run");
            });
    assertThat(texts(document)).containsAll(texts(sample.original(SCHEDULE)));
  }

  @Test
  void another_program_may_save_it_and_our_notes_are_known_all_the_same() throws Exception {
    Path copy = put("marked/" + SCHEDULE);
    assumeTrue(OfficeProgram.openAndSave(copy), "LibreOffice is not here");
    for (String format : List.of("ods", "xls")) OfficeProgram.convert(copy, format);
    for (Document document : SampleOutputs.all(folder)) {
      assertThat(document.status()).as(document.path()).isEqualTo(Status.PARTLY);
      assertThat(remarks(document)).as(document.path()).isEmpty();
      assertThat(document.gaps())
          .as(document.path())
          .anyMatch(gap -> gap.reason().equals("a finding of an earlier run"));
      assertThat(texts(document)).as(document.path()).contains("GT-1");
    }
  }

  @Test
  void an_old_workbook_is_marked_and_known_likewise() throws Exception {
    Path project = Files.createDirectory(folder.resolve("project"));
    try (HSSFWorkbook book = new HSSFWorkbook()) {
      schedule(book.createSheet("Tile"));
      save(book, project.resolve("s.xls"));
    }
    Path marked = folder.resolve("marked");
    for (int run = 0; run < 2; run++) {
      Shell shell =
          Shell.run("check", project, "-o", folder + "/l.xlsx", "--annotate", marked, "--quiet");
      assertThat(shell.code()).as(shell.err()).isEqualTo(1);
    }
    assertOwn(read("marked/s.xls"));
    try (Workbook book = WorkbookFactory.create(Files.newInputStream(marked.resolve("s.xls")))) {
      book.getSheetAt(0).getRow(1).getCell(2).setCellValue("ANSI A118.15");
      save(book, marked.resolve("s.xls"));
    }
    Document document = read("marked/s.xls");
    assertThat(document.status()).isEqualTo(Status.PARTLY);
    assertThat(texts(document)).contains("ANSI A118.15");
    assertThat(remarks(document)).isEmpty();
  }

  @Test
  void a_marked_word_or_pdf_document_that_was_worked_in_is_read() throws Exception {
    Path section = put("marked/" + SECTION);
    Path notes = put("marked/" + NOTES);
    assertOwn(read(SECTION));
    assertOwn(read(NOTES));
    try (XWPFDocument word = new XWPFDocument(Files.newInputStream(section))) {
      word.createParagraph().createRun().setText("Mortar for GT-7 is white.");
      try (OutputStream out = Files.newOutputStream(section)) {
        word.write(out);
      }
    }
    try (PDDocument pdf = Loader.loadPDF(Files.readAllBytes(notes))) {
      pdf.getDocumentInformation().setTitle("checked by the architect");
      try (OutputStream out = Files.newOutputStream(notes)) {
        pdf.saveIncremental(out);
      }
    }
    assertThat(texts(read(SECTION)))
        .containsAll(texts(sample.original(SECTION)))
        .contains("Mortar for GT-7 is white.")
        .noneMatch(text -> text.contains("Question: "));
    assertThat(texts(read(NOTES))).isEqualTo(texts(sample.original(NOTES)));
  }
}
