package clearbed.mark;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.Report;
import clearbed.report.DemoReport;
import clearbed.report.FindingsJson;
import clearbed.report.FindingsSarif;
import clearbed.report.workbook.FindingsWorkbook;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a mark withstands, and what breaks it. */
class OwnMarkTest {
  private static final String DIGIT = "[0-9a-f]{64}";

  @TempDir Path folder;

  private static OwnOutput untouched(OutputKind kind) {
    return new OwnOutput(kind, true);
  }

  @Test
  void how_a_workbook_was_packed_does_not_count_and_what_is_in_it_does() throws Exception {
    Path book = folder.resolve("f.xlsx");
    FindingsWorkbook.write(DemoReport.report(), book);
    assertThat(OwnMark.of(book)).isEqualTo(untouched(OutputKind.FINDINGS));

    repack(book, "", "");
    assertThat(OwnMark.of(book)).isEqualTo(untouched(OutputKind.FINDINGS));

    repack(book, "xl/styles.xml", " ");
    assertThat(OwnMark.of(book)).isEqualTo(new OwnOutput(OutputKind.FINDINGS, false));
  }

  /** As another program packs it: not compressed, in another order, with the time of today. */
  private static void repack(Path file, String part, String more) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (ZipFile from = new ZipFile(file.toFile());
        ZipOutputStream to = new ZipOutputStream(packed)) {
      to.setLevel(0);
      List<? extends ZipEntry> entries = Collections.list(from.entries());
      Collections.reverse(entries);
      for (ZipEntry entry : entries) {
        to.putNextEntry(new ZipEntry(entry.getName()));
        from.getInputStream(entry).transferTo(to);
        if (entry.getName().equals(part)) to.write(more.getBytes(StandardCharsets.UTF_8));
      }
    }
    Files.write(file, packed.toByteArray());
  }

  @Test
  void a_long_workbook_whose_rows_are_streamed_is_marked_likewise() throws Exception {
    Path book = folder.resolve("f.xlsx");
    List<Finding> many =
        IntStream.range(0, 600)
            .mapToObj(i -> DemoReport.missing("mockup", "GT-" + i, Level.NOTE, "a mock-up"))
            .toList();
    Report report = DemoReport.report();
    FindingsWorkbook.write(
        new Report(report.run(), List.of(), List.of(), many, List.of(), List.of(), List.of()),
        book);
    assertThat(OwnMark.of(book)).isEqualTo(untouched(OutputKind.FINDINGS));
  }

  @Test
  void blanks_between_the_values_of_json_do_not_count() throws Exception {
    Path json = folder.resolve("f.json");
    FindingsJson.write(DemoReport.report(), json);
    assertThat(OwnMark.of(json)).isEqualTo(untouched(OutputKind.JSON));
    String text = Files.readString(json);
    Files.writeString(json, text.replace("\n", "\r\n").replace("  ", "\t"));
    assertThat(OwnMark.of(json)).isEqualTo(untouched(OutputKind.JSON));
    Files.writeString(json, text.replaceFirst("\"state\" : \"new\"", "\"state\" : \"open\""));
    assertThat(OwnMark.of(json)).isEqualTo(new OwnOutput(OutputKind.JSON, false));
    Files.writeString(json, text.replaceFirst("\"text\" : \"GT-1\"", "\"text\" : \"GT- 1\""));
    assertThat(OwnMark.of(json)).isEqualTo(new OwnOutput(OutputKind.JSON, false));
  }

  @Test
  void the_digest_of_json_does_not_hang_on_the_day_of_the_run() throws Exception {
    String march = json(DemoReport.report("2026-03-02", finding -> true));
    String april = json(DemoReport.report("2026-04-06", finding -> true));
    assertThat(march).isNotEqualTo(april);
    assertThat(digest(march)).isEqualTo(digest(april));
  }

  private static String json(Report report) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FindingsJson.write(report, out);
    return out.toString(StandardCharsets.UTF_8);
  }

  private static String digest(String json) {
    return json.substring(json.lastIndexOf("\"digest\""));
  }

  @Test
  void sarif_has_its_digest_among_its_properties() throws Exception {
    Path sarif = folder.resolve("f.sarif");
    FindingsSarif.write(DemoReport.report(), sarif);
    assertThat(OwnMark.of(sarif)).isEqualTo(untouched(OutputKind.SARIF));
    String text = Files.readString(sarif);
    assertThat(text).containsPattern("\"properties\" : \\{\\s+\"digest\" : \"" + DIGIT + "\"");
    Files.writeString(sarif, text.replaceFirst("\"level\" : \"error\"", "\"level\" : \"note\""));
    assertThat(OwnMark.of(sarif)).isEqualTo(new OwnOutput(OutputKind.SARIF, false));
  }

  @Test
  void line_ends_and_blanks_at_the_ends_of_lines_do_not_count_in_texts() throws Exception {
    Path letter = folder.resolve("q.md");
    String text = ClosingLine.closedMarkup("# Title\n\nä question\n", OutputKind.LETTER);
    assertThat(text).containsPattern("\n<!-- Clearbed letter, SHA-256 of all above: " + DIGIT);
    for (String same :
        List.of(text, text.replace("\n", "\r\n"), "\uFEFF" + text, text.strip(), text + "\n \n")) {
      Files.writeString(letter, same);
      assertThat(OwnMark.of(letter)).as(same).isEqualTo(untouched(OutputKind.LETTER));
    }
    for (String other :
        List.of(text.replace("question", "answer"), text.replace("# T", "#  T"), text + "Yes.\n")) {
      Files.writeString(letter, other);
      assertThat(OwnMark.of(letter)).as(other).isEqualTo(new OwnOutput(OutputKind.LETTER, false));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "PK\3\4 no zip",
        "{\"run\":{\"tool\":\"another\"}}",
        "Clearbed is a program.",
        "Clearbed minutes, SHA-256 of all above: none"
      })
  void what_others_wrote_is_not_ours(String text) throws Exception {
    Path file = Files.writeString(folder.resolve("x"), text);
    assertThat(OwnMark.of(file)).isNull();
  }
}
