package clearbed.strangers;

import clearbed.cli.Main;
import clearbed.strangers.Attempt.Wanted;
import clearbed.strangers.Verdict.End;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.management.OperatingSystemMXBean;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Runs attempts in this process, with all outputs, and judges what came of each. */
final class Trial {
  /** Seconds that one document may take. */
  static final int DOCUMENT_SECONDS = 5;

  /** Seconds beyond them by which there is an answer. */
  static final int GRACE_SECONDS = 10;

  private static final OperatingSystemMXBean PROCESS =
      ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

  private static final int LONGEST_LINE = 1_000;

  private static final Pattern LIMIT =
      Pattern.compile(
          "within \\d+ s|too large for the memory|larger than|more than|too (deep|many|often|long|wide)|at most"
              + "|proportion|beyond|the rest left out|too much|nested|longer than|has no room");

  /** What only a programmer understands. */
  private static final Pattern PROGRAM =
      Pattern.compile(
          "\\b(?!Web)[A-Z]\\w+(?:Exception|Error)\\b|Cannot invoke|java\\.(lang|util|io)|\\bat clearbed\\.");

  private final Path good;
  private final Path work;
  private final JsonNode before;
  private final Effects effects;

  /**
   * @param work an empty folder
   */
  Trial(Path work) throws IOException {
    this.work = work;
    this.good = goodNeighbours(work);
    Path folder = Files.createDirectories(work.resolve("before"));
    Ran ran = run(outputs(List.of("check", good.toString()), folder, true));
    if (ran.code > 1) throw new IOException(ran.printed);
    this.before = json(folder);
    this.effects = new Effects(folder);
  }

  /** A workbook that a run over the good documents alone writes. */
  byte[] log() throws IOException {
    return Files.readAllBytes(work.resolve("before/findings.xlsx"));
  }

  /** The letters of its questions, by extension. */
  Map<String, byte[]> letters() throws IOException {
    Map<String, byte[]> letters = new TreeMap<>();
    for (String extension : List.of("docx", "md")) {
      Path letter = work.resolve("letter." + extension);
      String book = work.resolve("before/findings.xlsx").toString();
      Ran ran = run(List.of("questions", book, "--overwrite", "-o", letter.toString()));
      if (ran.code != 0) throw new IOException(ran.printed);
      letters.put(extension, Files.readAllBytes(letter));
    }
    return letters;
  }

  /** Runs words that are to run again, for what the first run leaves. */
  static void filled(List<String> words, Path folder) throws IOException {
    Ran ran = run(outputs(words, Files.createDirectories(folder.resolve("first")), false));
    if (ran.code != 0) throw new IOException(ran.printed);
  }

  private static Path goodNeighbours(Path work) throws IOException {
    Path good = Files.createDirectories(work.resolve("good"));
    Path sealants = Path.of("sample-specs/draft/07-92-00-joint-sealants.txt");
    Files.copy(sealants, good.resolve(sealants.getFileName()));
    Files.writeString(
        good.resolve("schedule.csv"),
        "Tag,Material,Size,Mortar,Grout,Location\n"
            + "GT-1,Glass mosaic,1 x 1 in,ANSI A118.15,white epoxy,Pool\n"
            + "GT-2,Fused glass tile,4 x 4 in,ANSI A118.1,TBD,Lobby\n");
    return good;
  }

  private record Ran(int code, String printed, long millis) {}

  Verdict of(Attempt attempt) {
    Path folder = work.resolve("attempt");
    try {
      clear(folder);
      Files.createDirectories(folder);
      List<String> words = attempt.files().lay(good, folder);
      boolean check = words.get(0).equals("check");
      boolean all = attempt.kind().contains("outputs") || attempt.name().hashCode() % 3 == 0;
      Ran ran = run(check ? outputs(words, folder, all) : words);
      return verdict(attempt, words, folder, ran);
    } catch (IOException | RuntimeException e) {
      return new Verdict(End.FAILED, 0, "the attempt itself: " + e);
    } catch (OutOfMemoryError | StackOverflowError e) {
      return new Verdict(End.FAILED, 0, "the whole run ended: " + e);
    }
  }

  private static void clear(Path folder) throws IOException {
    if (!Files.exists(folder)) return;
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(java.util.Comparator.reverseOrder()).toList())
        Files.delete(file);
    }
  }

  private static List<String> outputs(List<String> words, Path folder, boolean all) {
    List<String> line = new ArrayList<>(words);
    line.addAll(List.of("--quiet", "--fail-on", "never", "--jobs", "2"));
    line.addAll(List.of("--document-timeout", "" + DOCUMENT_SECONDS));
    line.addAll(List.of("-o", folder.resolve("findings.xlsx").toString()));
    line.addAll(List.of("--json", folder.resolve("findings.json").toString()));
    if (!all) return line;
    line.addAll(List.of("--sarif", folder.resolve("findings.sarif").toString()));
    line.addAll(List.of("--view", folder.resolve("look.html").toString()));
    line.addAll(List.of("--annotate", folder.resolve("marked").toString()));
    return line;
  }

  private static Ran run(List<String> words) {
    PrintStream out = System.out;
    PrintStream err = System.err;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    PrintStream to = new PrintStream(printed, true, StandardCharsets.UTF_8);
    System.setOut(to);
    System.setErr(to);
    // On a machine that others use, too, the clock says too much; of several threads, the
    // processor.
    long start = PROCESS.getProcessCpuTime();
    long clock = System.nanoTime();
    try {
      int code = Main.run(words.toArray(String[]::new));
      long millis =
          Math.min(PROCESS.getProcessCpuTime() - start, System.nanoTime() - clock) / 1_000_000;
      return new Ran(code, printed.toString(StandardCharsets.UTF_8), millis);
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
  }

  private Verdict verdict(Attempt attempt, List<String> words, Path folder, Ran ran)
      throws IOException {
    String wrong = wrongWords(ran.printed);
    if (ran.millis > 1000L * (DOCUMENT_SECONDS + GRACE_SECONDS)) wrong = "too late";
    if (ran.code < 0 || ran.code > 3) wrong = "exit code " + ran.code;
    if (!wrong.isEmpty())
      return new Verdict(End.FAILED, ran.millis, wrong + ": " + brief(ran.printed));
    if (!Files.exists(folder.resolve("findings.json"))) return refused(attempt, ran);
    if (!Files.exists(folder.resolve("findings.xlsx"))) return refused(attempt, ran);
    wrong = effects.of(folder);
    if (!wrong.isEmpty()) return new Verdict(End.FAILED, ran.millis, wrong);
    JsonNode after = json(folder);
    wrong = neighbours(attempt, after, words.contains("--carry") || words.contains("--rules"));
    if (!wrong.isEmpty()) return new Verdict(End.FAILED, ran.millis, wrong);
    return documents(attempt, after, ran);
  }

  /** Nothing was done, for a reason that is said. */
  private static Verdict refused(Attempt attempt, Ran ran) {
    if (ran.code == 0) return answered(attempt, End.HANDLED, ran, ran.printed);
    if (ran.code < 2 || ran.printed.isBlank())
      return new Verdict(
          End.FAILED, ran.millis, "exit code " + ran.code + ": " + brief(ran.printed));
    return answered(
        attempt, LIMIT.matcher(ran.printed).find() ? End.LIMIT : End.NAMED, ran, ran.printed);
  }

  private static Verdict answered(Attempt attempt, End end, Ran ran, String said) {
    boolean silent = end == End.HANDLED && attempt.wanted() == Wanted.NAMED;
    return new Verdict(
        silent ? End.FAILED : end, ran.millis, (silent ? "passes for sound " : "") + brief(said));
  }

  private static String wrongWords(String printed) {
    if (PROGRAM.matcher(printed).find()) return "words of a program";
    for (String line : printed.split("\n")) {
      if (line.length() > LONGEST_LINE) return "a line of " + line.length();
      for (int i = 0; i < line.length(); i++) {
        int type = Character.getType(line.charAt(i));
        if (line.charAt(i) != '\t' && (type == Character.CONTROL || type == Character.FORMAT))
          return "a control character %04x".formatted((int) line.charAt(i));
      }
    }
    return "";
  }

  private JsonNode json(Path folder) throws IOException {
    return new ObjectMapper().readTree(folder.resolve("findings.json").toFile());
  }

  /** What was read of the good documents is what was read of them without the strange one. */
  private String neighbours(Attempt attempt, JsonNode after, boolean ruled) {
    if (!values(after).containsAll(values(before)))
      return "other values are read of good neighbours";
    if (attempt.wanted() != Wanted.ANSWER_ALONE || ruled) return "";
    return findings(after).equals(findings(before)) ? "" : "other findings in good neighbours";
  }

  /** Those that are of tiles and no more than that: the set as a whole has one document more. */
  private List<JsonNode> findings(JsonNode report) {
    List<JsonNode> findings = new ArrayList<>();
    for (JsonNode finding : report.get("findings")) {
      String document = finding.path("origin").path("document").asText();
      boolean ofTiles = !finding.path("tags").isEmpty();
      if (ofTiles && Files.exists(good.resolve(document))) findings.add(finding);
    }
    return findings;
  }

  private Set<String> values(JsonNode report) {
    Set<String> values = new TreeSet<>();
    for (JsonNode entry : report.get("entries"))
      for (JsonNode value : entry.get("values")) {
        String document = value.path("origin").path("document").asText();
        if (Files.exists(good.resolve(document))) values.add(entry.get("tag") + " " + value);
      }
    return values;
  }

  private Verdict documents(Attempt attempt, JsonNode after, Ran ran) throws IOException {
    Path strange = work.resolve("attempt/strange");
    if (!Files.isDirectory(strange)) return answered(attempt, End.HANDLED, ran, ran.printed);
    End end = null;
    StringBuilder said = new StringBuilder();
    for (JsonNode document : after.get("documents")) {
      if (Files.exists(good.resolve(document.get("path").asText().replace('\u0000', '_'))))
        continue;
      StringBuilder reasons = new StringBuilder(document.get("reason").asText());
      for (JsonNode gap : document.path("skipped"))
        reasons.append("; ").append(gap.get("reason").asText());
      said.append(document.get("status").asText()).append(": ").append(reasons).append(' ');
      End one =
          LIMIT.matcher(reasons).find()
              ? End.LIMIT
              : !document.get("status").asText().equals("read") ? End.NAMED : End.HANDLED;
      if (end == null || one.ordinal() > end.ordinal()) end = one;
      if (PROGRAM.matcher(reasons).find())
        return new Verdict(End.FAILED, ran.millis, "words of a program: " + reasons);
    }
    if (end == null) return new Verdict(End.FAILED, ran.millis, "not among the documents");
    return answered(attempt, end, ran, said.toString());
  }

  private static String brief(String text) {
    String line = text.replaceAll("\\p{C}", "?").strip();
    return line.length() <= 300 ? line : line.substring(0, 300);
  }
}
