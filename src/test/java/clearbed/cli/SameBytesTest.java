package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sample project, checked again and again. */
class SameBytesTest {
  private static final Path SAMPLE = Path.of("sample-specs/draft");

  @TempDir Path folder;

  @Test
  void runs_on_the_same_documents_write_the_same_bytes_but_for_the_time_of_the_run()
      throws Exception {
    Map<String, String> sources = contents(SAMPLE);
    Map<String, String> first = outputs();
    assertThat(first)
        .containsKeys(
            "f.xlsx",
            "f.json",
            "f.sarif",
            "marked/A-651-tile-schedule.xlsx",
            "marked/09-30-00-tiling.docx",
            "marked/A-650-interior-finish-notes.pdf",
            "marked/07-92-00-joint-sealants.txt.findings.txt");
    for (int run = 0; run < 2; run++) {
      outputs()
          .forEach((name, bytes) -> assertThat(bytes.equals(first.get(name))).as(name).isTrue());
    }
    assertThat(contents(SAMPLE)).isEqualTo(sources);
  }

  @Test
  void the_next_run_passes_over_what_this_one_wrote_and_says_so() throws Exception {
    outputs();
    Path issue = folder.resolve("issue");
    copy(SAMPLE, issue);
    copy(folder.resolve("out"), issue.resolve("from the last run"));
    Path json = folder.resolve("again.json");
    Main.run(
        "check",
        issue.toString(),
        "--quiet",
        "-o",
        folder.resolve("again.xlsx").toString(),
        "--json",
        json.toString());
    var documents = new com.fasterxml.jackson.databind.ObjectMapper().readTree(json.toFile());
    assertThat(documents.get("documents"))
        .filteredOn(each -> each.get("path").asText().startsWith("from the last run/"))
        .hasSize(7)
        .allSatisfy(
            each -> {
              assertThat(each.get("status").asText()).isEqualTo("ignored");
              assertThat(each.get("reason").asText()).isNotBlank();
            });
  }

  private Map<String, String> outputs() throws IOException {
    Path out = Files.createDirectories(folder.resolve("out"));
    int code =
        Main.run(
            "check",
            SAMPLE.toString(),
            "--quiet",
            "--date",
            "2026-03-02",
            "-o",
            out.resolve("f.xlsx").toString(),
            "--json",
            out.resolve("f.json").toString(),
            "--sarif",
            out.resolve("f.sarif").toString(),
            "--annotate",
            out.resolve("marked").toString());
    assertThat(code).isEqualTo(1);
    return contents(out);
  }

  private static Map<String, String> contents(Path root) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.walk(root)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String text = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
        String timeless = text.replaceAll("\"(startedAt|startTimeUtc)\" ?: ?\"[^\"]*\"", "");
        contents.put(root.relativize(file).toString().replace('\\', '/'), timeless);
      }
    }
    return contents;
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      files
          .filter(Files::isRegularFile)
          .forEach(
              file -> {
                try {
                  Path target = to.resolve(from.relativize(file).toString());
                  Files.createDirectories(target.getParent());
                  Files.copy(file, target);
                } catch (IOException wrong) {
                  throw new UncheckedIOException(wrong);
                }
              });
    }
  }
}
