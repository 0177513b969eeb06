package clearbed.read;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.read.guard.FaultyWorker;
import clearbed.read.guard.IsolatingReader;
import clearbed.read.source.ArchiveLimits;
import clearbed.read.source.ReadOptions;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** More than five hundred bad files beside fifty good ones. */
class FaultCorpusTest {
  private static final Set<String> FAULTS =
      Set.of(
          "hang.txt", "sleep.txt", "memory.txt", "stack.txt", "exit.txt", "halt.txt", "class.txt");

  @TempDir static Path folder;
  private static Map<String, byte[]> bad;

  @BeforeAll
  static void write() throws IOException {
    bad = FaultCorpus.bad();
    FaultCorpus.writeGood(folder.resolve("good"));
    FaultCorpus.write(bad, folder.resolve("bad"));
  }

  @AfterAll
  static void forget() {
    bad = Map.of();
  }

  @Test
  void theCommandFindsInTheGoodFilesWhatItFindsWithoutTheBadOnes() throws Exception {
    assertThat(bad).hasSizeGreaterThan(500);
    JsonNode clean = check(0, "good");
    JsonNode mixed = check(3, "good", "bad");

    assertThat(clean.get("findings")).isNotEmpty();
    for (String part : List.of("findings", "entries")) {
      List<JsonNode> more = list(mixed.get(part));
      more.removeAll(list(clean.get(part)));
      assertThat(more.stream().map(FaultCorpusTest::brief)).as(part).isEmpty();
      assertThat(mixed.get(part).equals(clean.get(part))).as(part).isTrue();
    }
    assertNamed(mixed);
  }

  /** Readers that hang, exit and fill the memory are in the batch too. */
  @Test
  void readersThatMisbehaveChangeNoOtherDocument() throws Exception {
    Path faults = Files.createDirectories(folder.resolve("faults"));
    for (String fault : FAULTS) {
      String kind = fault.replace(".txt", "");
      Files.writeString(faults.resolve(fault), "fault: " + kind);
    }
    List<Document> clean = read(folder.resolve("good"));
    Map<String, Document> mixed = new LinkedHashMap<>();
    for (Document d : read(folder.resolve("good"), folder.resolve("bad"), faults)) {
      mixed.put(d.path(), d);
    }

    for (Document d : clean) assertThat(d.equals(mixed.get(d.path()))).as(d.path()).isTrue();
    for (String name : bad.keySet()) {
      assertThat(mixed.keySet()).anyMatch(path -> path.equals(name) || path.startsWith(name + "!"));
    }
    mixed.forEach(
        (path, d) -> {
          if (FAULTS.contains(path)) assertThat(d.status()).as(path).isEqualTo(Status.UNREADABLE);
        });
  }

  private static List<Document> read(Path... roots) {
    IsolatingReader.Means means =
        new IsolatingReader.Means(Faults::reader, FaultyWorker.COMMAND, 1);
    ReadOptions options =
        ReadOptions.defaults().withJobs(2).withDocumentTimeout(Duration.ofSeconds(8));
    return ReadAll.by(
        new DocumentReader(List.of(roots), options, ArchiveLimits.standard(), means), 2);
  }

  /** Each bad file has its line; what is not read says why, and what is read is counted. */
  private static void assertNamed(JsonNode report) {
    Map<String, JsonNode> documents = new LinkedHashMap<>();
    report.get("documents").forEach(d -> documents.put(d.get("path").asText(), d));
    int read = 0;
    for (String name : bad.keySet()) {
      List<JsonNode> lines = new ArrayList<>();
      documents.forEach(
          (path, d) -> {
            if (path.equals(name) || path.startsWith(name + "!/")) lines.add(d);
          });
      assertThat(lines).as(name).isNotEmpty();
      for (JsonNode line : lines) {
        String status = line.get("status").asText();
        if (status.equals("read")) read++;
        if (status.equals("unreadable"))
          assertThat(line.get("reason").asText()).as(name).isNotEmpty();
      }
    }
    // Plain text has no wrong bits, and a format's slack may take one.
    assertThat(read).isLessThan(bad.size() / 2);
    documents.forEach(
        (path, d) -> {
          if (path.matches("(entities|outside|parameter|bomb|locked|empty|noise|escape).*")) {
            assertThat(d.get("status").asText()).as(path).isEqualTo("unreadable");
          }
        });
  }

  private static List<JsonNode> list(JsonNode array) {
    List<JsonNode> nodes = new ArrayList<>();
    array.forEach(nodes::add);
    return nodes;
  }

  private static String brief(JsonNode node) {
    String text = node.toString();
    return text.substring(0, Math.min(300, text.length()));
  }

  private static JsonNode check(int code, String... names)
      throws IOException, InterruptedException {
    Path work = Files.createTempDirectory(folder, "run");
    Path json = work.resolve("findings.json");
    List<String> words = new ArrayList<>();
    words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    words.addAll(List.of("-Xmx512m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"));
    words.add("-Djava.io.tmpdir=" + Files.createDirectory(work.resolve("tmp")));
    words.addAll(List.of("-cp", System.getProperty("java.class.path"), "clearbed.cli.Main"));
    words.addAll(List.of("check", "--quiet", "--fail-on", "never"));
    words.addAll(List.of("--output", work.resolve("findings.xlsx").toString()));
    words.addAll(List.of("--json", json.toString()));
    for (String name : names) words.add(folder.resolve(name).toString());
    Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(printed).isEqualTo(code);
    assertThat(printed.lines()).allMatch(line -> line.startsWith("clearbed: "));
    assertThat(work.resolve("tmp")).as("what is left behind").isEmptyDirectory();
    return new ObjectMapper().readTree(json.toFile());
  }
}
