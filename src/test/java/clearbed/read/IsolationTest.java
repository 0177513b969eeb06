package clearbed.read;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.read.guard.FaultyWorker;
import clearbed.read.guard.IsolatingReader;
import clearbed.read.guard.WorkerCommand;
import clearbed.read.source.ArchiveLimits;
import clearbed.read.source.ReadOptions;
import clearbed.read.source.Source;
import clearbed.read.text.TextReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Parsers that hang, exhaust or end their process cost their own document and no other. */
class IsolationTest {
  private static final int HERE = Integer.MAX_VALUE;
  private static final int ELSEWHERE = 1;

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(ints = {HERE, ELSEWHERE})
  void everyFaultCostsOneLineAndTheOthersAreReadAsEver(int many) throws IOException {
    good();
    fault("hang");
    fault("sleep");
    fault("stack");
    fault("class");
    fault("error");
    fault("noise");

    Map<String, Document> read = read(many, 2);

    assertGood(read);
    assertThat(read.get("hang.txt").reason()).startsWith("not read within 2 s");
    assertThat(read.get("sleep.txt").reason()).startsWith("not read within 2 s");
    // A slow machine may meet the time limit before the end of the stack.
    assertThat(read.get("stack.txt").reason())
        .matches("(?s)(?:nested too deeply|not read within 2 s).*");
    assertThat(read.get("class.txt").reason()).startsWith("damaged or truncated text file (was");
    assertThat(read.get("error.txt").reason())
        .startsWith("damaged or truncated text file (a b")
        .doesNotContain("\u001b");
    assertThat(read.get("noise.txt").status()).isEqualTo(Status.READ);
  }

  @ParameterizedTest
  @ValueSource(ints = {HERE, ELSEWHERE})
  void aDocumentTooDeepForAThreadOfTheBatchIsReadAlone(int many) throws IOException {
    good();
    fault("deep");

    Map<String, Document> read = read(many, 20);

    assertGood(read);
    assertThat(read.get("deep.txt").status()).isEqualTo(Status.READ);
  }

  @ParameterizedTest
  @ValueSource(strings = {"exit", "halt", "memory"})
  void aWorkerThatEndsIsReplacedAndOnlyTheCulpritIsGivenUp(String fault) throws IOException {
    good();
    fault(fault);

    Map<String, Document> read = read(ELSEWHERE, 20);

    assertGood(read);
    assertThat(read.get(fault + ".txt").status()).isEqualTo(Status.UNREADABLE);
    assertThat(read.get(fault + ".txt").reason())
        .contains(fault.equals("memory") ? "too large for the memory given" : "ended the program");
  }

  @Test
  void aParserThatFillsTheMemoryInThisProcessDoesNotEndTheRun()
      throws IOException, InterruptedException {
    good();
    fault("memory");

    List<String> lines = runInOwnProcess();

    assertThat(lines).hasSize(14).last().isEqualTo("done");
    assertThat(lines.subList(0, 12)).allMatch(line -> line.endsWith(".txt READ "));
    assertThat(lines.get(12))
        .startsWith("x-memory.txt UNREADABLE ")
        .contains("too large for the memory given");
  }

  @Test
  void afterADocumentThatHangsTheRestIsReadWhereAHungOneCanBeStopped() throws IOException {
    good();
    for (int i = 0; i < 4; i++) {
      Files.writeString(folder.resolve("stuck" + i + ".txt"), "fault: hang");
    }

    Map<String, Document> read = read(HERE, 2);

    assertGood(read);
    for (int i = 0; i < 4; i++) {
      assertThat(read.get("stuck" + i + ".txt").reason()).startsWith("not read within 2 s");
    }
    assertThat(Thread.getAllStackTraces().keySet())
        .filteredOn(thread -> thread.isAlive() && thread.getName().startsWith("read stuck"))
        .hasSizeBetween(1, 2);
  }

  @Test
  void aWorkerThatCannotBeStartedIsDoneWithout() throws IOException {
    good();
    fault("stack");
    WorkerCommand missing = new WorkerCommand("clearbed.read.NoSuchWorker");

    Map<String, Document> read = read(new IsolatingReader.Means(Faults::reader, missing, 1), 20);

    assertGood(read);
    assertThat(read.get("stack.txt").reason()).startsWith("nested too deeply");
  }

  private void good() throws IOException {
    for (int i = 0; i < 12; i++) {
      Files.writeString(folder.resolve("good" + (char) ('a' + i) + ".txt"), "Mortar: A118.15");
    }
  }

  private void fault(String name) throws IOException {
    String prefix = name.equals("memory") ? "x-" : "";
    Files.writeString(folder.resolve(prefix + name + ".txt"), "fault: " + name);
  }

  private void assertGood(Map<String, Document> read) throws IOException {
    List<Document> clean = new ArrayList<>();
    for (Document d : read.values()) if (d.path().startsWith("good")) clean.add(d);
    assertThat(clean).hasSize(12);
    for (Document d : clean) {
      Source source = new Source(d.path(), folder.resolve(d.path()), false, false);
      assertThat(d).isEqualTo(new TextReader().read(source));
    }
  }

  private Map<String, Document> read(int many, int seconds) {
    return read(new IsolatingReader.Means(Faults::reader, FaultyWorker.COMMAND, many), seconds);
  }

  private Map<String, Document> read(IsolatingReader.Means means, int seconds) {
    ReadOptions options =
        ReadOptions.defaults().withJobs(2).withDocumentTimeout(Duration.ofSeconds(seconds));
    DocumentReader reader =
        new DocumentReader(List.of(folder), options, ArchiveLimits.standard(), means);
    return ReadAll.by(reader, 2).stream()
        .collect(Collectors.toMap(d -> d.path().replaceFirst("^x-", ""), document -> document));
  }

  private List<String> runInOwnProcess() throws IOException, InterruptedException {
    Path temporary = Files.createDirectory(folder.resolveSibling(folder.getFileName() + "-tmp"));
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx128m",
                "-Djava.io.tmpdir=" + temporary,
                "-cp",
                System.getProperty("java.class.path"),
                FaultyRun.class.getName(),
                folder.toString())
            .redirectErrorStream(true)
            .start();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(printed).isZero();
    assertThat(temporary).as("what workers leave behind").isEmptyDirectory();
    Files.delete(temporary);
    return printed.lines().toList();
  }
}
