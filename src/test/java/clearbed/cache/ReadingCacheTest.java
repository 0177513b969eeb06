package clearbed.cache;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import clearbed.cli.Main;
import clearbed.model.Document;
import clearbed.read.DocumentReader;
import clearbed.read.ReadOptions;
import clearbed.read.Treatment;
import clearbed.recognise.Recognised;
import clearbed.recognise.Recogniser;
import clearbed.recognise.Vocabulary;
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

class ReadingCacheTest {
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
    try (ReadingCache opened = ReadingCache.open(cache)) {
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
    Path without = check("without");
    Path filling = check("filling", "--cache", cache.toString());
    Path filled = check("filled", "--cache", cache.toString(), "--jobs", "1");
    assertThat(entries()).hasSize(5);
    assertThat(filling).hasSameBinaryContentAs(without);
    assertThat(filled).hasSameBinaryContentAs(without);
    assertThat(json("filled")).isEqualTo(json("without"));
  }

  @Test
  void a_cache_inside_the_set_is_not_read_as_documents() throws IOException {
    cache = set.resolve("cache");
    check("one", "--cache", cache.toString());
    check("two", "--cache", cache.toString());
    assertThat(json("two")).contains("written by this run").doesNotContain("CACHEDIR");
  }

  @Test
  void a_file_in_the_place_of_the_folder_is_refused() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "x");
    assertThatThrownBy(() -> ReadingCache.open(file)).hasMessageContaining("not a folder");
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
    try (ReadingCache opened = ReadingCache.open(cache)) {
      Treatment<Recognised> treatment =
          new Treatment<>() {
            @Override
            public Recognised of(Document document) {
              treated.incrementAndGet();
              return Recognised.of(document, recogniser);
            }

            @Override
            public Memory<Recognised> memory(String path, boolean named, Path file) {
              return opened.memory(path, named, file);
            }
          };
      new DocumentReader(ReadOptions.defaults().withJobs(jobs))
          .read(List.of(set), treatment, results::add);
      assertThat(opened.failed()).isFalse();
    }
    return new Run(results, treated.get());
  }

  private Path check(String name, String... more) {
    Path output = folder.resolve(name + ".xlsx");
    List<String> words = new ArrayList<>(List.of("check", set.toString(), "--quiet"));
    words.addAll(List.of("-o", output.toString(), "--date", "2026-01-31"));
    words.addAll(List.of("--json", folder.resolve(name + ".json").toString()));
    words.addAll(List.of(more));
    assertThat(Main.run(words.toArray(String[]::new))).isEqualTo(1);
    return output;
  }

  private String json(String name) throws IOException {
    return Files.readString(folder.resolve(name + ".json")).replaceAll("\"startedAt\"[^\\n]*", "");
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
