package clearbed.cache;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import clearbed.base.codec.DamagedRecord;
import clearbed.base.codec.RecordInput;
import clearbed.base.codec.RecordOutput;
import clearbed.batch.Batch;
import clearbed.cli.Main;
import clearbed.model.document.Document;
import clearbed.model.report.Account;
import clearbed.read.DocumentReader;
import clearbed.read.source.ReadOptions;
import clearbed.recognise.Facts;
import clearbed.recognise.Recogniser;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.vocabulary.Vocabulary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CacheTest {
  private static CompletableFuture<Recogniser> recogniser;

  @TempDir Path folder;
  Path set;
  Path cache;

  @BeforeAll
  static void loadWords() throws IOException {
    recogniser = CompletableFuture.completedFuture(new Recogniser(Vocabulary.standard()));
  }

  @BeforeEach
  void copySamples() throws IOException {
    set = Files.createDirectory(folder.resolve("set"));
    cache = folder.resolve("cache");
    try (Stream<Path> files = Files.list(Path.of("sample-specs/draft"))) {
      for (Path file : files.toList()) Files.copy(file, set.resolve(file.getFileName()));
    }
  }

  @Test
  void what_was_recognised_comes_back_equal_in_every_part() throws IOException {
    List<Facts> fresh = run(1).results;
    Run again = run(1);
    assertThat(again.taken).isZero();
    assertThat(again.results).isEqualTo(fresh).hasSize(5);
    assertThat(fresh).allSatisfy(f -> assertThat(f.account()).isNotEqualTo(Account.NOTHING));
  }

  @Test
  void rows_that_nobody_asked_state_the_same_after_they_were_kept() throws IOException {
    Files.writeString(
        set.resolve("bill.csv"),
        """
        Dimensions in millimetres,,,,
        Mark,Description,Size,Joint,Grout
        P-71,Marsh range,300 x 600,3,"ANSI A118.7, grey"
        "P-72, P-73",Fen range,100 x 100,2,ANSI A118.3
        """);
    List<ScheduleRow> fresh = bill(run(1).results);
    Run again = run(1);
    assertThat(again.taken).isZero();
    assertThat(bill(again.results)).isEqualTo(fresh).hasSize(3).noneMatch(ScheduleRow::decided);
    assertThat(fresh).allSatisfy(row -> assertThat(row.statements()).hasSizeGreaterThan(2));
  }

  private static List<ScheduleRow> bill(List<Facts> results) {
    return results.stream()
        .filter(f -> f.document().path().endsWith("bill.csv"))
        .flatMap(f -> f.rows().stream())
        .toList();
  }

  @Test
  void only_a_changed_file_is_read_again() throws IOException {
    run(1);
    Path notes = set.resolve("07-92-00-joint-sealants.txt");
    Files.writeString(notes, Files.readString(notes) + "\nF. One more line.\n");
    assertThat(run(2).taken).isEqualTo(1);
    assertThat(run(2).taken).isZero();
  }

  @Test
  void a_file_of_the_same_bytes_elsewhere_is_read_for_its_own_places() throws IOException {
    run(1);
    Files.copy(set.resolve("A-652-room-finish-schedule.csv"), set.resolve("A-653-copy-of-it.csv"));
    Run second = run(1);
    assertThat(second.taken).isEqualTo(1);
    assertThat(second.results)
        .extracting(r -> r.document().path())
        .contains("A-653-copy-of-it.csv");
  }

  @Test
  void every_damaged_entry_is_read_anew_and_mended() throws IOException {
    List<Facts> fresh = run(1).results;
    List<Path> entries = entries();
    Random random = new Random(7);
    for (int round = 0; round < 11; round++) {
      for (Path entry : entries)
        Files.write(entry, damaged(Files.readAllBytes(entry), round, random));
      Run again = run(1);
      assertThat(again.taken).as("round %s", round).isEqualTo(5);
      assertThat(again.results).isEqualTo(fresh);
    }
    assertThat(run(1).taken).isZero();
  }

  private static byte[] damaged(byte[] bytes, int round, Random random) {
    if (round < 8) return java.util.Arrays.copyOf(bytes, bytes.length * round / 8);
    byte[] out = bytes.clone();
    out[random.nextInt(out.length)] ^= (byte) (1 << random.nextInt(8));
    return out;
  }

  @Test
  void an_entry_under_the_name_of_another_is_not_believed() throws IOException {
    List<Facts> fresh = run(1).results;
    List<Path> entries = entries();
    byte[] first = Files.readAllBytes(entries.get(0));
    for (Path entry : entries.subList(1, entries.size())) Files.write(entry, first);
    Run again = run(1);
    assertThat(again.taken).isEqualTo(entries.size() - 1);
    assertThat(again.results).isEqualTo(fresh);
  }

  @Test
  void what_could_not_be_read_is_tried_again() throws IOException {
    Files.writeString(set.resolve("broken.pdf"), "%PDF-1.7 and nothing else");
    run(1);
    Run again = run(1);
    assertThat(again.taken).isEqualTo(1);
    assertThat(again.results).anyMatch(r -> r.document().status() == Document.Status.UNREADABLE);
  }

  @Test
  void other_versions_and_long_unused_entries_go_and_strange_files_stay() throws IOException {
    run(1);
    Path old = cache.resolve("clearbed-0123456789abcdef/ab");
    Files.createDirectories(old);
    Files.writeString(old.resolve("ab".repeat(32)), "of another version");
    Path strange = cache.resolve("clearbed-fedcba9876543210/notes.txt");
    Files.createDirectories(strange.getParent());
    Files.writeString(strange, "mine");
    Path unused = entries().get(0);
    Files.setLastModifiedTime(unused, FileTime.from(Instant.EPOCH));
    try (Cache opened = Cache.open(cache, recogniser)) {
      assertThat(opened.failed()).isFalse();
    }
    assertThat(old.getParent()).doesNotExist();
    assertThat(unused).doesNotExist();
    assertThat(strange).hasContent("mine");
    assertThat(entries()).hasSize(4);
  }

  @Test
  void two_runs_at_once_share_a_cache() {
    List<CompletableFuture<Run>> runs = new ArrayList<>();
    for (int i = 0; i < 4; i++) runs.add(CompletableFuture.supplyAsync(() -> unchecked(3)));
    List<Facts> first = runs.get(0).join().results;
    assertThat(runs).allSatisfy(r -> assertThat(r.join().results).isEqualTo(first));
    assertThat(unchecked(1).taken).isZero();
  }

  @Test
  void findings_with_a_cache_are_byte_for_byte_those_without() throws IOException {
    Path without = check("without", JSON);
    Path filling = check("filling", CACHE, JSON);
    Path filled = check("filled", CACHE, JSON, List.of("--jobs", "1"));
    assertThat(entries()).hasSize(5);
    assertThat(filling).hasSameBinaryContentAs(without);
    assertThat(filled).hasSameBinaryContentAs(without);
    assertThat(json("filled")).isEqualTo(json("without"));
  }

  @Test
  void spoilt_facts_under_a_right_seal_are_read_anew_and_mended() throws IOException {
    Path without = check("without");
    check("filling", CACHE);
    spoilFacts();
    Path filled = check("filled", CACHE);
    assertThat(filled).hasSameBinaryContentAs(without);
    assertThat(run(1).taken).isZero();
  }

  @Test
  void another_day_another_folder_and_an_earlier_workbook_are_heeded() throws IOException {
    Path first = check("first", CACHE);
    List<String> later = List.of("--date", "2026-03-01");
    assertThat(check("later", CACHE, later)).hasSameBinaryContentAs(check("plain", later));
    Files.createDirectory(folder.resolve("out"));
    assertThat(check("out/cached", CACHE))
        .hasSameBinaryContentAs(check("out/plain"))
        .satisfies(moved -> assertThat(Files.readAllBytes(moved)).isNotEqualTo(bytes(first)));
    List<String> carry = List.of("--carry", first.toString());
    assertThat(check("carried", CACHE, later, carry))
        .hasSameBinaryContentAs(check("carriedPlain", later, carry));
  }

  @Test
  void other_words_and_other_rules_are_worked_out_anew() throws IOException {
    check("first", CACHE);
    Path rooms = set.resolve("A-652-room-finish-schedule.csv");
    Files.writeString(rooms, Files.readString(rooms).replace("GT-1", "GT-4"));
    assertThat(check("changed", CACHE)).hasSameBinaryContentAs(check("changedPlain"));
    Path layer =
        Files.writeString(
            folder.resolve("layer.yaml"),
            """
            layer: trial
            suppress:
              - check: backing
                reason: shown last year
            """);
    List<String> rules = List.of("--rules", layer.toString());
    assertThat(check("ruled", CACHE, rules))
        .hasSameBinaryContentAs(check("ruledPlain", rules))
        .satisfies(
            ruled -> assertThat(bytes(ruled)).isNotEqualTo(bytes(folder.resolve("changed.xlsx"))));
    List<String> iso = List.of("--set", "iso-en");
    assertThat(check("iso", CACHE, iso)).hasSameBinaryContentAs(check("isoPlain", iso));
  }

  @Test
  void what_changes_no_finding_leaves_the_workbook_as_it_was() throws IOException {
    Path first = check("first", CACHE);
    Path sealants = set.resolve("07-92-00-joint-sealants.txt");
    Files.writeString(sealants, Files.readString(sealants) + "\n\n\n");
    assertThat(check("second", CACHE)).hasSameBinaryContentAs(first);
  }

  @Test
  void a_cache_inside_the_set_is_not_read_as_documents() throws IOException {
    cache = set.resolve("cache");
    check("one", CACHE);
    check("two", CACHE, JSON);
    assertThat(json("two")).contains("written by this run").doesNotContain("CACHEDIR");
  }

  @Test
  void a_file_in_the_place_of_the_folder_is_refused() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "x");
    assertThatThrownBy(() -> Cache.open(file, recogniser)).hasMessageContaining("not a folder");
    assertThat(Main.run("check", set.toString(), "--quiet", "--cache", file.toString()))
        .isEqualTo(2);
    assertThat(file).hasContent("x");
  }

  private record Run(List<Facts> results, int taken) {}

  private Run unchecked(int jobs) {
    try {
      return run(jobs);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private Run run(int jobs) throws IOException {
    AtomicInteger taken = new AtomicInteger();
    List<Facts> results = new ArrayList<>();
    ReadOptions options = ReadOptions.defaults().withJobs(jobs);
    try (Cache opened = Cache.open(cache, recogniser)) {
      FactStore counted =
          (source, take) ->
              opened.facts(
                  source,
                  () -> {
                    taken.incrementAndGet();
                    return take.get();
                  });
      DocumentReader reader = new DocumentReader(List.of(set), options);
      try (Batch batch = new Batch(reader, jobs, counted, recogniser)) {
        batch.forEachRemaining(results::add);
      }
      assertThat(opened.failed()).isFalse();
    }
    return new Run(results, taken.get());
  }

  private static final List<String> JSON = List.of("--json", "json");
  private static final List<String> CACHE = List.of("--cache", "cache");

  @SafeVarargs
  private Path check(String name, List<String>... more) {
    Path output = folder.resolve(name + ".xlsx");
    List<String> words = new ArrayList<>(List.of("check", set.toString(), "--quiet"));
    words.addAll(List.of("-o", output.toString()));
    for (List<String> some : more) {
      if (some == CACHE) words.addAll(List.of("--cache", cache.toString()));
      else if (some == JSON)
        words.addAll(List.of(some.get(0), folder.resolve(name + "." + some.get(1)).toString()));
      else words.addAll(some);
    }
    if (!words.contains("--date")) words.addAll(List.of("--date", "2026-01-31"));
    assertThat(Main.run(words.toArray(String[]::new))).isEqualTo(1);
    return output;
  }

  private static byte[] bytes(Path file) throws IOException {
    return Files.readAllBytes(file);
  }

  private String json(String name) throws IOException {
    return Files.readString(folder.resolve(name + ".json")).replaceAll("\"startedAt\"[^\\n]*", "");
  }

  /** Leaves no facts in what was recognised, under a seal that is right. */
  private void spoilFacts() throws IOException {
    for (Path entry : entries()) {
      try {
        RecordInput in = RecordInput.open(Files.readAllBytes(entry), Cache.LAYOUT);
        RecordOutput out = new RecordOutput();
        out.text(in.text());
        out.text("no facts");
        Files.write(entry, out.toBytes(Cache.LAYOUT));
      } catch (DamagedRecord e) {
        throw new IllegalStateException(e);
      }
    }
  }

  private List<Path> entries() throws IOException {
    if (!Files.exists(cache)) return List.of();
    try (Stream<Path> files = Files.walk(cache)) {
      return files
          .filter(f -> f.getFileName().toString().matches("[0-9a-f]{64}"))
          .filter(f -> !f.toString().contains("clearbed-0123456789abcdef"))
          .sorted(Comparator.naturalOrder())
          .toList();
    }
  }
}
