package clearbed.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Runs the packaged program against bare text extraction and writes the comparison as a page: whole
 * batches, long schedules, the cold start, the cache; into {@code results.md}. Only the ratios mean
 * anything: both sides run in turn on whatever machine this is.
 *
 * <p>Properties: {@code files}, {@code rows} (lists), {@code repeats}, {@code threads}, {@code
 * seed}, {@code heap}.
 */
public final class WholeRuns {
  private final Path work;
  private final int repeats = Integer.getInteger("repeats", 5);
  private final int threads =
      Integer.getInteger("threads", Runtime.getRuntime().availableProcessors());
  private final long seed = Long.getLong("seed", 20260115);
  private final String heap = System.getProperty("heap", "512m");
  private final PrintStream out;

  private WholeRuns(Path work) throws IOException {
    this.work = work;
    // A file, as a quiet Maven holds back what is printed.
    this.out = new PrintStream(Files.newOutputStream(work.resolve("results.md")), true);
  }

  public static void main(String[] args) throws Exception {
    Path work = Path.of(args.length > 0 ? args[0] : "target/benchmark").toAbsolutePath();
    Files.createDirectories(work);
    WholeRuns runs = new WholeRuns(work);
    List<String> parts =
        Arrays.asList(System.getProperty("parts", "cold,batch,rows,cache").split(","));
    runs.out.printf(
        "Seed %d, %d threads, heap %s, %d repeats in alternation, medians.%n%n",
        runs.seed, runs.threads, runs.heap, runs.repeats);
    if (parts.contains("cold")) runs.coldStart();
    if (parts.contains("batch")) runs.batches(sizes("files", "100,1000,10000"));
    if (parts.contains("rows")) runs.rows(sizes("rows", "1000,20000,200000"));
    if (parts.contains("cache")) runs.cache(Integer.getInteger("cached", 1000));
  }

  private static List<Integer> sizes(String property, String standard) {
    return Arrays.stream(System.getProperty(property, standard).split(","))
        .map(Integer::valueOf)
        .toList();
  }

  private void coldStart() throws IOException, InterruptedException {
    out.println(
        "| Cold start, `check sample-specs/draft` against | s | bare, s | **ratio** | ratio of processor time | MB | bare, MB |");
    out.println("|---|---|---|---|---|---|---|");
    Path sample = Path.of("sample-specs/draft").toAbsolutePath();
    for (String how : List.of("tika", "poi")) {
      for (boolean archive : new boolean[] {false, true}) {
        List<String> bare = new ArrayList<>(java("clearbed.bench.BareOpen", archive));
        if (archive) makeArchive(how, sample);
        bare.addAll(List.of(how, sample.toString()));
        Duel duel = Duel.of(check(sample, threads), bare, repeats, log());
        String name =
            how.equals("tika") ? "Tika opening the files" : "POI and PDFBox opening the files";
        out.printf(
            "| %s%s | %s |%n", name, archive ? ", with a class archive too" : "", duel.cells());
      }
    }
    out.println();
  }

  private void batches(List<Integer> sizes) throws IOException, InterruptedException {
    out.println(
        "| Files | s | Tika, s | **ratio** | ratio of processor time | MB | Tika, MB | files/s | s per 100 files, to the first row |");
    out.println("|---|---|---|---|---|---|---|---|---|");
    double first = 0;
    for (int size : sizes) {
      Path folder = batch(size);
      int times = size > 2000 ? Math.min(3, repeats) : repeats;
      Duel duel = Duel.of(check(folder, threads), tika(folder), times, log());
      double per = duel.seconds() / size;
      if (first == 0) first = per;
      out.printf(
          Locale.ROOT, "| %,d | %s | %.0f | %.2f |%n", size, duel.cells(), 1 / per, per / first);
    }
    out.println();
  }

  private Path batch(int size) throws IOException {
    Path folder = work.resolve("batch-" + seed + "-" + size);
    if (!Files.exists(folder.resolve("done"))) {
      new Batch(seed).write(folder.resolve("files"), size);
      Files.writeString(folder.resolve("done"), "");
    }
    return folder.resolve("files");
  }

  private void rows(List<Integer> sizes) throws IOException, InterruptedException {
    out.println(
        "| Rows of one schedule | s | Tika, s | **ratio** | ratio of processor time | MB | Tika, MB | rows/s | s per row, to the first line |");
    out.println("|---|---|---|---|---|---|---|---|---|");
    for (String format : List.of("xlsx", "csv")) {
      double first = 0;
      for (int size : sizes) {
        Path file = work.resolve("rows-" + format + "-" + size).resolve("schedule." + format);
        if (!Files.exists(file)) new Batch(seed).writeLong(file, size);
        int times = size > 50_000 ? Math.min(3, repeats) : repeats;
        Duel duel = Duel.of(check(file.getParent(), threads), tika(file.getParent()), times, log());
        double per = duel.seconds() / size;
        if (first == 0) first = per;
        out.printf(
            Locale.ROOT,
            "| %,d, %s | %s | %,.0f | %.2f |%n",
            size,
            format,
            duel.cells(),
            1 / per,
            per / first);
      }
    }
    out.println();
  }

  private void cache(int size) throws IOException, InterruptedException {
    Path folder = batch(size);
    Path store = Files.createTempDirectory(work, "cache");
    List<String> without = check(folder, threads);
    List<String> with = new ArrayList<>(without);
    with.addAll(List.of("--cache", store.toString()));
    Duel filling =
        Duel.of(
            round -> {
              OneChange.empty(store);
              return with;
            },
            without,
            repeats,
            log());
    out.printf(
        "| %,d files, with `--cache` against without | s | without, s | **ratio** | ratio of processor time | MB | without, MB |%n",
        size);
    out.println("|---|---|---|---|---|---|---|");
    out.printf("| the first run, which fills it | %s |%n", filling.cells());
    for (OneChange change : OneChange.values()) {
      try (OneChange.Made made = change.in(folder)) {
        Duel duel =
            Duel.of(
                round -> {
                  List<String> command = new ArrayList<>(with);
                  command.addAll(made.round(round));
                  return command;
                },
                without,
                repeats,
                log());
        out.printf("| %s | %s |%n", change.words(), duel.cells());
      }
    }
    out.println();
  }

  private List<String> check(Path documents, int jobs) {
    return List.of(
        "/usr/bin/env",
        "CLEARBED_JAVA_OPTS=-Xmx" + heap,
        Path.of("target/clearbed/bin/clearbed").toAbsolutePath().toString(),
        "check",
        documents.toString(),
        "--quiet",
        "--fail-on",
        "never",
        "--jobs",
        String.valueOf(jobs),
        "-o",
        work.resolve("findings.xlsx").toString());
  }

  private List<String> tika(Path documents) {
    List<String> command = new ArrayList<>(java("clearbed.bench.BareBatch", false));
    command.addAll(List.of(String.valueOf(threads), documents.toString()));
    return command;
  }

  /** Plain Java, as anybody would start a program; the same libraries and heap. */
  private List<String> java(String main, boolean archive) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-Xmx" + heap);
    command.add("-Djava.awt.headless=true");
    if (archive) command.add("-XX:SharedArchiveFile=" + work.resolve("bare.jsa"));
    command.add("-cp");
    command.add(
        Path.of("target/clearbed/lib/clearbed.jar").toAbsolutePath()
            + java.io.File.pathSeparator
            + work.resolve("bench.jar"));
    command.add(main);
    return command;
  }

  private void makeArchive(String how, Path sample) throws IOException, InterruptedException {
    Files.deleteIfExists(work.resolve("bare.jsa"));
    List<String> command = new ArrayList<>(java("clearbed.bench.BareOpen", false));
    command.add(1, "-XX:DumpLoadedClassList=" + work.resolve("bare.classes"));
    command.add(1, "-Xshare:off");
    command.addAll(List.of(how, sample.toString()));
    Measured.run(command, log());
    command = new ArrayList<>(java("clearbed.bench.BareOpen", true));
    command.add(1, "-XX:SharedClassListFile=" + work.resolve("bare.classes"));
    command.add(1, "-Xshare:dump");
    Measured.run(command, log());
  }

  private Path log() {
    return work.resolve("run.log");
  }
}
