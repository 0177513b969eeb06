package clearbed.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.read.ReadAll;
import clearbed.recognise.Recogniser;
import clearbed.recognise.WholeText;
import clearbed.samples.Schedule;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.apache.poi.hwpf.HWPFDocument;
import org.apache.poi.hwpf.extractor.WordExtractor;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CorpusTest {
  private static final Map<String, DraftSet> SETS = new TreeMap<>();
  private static final Recogniser RECOGNISER = new Recogniser(Checked.vocabulary());

  @BeforeAll
  static void readSets() {
    Corpus.sets().forEach(set -> SETS.put(set.name(), set));
  }

  @AfterAll
  static void forget() {
    SETS.clear();
  }

  static Stream<String> sets() {
    return Corpus.sets().stream().map(DraftSet::name);
  }

  static Stream<String> operators() {
    return Operators.all().stream().map(Operator::id);
  }

  @Test
  void thereAreEnoughSetsAndOperatorsAndEachHasItsOwnName() {
    assertThat(sets()).hasSizeGreaterThanOrEqualTo(12).doesNotHaveDuplicates();
    assertThat(operators()).hasSizeGreaterThanOrEqualTo(40).doesNotHaveDuplicates();
  }

  @Test
  void aboutAThirdIsHeldBack() {
    List<DraftSet> seen = SETS.values().stream().filter(set -> !set.unseen()).toList();
    long sets = seen.stream().filter(DraftSet::heldBack).count();
    long operators = Operators.all().stream().filter(Operator::heldBack).count();
    assertThat(sets * 1.0 / seen.size()).isBetween(0.2, 0.45);
    assertThat(operators * 1.0 / Operators.all().size()).isBetween(0.25, 0.42);
  }

  @ParameterizedTest
  @MethodSource("sets")
  void everyWordOfASetIsAccountedFor(String name, @TempDir Path folder) throws IOException {
    SETS.get(name).write(folder);
    ReadAll.of(folder).forEach(document -> WholeText.assertAccountedFor(document, RECOGNISER));
  }

  @ParameterizedTest
  @MethodSource("sets")
  void aSetRendersEveryFileWithoutMarks(String name) {
    DraftSet set = SETS.get(name);
    Map<String, byte[]> files = set.render();
    assertThat(files).isNotEmpty();
    files.forEach((path, bytes) -> assertThat(bytes).as(path).hasSizeGreaterThan(100));
    for (DraftFile file : set.files()) {
      if (!file.path().endsWith(".txt")) continue;
      assertThat(new String(file.render(), java.nio.charset.StandardCharsets.UTF_8))
          .doesNotContain("<", ">");
    }
  }

  @ParameterizedTest
  @MethodSource("sets")
  void theSchedulesOfASetHaveTheTagsThatItExpects(String name) {
    DraftSet set = SETS.get(name);
    Set<String> scheduled = new LinkedHashSet<>();
    for (DraftFile file : set.files()) {
      if (!(file instanceof DraftFile.ScheduleFile sheet)) continue;
      Schedule schedule = sheet.schedule();
      if (schedule.column("tile.tag") < 0) continue;
      schedule.rows().stream()
          .filter(row -> row.size() > 1)
          .forEach(row -> scheduled.add(row.get(0)));
    }
    if (scheduled.isEmpty()) return;
    Set<String> all = new TreeSet<>(set.glass());
    all.addAll(set.other());
    assertThat(scheduled).containsExactlyInAnyOrderElementsOf(all);
  }

  @ParameterizedTest
  @MethodSource("sets")
  void everyMarkNamesGlassEntriesOfItsSet(String name) {
    DraftSet set = SETS.get(name);
    set.edit(
        statement -> {
          assertThat(set.glass())
              .as(statement.label() + ": " + statement.text())
              .containsAll(statement.tags());
          return statement;
        });
  }

  @ParameterizedTest
  @MethodSource("operators")
  void anOperatorFitsASetChangesItAndExpectsOnlyGlassEntries(String id) {
    Operator operator =
        Operators.all().stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
    List<Mutant> mutants =
        SETS.values().stream().flatMap(set -> operator.on(set).stream()).toList();
    assertThat(mutants).as("sets that %s fits", id).isNotEmpty();
    for (Mutant mutant : mutants) {
      DraftSet clean = SETS.get(mutant.set().name());
      assertThat(words(mutant.set())).isNotEqualTo(words(clean));
      for (Expected due : mutant.expected()) {
        assertThat(clean.glass()).containsAll(due.tags());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("sets")
  void anOperatorOnASetGivesTheSameBytesTwice(String name) {
    DraftSet set = SETS.get(name);
    Operators.all().stream()
        .limit(2)
        .flatMap(operator -> operator.on(set).stream())
        .forEach(
            mutant -> {
              Map<String, byte[]> once = mutant.set().render();
              mutant
                  .set()
                  .render()
                  .forEach((path, bytes) -> assertThat(bytes).isEqualTo(once.get(path)));
            });
  }

  @Test
  void aFrozenWordFileHoldsTheWordsItWasMadeOf() throws Exception {
    DraftFile.FrozenFile file =
        (DraftFile.FrozenFile) SETS.get("mossbridge-library").files().get(1);
    try (WordExtractor text =
        new WordExtractor(new HWPFDocument(new ByteArrayInputStream(file.render())))) {
      assertThat(text.getText()).contains(file.words());
    }
  }

  /** What a reader sees, by file. */
  private static Map<String, List<String>> words(DraftSet set) {
    Map<String, List<String>> words = new TreeMap<>();
    set.files().forEach(file -> words.put(file.path(), file.words()));
    return words;
  }
}
