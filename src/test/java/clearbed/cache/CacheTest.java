package clearbed.cache;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import clearbed.base.codec.DamagedRecord;
import clearbed.base.codec.RecordCodec;
import clearbed.base.codec.RecordInput;
import clearbed.base.codec.RecordOutput;
import clearbed.cli.Main;
import clearbed.model.Content;
import clearbed.model.Document;
import clearbed.read.DocumentReader;
import clearbed.read.ReadOptions;
import clearbed.read.Treatment;
import clearbed.recognise.Limits;
import clearbed.recognise.Recognised;
import clearbed.recognise.Recogniser;
import clearbed.recognise.ScheduleRow;
import clearbed.recognise.Vocabulary;
import java.io.IOException;
import java.nio.ByteBuffer;
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
  private static Recogniser recogniser;

  @TempDir Path folder;
  Path set;
  Path cache;

  @BeforeAll
  static void loadWords() throws IOException {
    recogniser = new Recogniser(Vocabulary.standard());
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
    List<Recognised> fresh = run(1).results;
    Run again = run(1);
    assertThat(again.treated).isZero();
    assertThat(again.results).isEqualTo(fresh).hasSize(5);
    assertThat(fresh).allSatisfy(r -> assertThat(r.facts()).isNotNull());
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
    assertThat(again.treated).isZero();
    assertThat(bill(again.results)).isEqualTo(fresh).hasSize(3).noneMatch(ScheduleRow::decided);
    assertThat(fresh).allSatisfy(row -> assertThat(row.statements()).hasSizeGreaterThan(2));
  }

  private static List<ScheduleRow> bill(List<Recognised> results) {
    return results.stream()
        .filter(r -> r.document().path().endsWith("bill.csv"))
        .flatMap(r -> r.facts().rows().stream())
        .toList();
  }

  @Test
  void only_a_changed_file_is_read_again() throws IOException {
    run(1);
    Path notes = set.resolve("07-92-00-joint-sealants.txt");
    Files.writeString(notes, Files.readString(notes) + "\nF. One more line.\n");
    assertThat(run(2).treated).isEqualTo(1);
    assertThat(run(2).treated).isZero();
  }

  @Test
  void a_file_of_the_same_bytes_elsewhere_is_read_for_its_own_places() throws IOException {
    run(1);
    Files.copy(set.resolve("A-652-room-finish-schedule.csv"), set.resolve("A-653-copy-of-it.csv"));
    Run second = run(1);
    assertThat(second.treated).isEqualTo(1);
    assertThat(second.results)
        .extracting(r -> r.document().path())
        .contains("A-653-copy-of-it.csv");
  }

  @Test
  void every_damaged_entry_is_read_anew_and_mended() throws IOException {
    List<Recognised> fresh = run(1).results;
    List<Path> entries = entries();
    Random random = new Random(7);
    for (int round = 0; round < 11; round++) {
      for (Path entry : entries)
        Files.write(entry, damaged(Files.readAllBytes(entry), round, random));
      Run again = run(1);
      assertThat(again.treated).as("round %s", round).isEqualTo(5);
      assertThat(again.results).isEqualTo(fresh);
    }
    assertThat(run(1).treated).isZero();
  }

  private static byte[] damaged(byte[] bytes, int round, Random random) {
    if (round < 8) return java.util.Arrays.copyOf(bytes, bytes.length * round / 8);
    byte[] out = bytes.clone();
    out[random.nextInt(out.length)] ^= (byte) (1 << random.nextInt(8));
    return out;
  }

  @Test
  void an_entry_under_the_name_of_another_is_not_believed() throws IOException {
    List<Recognised> fresh = run(1).results;
    List<Path> entries = entries();
    byte[] first = Files.readAllBytes(entries.get(0));
    for (Path entry : entries.subList(1, entries.size())) Files.write(entry, first);
    Run again = run(1);
    assertThat(again.treated).isEqualTo(entries.size() - 1);
    assertThat(again.results).isEqualTo(fresh);
  }

  @Test
  void what_could_not_be_read_is_tried_again() throws IOException {
    Files.writeString(set.resolve("broken.pdf"), "%PDF-1.7 and nothing else");
    run(1);
    Run again = run(1);
    assertThat(again.treated).isEqualTo(1);
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
    try (Cache opened = Cache.open(cache)) {
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
    List<Recognised> first = runs.get(0).join().results;
    assertThat(runs).allSatisfy(r -> assertThat(r.join().results).isEqualTo(first));
    assertThat(unchecked(1).treated).isZero();
  }

  @Test
  void findings_with_a_cache_are_byte_for_byte_those_without() throws IOException {
    Path without = check("without", JSON);
    Path filling = check("filling", CACHE, JSON);
    Path filled = check("filled", CACHE, JSON, List.of("--jobs", "1"));
    assertThat(readings()).hasSize(5);
    assertThat(results()).hasSize(2);
    assertThat(filling).hasSameBinaryContentAs(without);
    assertThat(filled).hasSameBinaryContentAs(without);
    assertThat(json("filled")).isEqualTo(json("without"));
  }

  @Test
  void what_came_of_it_is_recalled_and_every_output_is_the_same() throws IOException {
    Path without = check("without", SARIF);
    check("filling", CACHE);
    spoilFacts();
    List<Long> before = sizes();
    Path filled = check("filled", CACHE, SARIF);
    assertThat(sizes()).as("no file was read again, though no facts are left").isEqualTo(before);
    assertThat(filled).hasSameBinaryContentAs(without);
    assertThat(sarif("filled")).isEqualTo(sarif("without"));
  }

  @Test
  void spoilt_facts_under_a_right_seal_are_read_anew_and_mended() throws IOException {
    Path without = check("without");
    check("filling", CACHE);
    spoilFacts();
    for (Path result : results()) Files.delete(result);
    Path filled = check("filled", CACHE);
    assertThat(filled).hasSameBinaryContentAs(without);
    assertThat(run(1).treated).isZero();
    assertThat(run(1).results).allSatisfy(r -> assertThat(r.facts()).isNotNull());
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
    assertThat(results()).as("one workbook for both").hasSizeLessThanOrEqualTo(3);
  }

  @Test
  void damaged_results_are_worked_out_anew_and_mended() throws IOException {
    Path without = check("without");
    check("filling", CACHE);
    List<Path> results = results();
    List<byte[]> whole = new ArrayList<>();
    for (Path result : results) whole.add(Files.readAllBytes(result));
    Random random = new Random(11);
    for (int round = 0; round < 11; round++) {
      for (Path result : results)
        Files.write(result, damaged(Files.readAllBytes(result), round, random));
      assertThat(check("again", CACHE)).hasSameBinaryContentAs(without);
      for (int i = 0; i < whole.size(); i++)
        assertThat(results.get(i)).as("round %s", round).hasBinaryContent(whole.get(i));
    }
    Files.write(results.get(0), whole.get(1));
    Files.write(results.get(1), whole.get(0));
    assertThat(check("swapped", CACHE)).hasSameBinaryContentAs(without);
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
    assertThatThrownBy(() -> Cache.open(file)).hasMessageContaining("not a folder");
    assertThat(Main.run("check", set.toString(), "--quiet", "--cache", file.toString()))
        .isEqualTo(2);
    assertThat(file).hasContent("x");
  }

  private record Run(List<Recognised> results, int treated) {}

  private Run unchecked(int jobs) {
    try {
      return run(jobs);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private Run run(int jobs) throws IOException {
    AtomicInteger treated = new AtomicInteger();
    List<Recognised> results = new ArrayList<>();
    try (Cache opened = Cache.open(cache)) {
      Treatment<Known> treatment =
          new Treatment<>() {
            @Override
            public Known of(Document document) {
              treated.incrementAndGet();
              return Known.of(Recognised.of(document, recogniser));
            }

            @Override
            public Memory<Known> memory(String path, boolean named, Path file) {
              return opened.readings().memory(path, named, file, () -> recogniser);
            }
          };
      new DocumentReader(ReadOptions.defaults().withJobs(jobs))
          .read(List.of(set), treatment, known -> results.add(whole(known)));
      assertThat(opened.failed()).isFalse();
    }
    return new Run(results, treated.get());
  }

  private static Recognised whole(Known known) {
    try {
      return new Recognised(known.document(), known.facts());
    } catch (DamagedRecord e) {
      throw new IllegalStateException(e);
    }
  }

  private static final List<String> JSON = List.of("--json", "json");
  private static final List<String> SARIF = List.of("--sarif", "sarif");
  private static final List<String> CACHE = List.of("--cache", "cache");

  @SafeVarargs
  private Path check(String name, List<String>... more) {
    Path output = folder.resolve(name + ".xlsx");
    List<String> words = new ArrayList<>(List.of("check", set.toString(), "--quiet"));
    words.addAll(List.of("-o", output.toString()));
    for (List<String> some : more) {
      if (some == CACHE) words.addAll(List.of("--cache", cache.toString()));
      else if (some == JSON || some == SARIF)
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

  private String sarif(String name) throws IOException {
    return Files.readString(folder.resolve(name + ".sarif"))
        .replaceAll("\"startTimeUtc\"[^\\n]*", "");
  }

  /** Leaves no facts in what was recognised, under a seal that is right. */
  private void spoilFacts() throws IOException {
    RecordCodec codec = new RecordCodec(Content.class, Limits.class);
    for (Path entry : readings()) {
      try {
        RecordInput in = RecordInput.open(Files.readAllBytes(entry), ReadingCache.LAYOUT);
        RecordOutput out = new RecordOutput();
        out.text(in.text());
        codec.write(out, codec.read(in, Document.class), Document.class);
        out.text(in.text());
        out.bytes(new byte[] {1, 2, 3});
        Files.write(entry, out.toBytes(ReadingCache.LAYOUT));
      } catch (DamagedRecord e) {
        throw new IllegalStateException(e);
      }
    }
  }

  private List<Long> sizes() throws IOException {
    List<Long> sizes = new ArrayList<>();
    for (Path entry : readings()) sizes.add(Files.size(entry));
    return sizes;
  }

  private List<Path> readings() throws IOException {
    return entries().stream().filter(e -> isOf(e, ReadingCache.LAYOUT)).toList();
  }

  private List<Path> results() throws IOException {
    return entries().stream().filter(e -> isOf(e, ResultCache.LAYOUT)).toList();
  }

  private static boolean isOf(Path entry, int layout) {
    try {
      return ByteBuffer.wrap(Files.readAllBytes(entry)).getInt(Integer.BYTES) == layout;
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
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
