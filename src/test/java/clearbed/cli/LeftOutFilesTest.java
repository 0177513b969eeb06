package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts.FontName;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** What nobody has read is named on the terminal, not on a sheet of the workbook alone. */
@Isolated("a library among the tests lets classes run side by side; the process has one output")
class LeftOutFilesTest {
  @TempDir Path folder;
  private Path documents;

  @BeforeEach
  void a_set_with_a_drawing_a_letter_and_a_photograph() throws IOException {
    documents = Files.createDirectory(folder.resolve("documents"));
    Files.writeString(documents.resolve("schedule.csv"), "Tag,Material\nGT-1,Glass tile\n");
    Files.write(documents.resolve("plan.dwg"), new byte[] {'A', 'C', '1', '0', 0, 1, 2});
    Files.write(documents.resolve("mail.msg"), new byte[] {0, 1, 2, 3});
    Files.write(documents.resolve("photo.jpg"), new byte[] {(byte) 0xFF, (byte) 0xD8, 0, 16});
  }

  @Test
  void ignored_files_are_named_in_one_line_with_their_count() {
    assertThat(check())
        .contains("Not read (ignored): 3 files: mail.msg, photo.jpg, plan.dwg")
        .doesNotContain("Partly read");
    assertThat(run("read", documents.toString()))
        .contains("Not read (ignored): 3 files: mail.msg, photo.jpg, plan.dwg");
  }

  @Test
  void read_begins_with_what_was_read_and_ends_with_what_was_not_understood() throws IOException {
    Files.writeString(
        documents.resolve("schedule.csv"),
        "Tag,Material,Size,Location,Zorb\n"
            + "GT-1,Glass tile,4 x 4 in,Lobby wall,quux\n"
            + "PT-1,Porcelain tile,4 x 4 in,Lobby wall,\n");
    String out = run("read", documents.toString());
    assertThat(out)
        .startsWith("Read\n  documents: 1 of 4\n  tables: 1, 1 taken for schedules\n")
        .contains("  entries: 1 glass, 1 other, 0 undecided\n", "not understood in 1 column\n")
        .endsWith("Not understood\n  schedule.csv, cell E2: under \"Zorb\": \"quux\"\n");
    assertThat(out.indexOf("\nDocuments\n")).isLessThan(out.indexOf("GT-1  glass tile"));
  }

  @Test
  void partly_read_documents_are_named_with_where_to_look_further() throws IOException {
    partScanned(documents.resolve("spec.pdf"));

    String more = "Partly read: 1 document: spec.pdf; see ";
    assertThat(check()).contains(more + "the sheet Documents");
    assertThat(run("read", documents.toString())).contains(more + "above");
  }

  @Test
  void of_many_names_some_are_shown_and_the_rest_counted() throws IOException {
    for (int i = 100; i < 160; i++) Files.write(documents.resolve(i + ".dwg"), new byte[] {0, 1});

    assertThat(check())
        .containsPattern("Not read \\(ignored\\): 63 files: 100.dwg, 101.dwg, [^\\n]*\\n")
        .containsPattern("and \\d\\d more\\n");
  }

  @Test
  void a_set_that_was_read_whole_has_no_such_line() throws IOException {
    for (String name : new String[] {"plan.dwg", "mail.msg", "photo.jpg"}) {
      Files.delete(documents.resolve(name));
    }

    assertThat(check()).contains("1 document, ").doesNotContain("read");
  }

  private static void partScanned(Path file) throws IOException {
    try (PDDocument pdf = new PDDocument()) {
      PDPage words = new PDPage(PDRectangle.LETTER);
      PDPage scan = new PDPage(PDRectangle.LETTER);
      pdf.addPage(words);
      pdf.addPage(scan);
      try (PDPageContentStream content = new PDPageContentStream(pdf, words)) {
        content.beginText();
        content.setFont(new PDType1Font(FontName.HELVETICA), 10);
        content.newLineAtOffset(72, 700);
        content.showText("Words of a page that has a text layer.");
        content.endText();
      }
      BufferedImage image = new BufferedImage(20, 20, BufferedImage.TYPE_INT_RGB);
      try (PDPageContentStream content = new PDPageContentStream(pdf, scan)) {
        content.drawImage(LosslessFactory.createFromImage(pdf, image), 0, 0, 612, 792);
      }
      pdf.save(file.toFile());
    }
  }

  private String check() {
    String workbook = folder.resolve("findings.xlsx").toString();
    return run("check", documents.toString(), "-o", workbook).split("\n\n")[0] + "\n";
  }

  private static String run(String... arguments) {
    PrintStream before = System.out;
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    System.setOut(new PrintStream(bytes, true, StandardCharsets.UTF_8));
    try {
      Main.run(arguments);
    } finally {
      System.setOut(before);
    }
    return bytes.toString(StandardCharsets.UTF_8);
  }
}
