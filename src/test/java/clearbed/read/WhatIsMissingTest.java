package clearbed.read;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a document lacks, or holds and is not opened, is said of it. */
class WhatIsMissingTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(ints = {30, 60, 90, 99})
  void anRtfFileThatIsCutIsReadInPart(int percent) throws IOException {
    byte[] whole = FaultCorpus.sound().get("rtf");
    assertThat(read("a.rtf", whole).status()).isEqualTo(Status.READ);
    Document cut = read("a.rtf", Arrays.copyOf(whole, whole.length * percent / 100));
    assertThat(cut.status()).isNotEqualTo(Status.READ);
    assertThat(said(cut)).anyMatch(words -> words.contains("cut short"));
  }

  @Test
  void bytesThatRtfAnnouncesAreNoBrackets() throws IOException {
    String rtf = "{\\rtf1\\ansi {\\*\\blob\\bin3 }}{}Lay pipe\\par \\'7b \\{ \\}}";
    assertThat(said(read("a.rtf", rtf.getBytes(UTF_8)))).noneMatch(w -> w.contains("cut short"));
  }

  @Test
  void anOldWorkbookThatIsCutBehindItsRowsIsReadInPart() throws IOException {
    byte[] whole = FaultCorpus.sound().get("xls");
    Document cut = read("a.xls", Arrays.copyOf(whole, whole.length - 100));
    assertThat(cut.status()).isNotEqualTo(Status.READ);
    try (HSSFWorkbook book = new HSSFWorkbook(new ByteArrayInputStream(whole))) {
      assertThat(book.getNumberOfSheets()).isPositive();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"odt", "ods"})
  void entitiesAreRefusedBehindAnyLengthOfRemarks(String format) throws IOException {
    String remarks = "<!--" + "x".repeat(1_000) + "-->";
    byte[] file =
        HostileFiles.part(
            FaultCorpus.sound().get(format),
            "content.xml",
            xml ->
                remarks.repeat(80)
                    + "<!DOCTYPE d [<!ENTITY e29 \"gutter\">]>"
                    + xml.replaceFirst("^\uFEFF?<\\?xml[^>]*\\?>\\s*", ""));
    Document document = read("a." + format, file);
    assertThat(document.status()).isEqualTo(Status.UNREADABLE);
    assertThat(document.reason()).contains("declares its own entities");
  }

  @Test
  void filesWithinAPdfAreNamed() throws IOException {
    try (PDDocument pdf = Loader.loadPDF(FaultCorpus.sound().get("pdf"))) {
      PDComplexFileSpecification file = new PDComplexFileSpecification();
      file.setFile("schedule.csv");
      file.setEmbeddedFile(
          new PDEmbeddedFile(pdf, new ByteArrayInputStream("Tag".getBytes(UTF_8))));
      PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
      tree.setNames(Map.of("schedule.csv", file));
      PDDocumentNameDictionary names = new PDDocumentNameDictionary(pdf.getDocumentCatalog());
      names.setEmbeddedFiles(tree);
      pdf.getDocumentCatalog().setNames(names);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      pdf.save(out);
      assertThat(said(read("a.pdf", out.toByteArray())))
          .contains("embedded files (1) are not read");
    }
  }

  @Test
  void filesWithinAWorkbookAreNamed() throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      XSSFSheet sheet = book.createSheet("Drains");
      sheet.createRow(0).createCell(0).setCellValue("D-1");
      int picture = book.addPicture(new byte[] {1}, XSSFWorkbook.PICTURE_TYPE_PNG);
      int object = book.addOlePackage("Tag".getBytes(UTF_8), "a.csv", "a.csv", "a.csv");
      var drawing = sheet.createDrawingPatriarch();
      drawing.createObjectData(drawing.createAnchor(0, 0, 0, 0, 1, 1, 3, 3), object, picture);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      book.write(out);
      assertThat(said(read("a.xlsx", out.toByteArray())))
          .contains("embedded files (1) are not read");
    }
  }

  private Document read(String name, byte[] bytes) throws IOException {
    return ReadAll.of(Files.write(folder.resolve(name), bytes)).get(0);
  }

  private static List<String> said(Document document) {
    return document.gaps().stream().map(Document.Gap::reason).toList();
  }
}
