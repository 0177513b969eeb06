package clearbed.strangers;

import static java.nio.charset.StandardCharsets.UTF_8;

import clearbed.read.HostileFiles;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Kills runs at random moments and looks at what they leave: outputs, temporary files, processes.
 * Takes an empty folder and how many runs to kill.
 */
public final class Kills {
  private static final List<String> COMMANDS = List.of("check", "carry", "annotate", "cache");
  private static final List<String> DATES = List.of("2026-03-02", "2026-04-06");
  private static final int RUNS_BETWEEN = 25;
  private static final int CHILD_SECONDS = 20;

  private final Path folder;
  private final Path documents;
  private final Path temporary;
  private final Path outputs;
  private final Path earlier;
  private final Random random = new Random();

  /** Contents that a whole run writes, by file. */
  private final Map<String, Set<Integer>> whole = new HashMap<>();

  private final Map<String, Long> millis = new HashMap<>();
  private final List<String> faults = new ArrayList<>();
  private int children;
  private int midway;

  private Kills(Path folder) throws IOException {
    this.folder = folder;
    this.documents = Files.createDirectories(folder.resolve("documents"));
    this.temporary = Files.createDirectories(folder.resolve("tmp"));
    this.outputs = Files.createDirectories(folder.resolve("outputs"));
    this.earlier = folder.resolve("earlier.xlsx");
    try (Stream<Path> samples = Files.list(Path.of("sample-specs/draft"))) {
      for (Path file : samples.toList()) Files.copy(file, documents.resolve(file.getFileName()));
    }
    // What goes beyond the stack of its reader is read again by a process of its own.
    Files.writeString(documents.resolve("deep.md"), "> ".repeat(200_000) + "drain");
    Path note = Path.of("sample-specs/draft/A-652-room-finish-schedule.csv");
    Files.write(
        documents.resolve("bundle.zip"),
        HostileFiles.zip("rooms.csv", Files.readString(note).getBytes(UTF_8)));
  }

  public static void main(String[] words) throws IOException, InterruptedException {
    System.out.println(run(Path.of(words[0]), Integer.parseInt(words[1])));
  }

  /** What came of it in words; faults begin with "FAULT". */
  static String run(Path folder, int count) throws IOException, InterruptedException {
    return new Kills(Files.createDirectories(folder)).kill(count);
  }

  private String kill(int count) throws IOException, InterruptedException {
    first();
    for (int i = 0; i < count; i++) {
      String command = COMMANDS.get(i % COMMANDS.size());
      killed(command, DATES.get(i / COMMANDS.size() % DATES.size()));
      outputsAreWhole(command);
      if (i % RUNS_BETWEEN == RUNS_BETWEEN - 1 || i == count - 1) nextRunLeavesNothing();
    }
    return count
        + " runs killed, "
        + midway
        + " of them with temporary files, "
        + children
        + " with processes of their own\n"
        + String.join("\n", faults);
  }

  /** Whole runs, to know what they write and how long they take. */
  private void first() throws IOException, InterruptedException {
    whole("check", DATES.get(0));
    Files.copy(outputs.resolve("check.xlsx"), earlier);
    for (String command : COMMANDS) for (String date : DATES) whole(command, date);
  }

  private void whole(String command, String date) throws IOException, InterruptedException {
    long start = System.nanoTime();
    Process process = start(command, date);
    if (process.waitFor() != 3) faults.add("FAULT exit code " + process.exitValue());
    millis.merge(command, (System.nanoTime() - start) / 1_000_000, Math::min);
    for (Path file : files()) {
      byte[] bytes = Files.readAllBytes(file);
      whole.computeIfAbsent(name(file), f -> new HashSet<>()).add(Arrays.hashCode(bytes));
    }
  }

  private void killed(String command, String date) throws IOException, InterruptedException {
    Process process = start(command, date);
    long most = millis.get(command) * 11 / 10;
    process.waitFor((long) (random.nextDouble() * most), TimeUnit.MILLISECONDS);
    List<ProcessHandle> own = process.descendants().toList();
    if (!own.isEmpty()) children++;
    process.destroyForcibly().waitFor();
    if (!isEmpty(temporary)) midway++;
    for (int i = 0; i < CHILD_SECONDS * 10 && own.stream().anyMatch(ProcessHandle::isAlive); i++)
      TimeUnit.MILLISECONDS.sleep(100);
    if (own.stream().anyMatch(ProcessHandle::isAlive))
      faults.add("FAULT a process lives on after " + command);
  }

  private void outputsAreWhole(String command) throws IOException {
    for (Path file : files()) {
      String name = name(file);
      byte[] bytes = Files.readAllBytes(file);
      boolean timed = name.endsWith(".json") || name.endsWith(".sarif") || name.endsWith(".html");
      boolean fine =
          timed ? isWhole(name, bytes) : whole.get(name).contains(Arrays.hashCode(bytes));
      if (!fine) faults.add("FAULT " + name + " is torn after " + command);
    }
  }

  /** Those that hold the time of the run. */
  private static boolean isWhole(String name, byte[] bytes) {
    String text = new String(bytes, UTF_8).strip();
    if (name.endsWith(".html")) return text.contains("</html>");
    try {
      return new ObjectMapper().readTree(text).isObject();
    } catch (IOException torn) {
      return false;
    }
  }

  /** It sweeps, it can take over the outputs and the cache, and it finds what a first run finds. */
  private void nextRunLeavesNothing() throws IOException, InterruptedException {
    for (String command : COMMANDS)
      if (start(command, DATES.get(0)).waitFor() != 3) faults.add("FAULT exit code of " + command);
    if (!isEmpty(temporary)) faults.add("FAULT temporary files after the next run");
    JsonNode plain = new ObjectMapper().readTree(outputs.resolve("check.json").toFile());
    JsonNode cached = new ObjectMapper().readTree(outputs.resolve("cache.json").toFile());
    if (!plain.get("findings").equals(cached.get("findings")))
      faults.add("FAULT the cache changes the findings");
    try (Stream<Path> all = Files.walk(outputs)) {
      if (all.anyMatch(file -> file.toString().endsWith(".part")))
        faults.add("FAULT a part is left among the outputs");
    }
    try (XSSFWorkbook book =
        new XSSFWorkbook(
            new ByteArrayInputStream(Files.readAllBytes(outputs.resolve("carry.xlsx"))))) {
      if (book.getSheet("Questions") == null) faults.add("FAULT the carried log is not whole");
    }
  }

  private Process start(String command, String date) throws IOException {
    List<String> words = new ArrayList<>();
    words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    words.addAll(List.of("-Xmx512m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"));
    words.addAll(List.of("-XX:-UsePerfData", "-Djava.io.tmpdir=" + temporary));
    words.addAll(List.of("-cp", System.getProperty("java.class.path"), "clearbed.cli.Main"));
    words.addAll(List.of("check", documents.toString(), "--quiet", "--fail-on", "never"));
    words.addAll(List.of("--date", date, "-o", outputs.resolve(command + ".xlsx").toString()));
    words.addAll(List.of("--json", outputs.resolve(command + ".json").toString()));
    switch (command) {
      case "carry" -> words.addAll(List.of("--carry", earlier.toString()));
      case "annotate" ->
          words.addAll(
              List.of(
                  "--annotate",
                  outputs.resolve("marked").toString(),
                  "--sarif",
                  outputs.resolve("annotate.sarif").toString(),
                  "--view",
                  outputs.resolve("annotate.html").toString()));
      case "cache" -> words.addAll(List.of("--cache", folder.resolve("cache").toString()));
      default -> {}
    }
    return new ProcessBuilder(words)
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("printed").toFile())
        .start();
  }

  /** The outputs, without what is still being written. */
  private List<Path> files() throws IOException {
    try (Stream<Path> all = Files.walk(outputs)) {
      return all.filter(Files::isRegularFile)
          .filter(file -> !file.toString().endsWith(".part"))
          .toList();
    }
  }

  private String name(Path file) {
    return outputs.relativize(file).toString();
  }

  private static boolean isEmpty(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.findAny().isEmpty();
    }
  }
}
