package clearbed.cli.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.condition.OS.LINUX;

import clearbed.base.io.AtomicFile;
import clearbed.cli.Main;
import clearbed.mark.OwnMark;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.io.TempDir;

/** Who stops a run is told what was and what was not written. */
class StoppedTest {
  private static final int PROJECTS = 12;
  private static final int PATIENCE_SECONDS = 120;

  @TempDir Path folder;

  private Path out(String name) {
    return folder.resolve(name);
  }

  private static void write(Path file, String words) throws IOException {
    AtomicFile.write(file, to -> to.write(words.getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void it_names_what_is_there_and_what_is_not() throws IOException {
    Path book = out("findings.xlsx");
    Path json = out("findings.json");
    write(book, "of an earlier run");
    try (Stopped stopped = new Stopped(new PrintWriter(new StringWriter()), book, null, json)) {
      assertThat(stopped.words())
          .isEqualTo("stopped; nothing was written: " + book + ", " + json + " as before");
      // The run is stopped before it can say that the file is there.
      write(book, "of this run, and so another");
      assertThat(stopped.words()).isEqualTo("stopped; written: " + book + "; not written: " + json);
      write(json, "{}");
      assertThat(stopped.words()).isEqualTo("stopped; written: " + book + ", " + json);
    }
  }

  @Test
  void of_a_folder_it_says_how_many_files_came_into_it() throws IOException {
    Path copies = Files.createDirectory(out("copies"));
    write(copies.resolve("earlier.pdf"), "of an earlier run");
    Instant start = Files.getLastModifiedTime(copies.resolve("earlier.pdf")).toInstant();
    try (Stopped stopped =
        new Stopped(new PrintWriter(new StringWriter()), start.plusNanos(1), copies)) {
      assertThat(stopped.words()).startsWith("stopped; nothing was written");
      write(copies.resolve("one.pdf"), "a copy");
      Files.writeString(copies.resolve(".two.pdf.part"), "half a co");
      assertThat(stopped.words()).isEqualTo("stopped; in part: " + copies + " (1 file)");
      stopped.written(copies);
      assertThat(stopped.words()).isEqualTo("stopped; written: " + copies);
    }
  }

  @EnabledOnOs(LINUX)
  @Test
  void a_run_on_many_files_that_is_interrupted_while_it_reads_leaves_the_earlier_outputs()
      throws Exception {
    write(out("log.xlsx"), "of an earlier run");
    String said = interrupted(() -> anyFile(out("cache")));
    assertThat(said).endsWith("as before\n").contains("stopped; nothing was written: ");
    assertThat(out("log.xlsx")).hasContent("of an earlier run");
    assertThat(out("log.json")).doesNotExist();
  }

  @EnabledOnOs(LINUX)
  @Test
  void one_that_is_interrupted_while_it_writes_leaves_each_file_whole_or_not_at_all()
      throws Exception {
    String said = interrupted(() -> anyFile(out("copies")));
    assertThat(said)
        .contains("stopped; written: " + out("log.xlsx") + ", " + out("log.json"))
        .containsPattern("; in part: .*copies \\(\\d+ files?\\); not written: .*view.html");
    try (XSSFWorkbook book = new XSSFWorkbook(out("log.xlsx").toFile())) {
      assertThat(book.getSheet("Findings").getLastRowNum()).isGreaterThan(PROJECTS);
    }
    assertThat(new ObjectMapper().readTree(out("log.json").toFile()).get("findings"))
        .hasSizeGreaterThan(PROJECTS);
    assertThat(out("view.html")).doesNotExist();
    // Each copy is one of ours and as it was written.
    for (Path copy : filesIn(out("copies"))) {
      assertThat(OwnMark.of(copy)).as("%s", copy).isNotNull();
      assertThat(OwnMark.of(copy).untouched()).as("%s", copy).isTrue();
    }
  }

  /** Starts the program on many files, interrupts it once something is there; what it says then. */
  private String interrupted(BooleanSupplier there) throws Exception {
    Path documents = Files.createDirectory(out("documents"));
    for (int i = 0; i < PROJECTS; i++) {
      Path project = Files.createDirectory(documents.resolve("part-" + i));
      try (Stream<Path> samples = Files.list(Path.of("sample-specs/draft"))) {
        for (Path file : samples.toList())
          Files.copy(file, project.resolve(file.getFileName().toString()));
      }
    }
    List<String> line = new ArrayList<>();
    // A job in the background starts with interrupts ignored, and this test may run in one.
    line.addAll(List.of("env", "--default-signal=INT"));
    line.addAll(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
    line.addAll(List.of("-Xmx512m", "-cp", System.getProperty("java.class.path")));
    line.addAll(List.of(Main.class.getName(), "check", documents.toString(), "--overwrite"));
    line.addAll(List.of("--jobs", "1", "--cache", out("cache").toString()));
    line.addAll(List.of("-o", out("log.xlsx").toString(), "--json", out("log.json").toString()));
    line.addAll(List.of("--annotate", out("copies").toString()));
    line.addAll(List.of("--view", out("view.html").toString()));
    Process run =
        new ProcessBuilder(line)
            .redirectError(out("error").toFile())
            .redirectOutput(out("said").toFile())
            .start();
    try {
      long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
      while (!there.getAsBoolean()) {
        assertThat(run.isAlive()).as(Files.readString(out("error"))).isTrue();
        assertThat(System.nanoTime()).isLessThan(end);
        TimeUnit.MILLISECONDS.sleep(5);
      }
      new ProcessBuilder("kill", "-INT", Long.toString(run.pid())).start().waitFor();
      assertThat(run.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
      assertThat(run.exitValue()).isEqualTo(130);
      return Files.readString(out("error"));
    } finally {
      run.destroyForcibly().waitFor();
    }
  }

  private static boolean anyFile(Path folder) {
    try {
      return !filesIn(folder).isEmpty();
    } catch (IOException | UncheckedIOException meanwhile) {
      return false;
    }
  }

  /** The files that are not hidden. */
  private static List<Path> filesIn(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) return List.of();
    try (Stream<Path> files = Files.walk(folder)) {
      return files
          .filter(Files::isRegularFile)
          .filter(file -> !file.getFileName().toString().startsWith("."))
          .toList();
    }
  }
}
