package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.base.Deadline;
import clearbed.model.document.Document;
import clearbed.read.HostileFiles;
import clearbed.read.ReadAll;
import clearbed.read.source.ReadOptions;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run as a whole takes no more than its time, and says what it had none for. */
class TimeLimitTest {
  @TempDir Path folder;

  @Test
  void documents_that_the_run_has_no_time_for_are_named_and_not_unpacked() throws IOException {
    Files.writeString(folder.resolve("a.txt"), "Lay pipe to falls.");
    byte[] note = "Lay pipe to falls.".getBytes(StandardCharsets.UTF_8);
    Files.write(folder.resolve("b.zip"), HostileFiles.zip("note.txt", note));
    ReadOptions options = ReadOptions.defaults().withDeadline(Deadline.in(Duration.ZERO));

    List<Document> documents = ReadAll.by(options, folder);

    assertThat(documents).extracting(Document::path).containsExactly("a.txt", "b.zip!/note.txt");
    assertThat(documents)
        .allSatisfy(d -> assertThat(d.status()).isEqualTo(Document.Status.UNREADABLE))
        .allSatisfy(d -> assertThat(d.reason()).startsWith("not read: the run has used its 0 s"));
  }

  @Test
  void a_run_that_takes_twice_its_time_ends_and_says_what_was_written() throws Exception {
    Path schedule = folder.resolve("long.csv");
    String row = "GT-%d,Glass tile,ANSI A118.15,3 mm,TBD by architect %d%n";
    StringBuilder rows = new StringBuilder("Tag,Material,Mortar,Joint,Grout\n");
    for (int i = 0; i < 60_000; i++) rows.append(row.formatted(i, i));
    Files.writeString(schedule, rows);
    Path temporary = Files.createDirectory(folder.resolve("tmp"));
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1g",
                "-Djava.io.tmpdir=" + temporary,
                "-cp",
                System.getProperty("java.class.path"),
                "clearbed.cli.Main",
                "check",
                schedule.toString(),
                "--timeout",
                "1",
                "-o",
                folder.resolve("findings.xlsx").toString())
            .redirectErrorStream(true)
            .start();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).as(printed).isEqualTo(3);
    assertThat(printed)
        .contains("clearbed: the run took twice its 1 s; give it more by --timeout")
        .contains("clearbed: stopped; nothing was written: ");
    assertThat(folder.resolve("findings.xlsx")).doesNotExist();
    assertThat(temporary).isEmptyDirectory();
  }

  @Test
  void a_run_says_how_long_it_has_waited_for_documents_that_met_their_limit() throws IOException {
    String wide = "Tag" + ",Grout".repeat(100_000) + "\n";
    Files.writeString(folder.resolve("wide.csv"), wide.repeat(40));
    Path json = folder.resolve("findings.json");
    Shell run =
        Shell.run(
            "check",
            folder.resolve("wide.csv"),
            "--document-timeout",
            1,
            "-o",
            folder.resolve("findings.xlsx"),
            "--json",
            json);
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err())
        .containsPattern(
            "clearbed: waited \\d+ s in all for documents that met their limit of 1 s"
                + " \\(--document-timeout\\), 1 time\\R");
    JsonNode waited = new ObjectMapper().readTree(json.toFile()).get("run").get("waited");
    assertThat(waited.get("times").asInt()).isEqualTo(1);
    assertThat(waited.get("seconds").asInt()).isPositive();
  }

  @Test
  void a_time_of_nothing_is_refused() {
    Shell run = Shell.run("check", folder, "--timeout", 0);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--timeout 0: give 1 second or more");
  }
}
