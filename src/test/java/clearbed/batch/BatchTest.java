package clearbed.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import clearbed.cache.FactStore;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.read.DocumentReader;
import clearbed.read.source.ReadOptions;
import clearbed.recognise.Facts;
import clearbed.recognise.Recogniser;
import clearbed.recognise.vocabulary.Vocabulary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BatchTest {
  private static CompletableFuture<Recogniser> recogniser;

  @TempDir Path folder;

  @BeforeAll
  static void loadWords() throws IOException {
    recogniser = CompletableFuture.completedFuture(new Recogniser(Vocabulary.standard()));
  }

  @Test
  void facts_come_in_the_order_of_the_documents_for_every_number_of_jobs() throws IOException {
    for (int i = 0; i < 40; i++) {
      Files.writeString(folder.resolve("note" + i + ".csv"), "Tag,Material\nGT-" + i + ",Glass\n");
    }
    Files.writeString(folder.resolve("plan.dwg"), "AC1032 binary");
    zip("more.zip", "inside.csv", "Tag,Material\nGT-99,Glass mosaic\n");

    List<Facts> one = facts(1, FactStore.NONE);

    assertThat(facts(4, FactStore.NONE)).isEqualTo(one).hasSize(42);
    assertThat(one).extracting(f -> f.document().path()).isSorted();
    assertThat(one).extracting(f -> f.document().path()).contains("more.zip!/inside.csv");
    assertThat(one).filteredOn(f -> !f.rows().isEmpty()).hasSize(41);
    assertThat(one).allSatisfy(f -> assertThat(f.document().blocks()).isEmpty());
  }

  @Test
  void what_lacked_memory_is_read_again_alone_and_then_given_up() throws IOException {
    for (char name = 'a'; name <= 'l'; name++) {
      Files.writeString(folder.resolve(name + ".txt"), "Mortar: ANSI A118.15");
    }
    List<String> asked = Collections.synchronizedList(new ArrayList<>());
    AtomicInteger busy = new AtomicInteger();
    List<Integer> beside = Collections.synchronizedList(new ArrayList<>());
    FactStore scarce =
        (source, take) -> {
          int now = busy.incrementAndGet();
          try {
            boolean again = asked.contains(source.path());
            asked.add(source.path());
            if (again) beside.add(now);
            boolean heavy = source.path().equals("b.txt");
            boolean once = source.path().equals("e.txt") && !again;
            if (heavy || once) throw new OutOfMemoryError();
            return take.get();
          } finally {
            busy.decrementAndGet();
          }
        };

    List<Facts> facts = facts(3, scarce);

    assertThat(facts).extracting(f -> f.document().path()).isSorted().hasSize(12);
    assertThat(asked).hasSize(14);
    assertThat(beside).as("documents read at the time of the second try").containsExactly(1, 1);
    Document heavy = facts.get(1).document();
    assertThat(heavy.status()).isEqualTo(Status.UNREADABLE);
    assertThat(heavy.reason()).contains("memory");
    assertThat(facts)
        .filteredOn(f -> f.document().status() == Status.READ)
        .as("all others, the one with less memory for once, too")
        .hasSize(11);
  }

  @Test
  void what_was_unpacked_is_gone_when_its_facts_are_handed_over() throws IOException {
    zip("set.zip", "a.csv", "Tag,Material\nGT-1,Glass\n");
    List<Path> unpacked = Collections.synchronizedList(new ArrayList<>());
    FactStore watched =
        (source, take) -> {
          unpacked.add(source.file());
          assertThat(source.file()).exists();
          return take.get();
        };
    DocumentReader reader = new DocumentReader(List.of(folder), ReadOptions.defaults());
    try (Batch batch = new Batch(reader, 2, watched, recogniser)) {
      assertThat(batch.next().rows()).hasSize(1);
      assertThat(unpacked).hasSize(1).allSatisfy(file -> assertThat(file).doesNotExist());
      assertThat(batch.hasNext()).isFalse();
      assertThatThrownBy(batch::next).isInstanceOf(NoSuchElementException.class);
    }
    assertThat(folder.resolve("set.zip")).exists();
  }

  @Test
  void a_vocabulary_that_could_not_be_loaded_is_no_document_that_could_not_be_read()
      throws IOException {
    Files.writeString(folder.resolve("a.txt"), "Mortar: ANSI A118.15");
    CompletableFuture<Recogniser> failed = new CompletableFuture<>();
    failed.completeExceptionally(new IllegalArgumentException("attributes.yaml: no such word"));
    DocumentReader reader = new DocumentReader(List.of(folder), ReadOptions.defaults());
    try (Batch batch = new Batch(reader, 1, FactStore.NONE, failed)) {
      assertThatThrownBy(batch::next).hasMessageContaining("no such word");
    }
  }

  private List<Facts> facts(int jobs, FactStore store) {
    DocumentReader reader = new DocumentReader(List.of(folder), ReadOptions.defaults());
    List<Facts> facts = new ArrayList<>();
    try (Batch batch = new Batch(reader, jobs, store, recogniser)) {
      batch.forEachRemaining(facts::add);
    }
    return facts;
  }

  private void zip(String name, String entry, String text) throws IOException {
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(folder.resolve(name)))) {
      zip.putNextEntry(new ZipEntry(entry));
      zip.write(text.getBytes());
    }
  }
}
