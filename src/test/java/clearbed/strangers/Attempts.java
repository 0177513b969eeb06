package clearbed.strangers;

import clearbed.strangers.Verdict.End;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.logging.LogManager;

/**
 * Sends everything that strangers may send, and prints a table of what came of it. Takes an empty
 * folder to work in and, to try a part, the start of the kinds or names.
 */
public final class Attempts {
  /** On the clock, after which a process that tries is taken for hung. */
  private static final int HUNG_SECONDS = 200;

  private Attempts() {}

  /**
   * @param log a findings workbook as we write it
   * @param letters the letters of its questions, by extension
   */
  static List<Attempt> all(byte[] log, Map<String, byte[]> letters) throws IOException {
    List<Attempt> all = new ArrayList<>();
    all.addAll(DamagedDocuments.all());
    all.addAll(HostileDocuments.all());
    all.addAll(HostileRules.all());
    all.addAll(HostileWorkbooks.all(log));
    all.addAll(HostileWord.all());
    all.addAll(HostileSheets.all());
    all.addAll(HostilePdf.all());
    all.addAll(HostileTexts.all());
    all.addAll(HostileArchives.all());
    all.addAll(HostileTables.all());
    all.addAll(HostileUses.all());
    all.addAll(HostileLetters.all(log, letters));
    return all;
  }

  public static void main(String[] words) throws IOException, InterruptedException {
    Path work = Path.of(words[0]);
    String part = words.length > 1 ? words[1] : "";
    if (words.length > 2) {
      tryFrom(work, part, Integer.parseInt(words[2]));
      return;
    }
    Path verdicts = Files.createDirectories(work).resolve("verdicts.tsv");
    Files.deleteIfExists(verdicts);
    Files.createFile(verdicts);
    while (!isDone(work, verdicts)) goOn(work, part, verdicts);
    System.out.print(table(Files.readAllLines(verdicts)));
  }

  private static boolean isDone(Path work, Path verdicts) throws IOException {
    return Files.exists(work.resolve("done"));
  }

  /** One process, until it is done, hangs, or has reached a limit that leaves threads behind. */
  private static void goOn(Path work, String part, Path verdicts)
      throws IOException, InterruptedException {
    int before = Files.readAllLines(verdicts).size();
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1g",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                Attempts.class.getName(),
                work.toString(),
                part,
                Integer.toString(before))
            .inheritIO()
            .start();
    int seen = before;
    while (!process.waitFor(HUNG_SECONDS, TimeUnit.SECONDS)) {
      int now = Files.readAllLines(verdicts).size();
      if (now == seen) process.destroyForcibly().waitFor();
      seen = now;
    }
    if (Files.exists(work.resolve("done"))) return;
    if (Files.readAllLines(verdicts).size() == seen && process.exitValue() != 0) {
      String name = Files.readString(work.resolve("now"));
      note(verdicts, name, new Verdict(End.FAILED, HUNG_SECONDS * 1000L, "no answer"));
    }
  }

  private static void tryFrom(Path work, String part, int from) throws IOException {
    LogManager.getLogManager().reset();
    Trial trial = new Trial(Files.createTempDirectory(work, "process"));
    List<Attempt> all = new ArrayList<>(all(trial.log(), trial.letters()));
    all.removeIf(a -> !(a.kind() + "/" + a.name()).startsWith(part));
    for (Attempt attempt : all.subList(from, all.size())) {
      String name = attempt.kind() + "\t" + attempt.name().replaceAll("\\p{C}|\\s", " ");
      Files.writeString(work.resolve("now"), name);
      Verdict verdict = trial.of(attempt);
      note(work.resolve("verdicts.tsv"), name, verdict);
      // A thread that was given up may go on.
      if (verdict.millis() > 1000L * Trial.DOCUMENT_SECONDS) Runtime.getRuntime().halt(0);
    }
    Files.writeString(work.resolve("done"), "");
    Runtime.getRuntime().halt(0);
  }

  private static void note(Path verdicts, String name, Verdict verdict) throws IOException {
    Files.writeString(verdicts, name + "\t" + verdict.line() + "\n", StandardOpenOption.APPEND);
  }

  /** A line for each kind. */
  private static String table(List<String> lines) {
    Map<String, List<Verdict>> kinds = new LinkedHashMap<>();
    for (String line : lines) {
      String[] parts = line.split("\t", 3);
      List<Verdict> total = kinds.computeIfAbsent(parts[0], kind -> new ArrayList<>());
      total.add(Verdict.of(parts[2]));
    }
    StringBuilder out =
        new StringBuilder(
            "| Kind | Tries | Read | Named | Limit | Failed | Worst, s |\n|---|---:|---:|---:|---:|---:|---:|\n");
    kinds.forEach((kind, all) -> out.append(row(kind, all)));
    List<Verdict> all = kinds.values().stream().flatMap(List::stream).toList();
    return out.append(row("all", all)).toString();
  }

  private static String row(String kind, List<Verdict> all) {
    StringBuilder out = new StringBuilder("| " + kind + " | " + all.size());
    for (End end : End.values())
      out.append(" | ").append(all.stream().filter(v -> v.end() == end).count());
    double worst = all.stream().mapToLong(Verdict::millis).max().orElse(0) / 1000.0;
    return out.append(" | %.1f |%n".formatted(worst)).toString();
  }
}
