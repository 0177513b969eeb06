package clearbed.track;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Finding;
import clearbed.samples.Clause;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

/** A finding that is the same in two issues has the same id in both. */
class StableIdsTest {
  private static final Map<String, Finding> SAMPLE = findings(Papers.sample());
  private static final Map<String, Finding> TWINS = findings(Papers.twins());

  @Property(tries = 12)
  void edits_that_leave_the_faults_leave_the_ids_in_the_sample_project(
      @ForAll("edits") List<PaperEdit> edits, @ForAll long seed) {
    same(Papers.sample(), SAMPLE, edits, seed);
  }

  @Property(tries = 12)
  void edits_that_leave_the_faults_leave_the_ids_where_faults_look_alike(
      @ForAll("edits") List<PaperEdit> edits, @ForAll long seed) {
    same(Papers.twins(), TWINS, edits, seed);
  }

  @Provide
  Arbitrary<List<PaperEdit>> edits() {
    return Arbitraries.of(PaperEdit.class).list().ofMinSize(1).ofMaxSize(6);
  }

  @Test
  void a_fault_that_is_settled_leaves_the_ids_of_the_faults_like_it() {
    Map<String, Finding> after = findings(without("Mortar coverage: 80 percent"));
    assertThat(TWINS).containsKey("coverage/section-09-30-00-at-least-80");
    assertThat(after)
        .doesNotContainKey("coverage/section-09-30-00-at-least-80")
        .containsKeys(
            "coverage/section-09-30-00-at-least-85", "coverage/section-09-30-00-at-least-90");
  }

  @Test
  void what_two_checks_miss_at_one_place_hangs_not_on_the_words_there() {
    same(
        Papers.twins(),
        TWINS,
        List.of(PaperEdit.RENAME_SHEET, PaperEdit.INSERT_PARAGRAPH),
        196418L);
  }

  @Test
  void ids_never_name_a_row_a_page_or_a_folder() {
    Papers moved = Papers.twins();
    for (int i = 0; i < moved.papers().size(); i++) {
      Papers.Paper paper = moved.papers().get(i);
      moved = moved.replaced(i, paper.at("unusual-folder/" + paper.path()));
    }
    assertThat(findings(moved).keySet())
        .isEqualTo(TWINS.keySet())
        .noneMatch(id -> id.contains("unusual"));
  }

  private static Papers without(String opening) {
    Papers papers = Papers.twins();
    for (int i = 0; i < papers.papers().size(); i++) {
      if (papers.papers().get(i) instanceof Papers.Prose prose) {
        List<Clause> clauses = new ArrayList<>(prose.outline().clauses());
        clauses.removeIf(clause -> clause.text().startsWith(opening));
        papers =
            papers.replaced(
                i, new Papers.Prose(prose.path(), prose.outline().withClauses(clauses)));
      }
    }
    return papers;
  }

  private static void same(
      Papers papers, Map<String, Finding> before, List<PaperEdit> edits, long seed) {
    Random random = new Random(seed);
    Papers edited = papers;
    for (PaperEdit edit : edits) edited = edit.on(edited, random);
    Map<String, Finding> after = findings(edited);
    Set<String> lost = new TreeSet<>(before.keySet());
    lost.removeAll(after.keySet());
    Set<String> fresh = new TreeSet<>(after.keySet());
    fresh.removeAll(before.keySet());
    fresh.removeIf(id -> concernsAddedRows(after.get(id)));
    // An article put in before another leaves a reference to its number wrong: a new fault.
    if (edits.contains(PaperEdit.INSERT_ARTICLE)) {
      fresh.removeIf(id -> after.get(id).check().equals("dangling-reference"));
    }
    assertThat(lost).as("ids that are gone; new: %s", fresh).isEmpty();
    assertThat(fresh).as("ids that are new").isEmpty();
    before.forEach((id, finding) -> assertThat(face(after.get(id))).isEqualTo(face(finding)));
  }

  private static boolean concernsAddedRows(Finding finding) {
    boolean byTag =
        !finding.tags().isEmpty() && finding.tags().stream().allMatch(PaperEdit::isAdded);
    // Faults in the words of a cell are findings of the set: the tag is in their id alone.
    return byTag || finding.id().matches(".*/gt-8[0-9]{2}\\b.*");
  }

  /** What makes it the same finding, whatever its id. */
  private static String face(Finding finding) {
    List<String> tags = new ArrayList<>(finding.tags());
    tags.removeIf(tag -> PaperEdit.isAdded(tag));
    tags.sort(Comparator.naturalOrder());
    boolean twoPlaces = finding.check().equals("conflict");
    boolean quotes = !twoPlaces && !finding.found().isEmpty() && finding.origin().text() != null;
    String words = quotes ? finding.origin().text() : "";
    String found = twoPlaces ? "" : finding.found();
    return String.join(
        "|",
        finding.check(),
        finding.kind().word(),
        finding.level().word(),
        finding.attribute(),
        tags.toString(),
        found,
        words.replaceAll("\\s+", " ").strip());
  }

  private static Map<String, Finding> findings(Papers papers) {
    try {
      Path folder = Files.createTempDirectory("clearbed-ids");
      try {
        papers.write(folder);
        Map<String, Finding> findings = new LinkedHashMap<>();
        for (Finding finding : Checked.of(folder).outcome().findings()) {
          assertThat(findings.put(finding.id(), finding)).as(finding.id()).isNull();
        }
        return findings;
      } finally {
        try (Stream<Path> files = Files.walk(folder)) {
          for (Path file : files.sorted(Comparator.reverseOrder()).toList()) Files.delete(file);
        }
      }
    } catch (IOException wrong) {
      throw new java.io.UncheckedIOException(wrong);
    }
  }
}
