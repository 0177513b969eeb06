package clearbed.cli;

import static clearbed.cli.SampleOutputs.assertOwn;
import static clearbed.cli.SampleOutputs.save;
import static clearbed.cli.SampleOutputs.schedule;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.report.workbook.OfficeProgram;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the program wrote, left among the documents or come back from somebody. */
class OwnOutputsTest extends OutputsAmongDocuments {
  @Test
  void outputs_left_in_the_folder_answer_none_of_their_questions() throws Exception {
    SampleOutputs.copied(once, folder.resolve("all"));
    Path log = folder.resolve("all/log.xlsx");
    Path next = folder.resolve("next.xlsx");
    Path json = folder.resolve("next.json");

    Shell shell =
        Shell.run(
            "check",
            folder.resolve("all"),
            "--carry",
            log,
            "-o",
            next,
            "--json",
            json,
            "--date=2027-01-01");

    assertThat(shell.code()).as(shell.err()).isEqualTo(1);
    assertThat(shell.out())
        .doesNotContain("Besides")
        .contains("Not read, 10 own outputs: f.json, ");
    List<String> before = ids(once.resolve("f.json"));
    assertThat(before).hasSizeGreaterThan(10);
    assertThat(ids(json)).isEqualTo(before);
    Map<String, String> documents = new TreeMap<>();
    for (JsonNode each : tree(json).get("documents")) {
      documents.put(each.get("path").asText(), each.get("status").asText());
    }
    assertThat(documents).hasSize(15);
    documents.forEach(
        (path, status) ->
            assertThat(status)
                .as(path)
                .isEqualTo(path.startsWith("documents/") ? "read" : "ignored"));
  }

  private static JsonNode tree(Path file) throws IOException {
    return new ObjectMapper().readTree(file.toFile());
  }

  private static List<String> ids(Path file) throws IOException {
    List<String> ids = new ArrayList<>();
    tree(file).get("findings").forEach(each -> ids.add(each.get("id").asText()));
    return ids;
  }

  @Test
  void they_are_known_in_an_archive_and_under_other_names() throws Exception {
    Path packed = folder.resolve("issue.zip");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(packed))) {
      int number = 0;
      for (String each :
          List.of("log.xlsx", "q.docx", "marked/" + SCHEDULE, "marked/" + NOTES, "f.json")) {
        String extension = each.equals("f.json") ? ".txt" : each.substring(each.lastIndexOf('.'));
        zip.putNextEntry(new ZipEntry("data " + ++number + extension));
        Files.copy(once.resolve(each), zip);
      }
    }
    Files.move(put("q.md"), folder.resolve("minutes.txt"));
    List<Document> documents = SampleOutputs.all(folder);
    assertThat(documents).hasSize(6).allSatisfy(SampleOutputs::assertOwn);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"ClearbedFindings", "ClearbedOutput", "ClearbedMarkedCopy", "Clearbed notes"})
  void a_workbook_of_others_with_a_property_of_a_like_name_is_a_document(String property)
      throws Exception {
    for (String value : List.of("1", "findings sha-256:" + "0".repeat(64))) {
      try (XSSFWorkbook book = new XSSFWorkbook()) {
        schedule(book.createSheet("Findings"));
        book.createSheet("Ledger");
        book.getProperties().getCustomProperties().addProperty(property, value);
        save(book, folder.resolve("theirs.xlsx"));
      }
      assertThat(read("theirs.xlsx").status()).isEqualTo(Status.READ);
    }
  }

  @Test
  void a_text_of_others_that_ends_or_is_named_like_ours_is_a_document() throws Exception {
    String words = "Set glass tile GT-1 in white mortar to ANSI A118.15.\n";
    String end = "\nClearbed letter, SHA-256 of all above: " + "ab".repeat(32) + "\n";
    Files.writeString(folder.resolve("memo.txt"), words + end);
    Files.writeString(folder.resolve("memo.findings.txt"), words);
    assertThat(read("memo.txt").status()).isEqualTo(Status.READ);
    assertThat(read("memo.findings.txt").status()).isEqualTo(Status.READ);
  }

  @Test
  void a_register_of_others_is_a_document() throws Exception {
    Files.writeString(
        folder.resolve("register.csv"),
        """
        No.,Question,Status,Asked of,Date asked,Due,Answer,Note
        1,Which mortar for GT-1?,closed,Architect,2026-03-01,2026-03-05,ANSI A118.15,
        """);
    assertThat(read("register.csv").status()).isEqualTo(Status.READ);
  }

  @Test
  void another_program_may_save_it_in_any_format() throws Exception {
    Path log = put("log.xlsx");
    assumeTrue(OfficeProgram.openAndSave(log), "LibreOffice is not here");
    assertOwn(read("log.xlsx"));
    for (String format : List.of("ods", "pdf")) {
      OfficeProgram.convert(log, format);
      assertOwn(read("log." + format));
    }
    Path letter = put("q.docx");
    for (String format : List.of("odt", "rtf", "pdf", "html")) {
      OfficeProgram.convert(letter, format);
      assertOwn(read("q." + format));
    }
  }

  @Test
  void a_letter_that_was_written_in_still_answers_nothing() throws Exception {
    Path word = put("q.docx");
    try (XWPFDocument letter = new XWPFDocument(Files.newInputStream(word))) {
      letter.getParagraphs().stream()
          .filter(paragraph -> paragraph.getText().startsWith("Answer: "))
          .forEach(paragraph -> paragraph.createRun().setText("As suggested."));
      letter
          .getProperties()
          .getCustomProperties()
          .getUnderlyingProperties()
          .getPropertyList()
          .clear();
      try (OutputStream out = Files.newOutputStream(word)) {
        letter.write(out);
      }
    }
    Path text = put("q.md");
    Files.writeString(text, Files.readString(text).replace("Please answer", "Dear all, answer"));
    Path list = put("marked/07-92-00-joint-sealants.txt.findings.txt");
    Files.writeString(list, Files.readString(list).replace("Place:", "seen, Place:"));
    for (String name : List.of("q.docx", "q.md", list.getFileName().toString())) {
      assertOwn(read(name));
    }
  }
}
