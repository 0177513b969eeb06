package clearbed.report;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.read.ReadAll;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process that is ended by force leaves the earlier output or the new one, never a torn one. */
class KilledWhileWritingTest {
  private static final int KILLS = 10;

  @TempDir Path folder;
  private Path sources;
  private Path outputs;

  @BeforeEach
  void sources() throws IOException {
    sources = Files.createDirectories(folder.resolve("sources"));
    outputs = Files.createDirectories(folder.resolve("outputs"));
    try (XSSFWorkbook book = new XSSFWorkbook();
        OutputStream out = Files.newOutputStream(sources.resolve("s.xlsx"))) {
      book.createSheet("Tile").createRow(1).createCell(1).setCellValue("A118.1");
      book.write(out);
    }
    try (XWPFDocument word = new XWPFDocument();
        OutputStream out = Files.newOutputStream(sources.resolve("s.docx"))) {
      word.createParagraph().createRun().setText("White mortar for glass tile");
      word.write(out);
    }
    try (PDDocument pdf = new PDDocument()) {
      PDPage page = new PDPage();
      pdf.addPage(page);
      try (PDPageContentStream text = new PDPageContentStream(pdf, page)) {
        text.beginText();
        text.setFont(new PDType1Font(Standard14Fonts.FontName.HELVETICA), 11);
        text.newLineAtOffset(72, 700);
        text.showText("White mortar for glass tile");
        text.endText();
      }
      pdf.save(sources.resolve("s.pdf").toFile());
    }
    Files.writeString(sources.resolve("s.txt"), "White mortar for glass tile");
  }

  @Test
  void every_output_is_the_earlier_or_the_new_one_whole() throws Exception {
    Map<String, Set<String>> whole = new HashMap<>();
    for (String date : WriteForever.DATES) {
      WriteForever.write(sources, outputs, date);
      contents()
          .forEach((name, bytes) -> whole.computeIfAbsent(name, n -> new HashSet<>()).add(bytes));
    }
    assertThat(whole).hasSize(7).allSatisfy((name, both) -> assertThat(both).hasSize(2));
    Random random = new Random(20260302);
    int torn = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      killed(random.nextInt(600));
      Map<String, String> left = contents();
      assertThat(left.keySet()).isEqualTo(whole.keySet());
      left.forEach((name, bytes) -> assertThat(whole.get(name)).as(name).contains(bytes));
      torn += parts().size();
    }
    assertThat(torn).as("moments at which a file was being written").isPositive();
    assertThatTheNextRunReadsNoneOfIt();
  }

  private void killed(int milliseconds) throws Exception {
    Path started = folder.resolve("started");
    Files.deleteIfExists(started);
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-cp",
                System.getProperty("java.class.path"),
                WriteForever.class.getName(),
                sources.toString(),
                outputs.toString())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("log").toFile())
            .start();
    try {
      while (!Files.exists(started)) {
        assertThat(process.isAlive()).as(Files.readString(folder.resolve("log"))).isTrue();
        TimeUnit.MILLISECONDS.sleep(5);
      }
      TimeUnit.MILLISECONDS.sleep(milliseconds);
    } finally {
      process.destroyForcibly().waitFor();
    }
  }

  /** What is left half written is hidden from the next run, and swept away when it writes. */
  private void assertThatTheNextRunReadsNoneOfIt() throws IOException {
    List<Document> documents = ReadAll.of(outputs);
    assertThat(documents)
        .allSatisfy(d -> assertThat(d.status()).isEqualTo(Document.Status.IGNORED))
        .filteredOn(d -> d.path().endsWith(".part"))
        .allSatisfy(d -> assertThat(d.reason()).isEqualTo("hidden file"));
    WriteForever.write(sources, outputs, WriteForever.DATES.get(0));
    assertThat(parts()).isEmpty();
  }

  private List<Path> parts() throws IOException {
    try (Stream<Path> files = Files.walk(outputs)) {
      return files.filter(file -> file.toString().endsWith(".part")).toList();
    }
  }

  /** Digest of each finished file. */
  private Map<String, String> contents() throws Exception {
    Map<String, String> contents = new HashMap<>();
    try (Stream<Path> files = Files.walk(outputs)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        if (file.toString().endsWith(".part")) continue;
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
        contents.put(
            outputs.relativize(file).toString(), java.util.HexFormat.of().formatHex(digest));
      }
    }
    return contents;
  }
}
