package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.base.config.StandardFiles;
import clearbed.check.Checker;
import clearbed.model.document.Document;
import clearbed.model.report.Account;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Verdict;
import clearbed.read.ReadAll;
import clearbed.recognise.statement.SpanFinder;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import clearbed.resolve.Resolver;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each way of reading is left out in turn: what it read stands as not understood then, beside the
 * checks that it could answer, and is called neither missing nor anything else.
 */
class EveryWayOfReadingTest {
  private static final SpanFinder SPANS = new SpanFinder(Checked.vocabulary());

  @TempDir Path folder;

  /**
   * @param way that is left out
   * @param words that it reads, or the heading they stand under
   * @param check that they answer for GT-1
   */
  record Case(String way, String words, String check, String file, List<String> lines) {
    static Case clause(String way, String sentence, String check) {
      return new Case(way, sentence, check, "093023.txt", section("A. " + sentence));
    }

    static Case product(String way, String clause, String check) {
      return new Case(way, clause, check, "093023.txt", EveryWayOfReadingTest.product(clause));
    }

    static Case cell(String way, String heading, String cell, String check) {
      return new Case(way, heading, check, "schedule.csv", schedule(heading, cell));
    }

    @Override
    public String toString() {
      return way + ": " + words + " (" + file + ")";
    }
  }

  private static List<String> section(String clause) {
    return List.of(
        "SECTION 09 30 23",
        "GLASS TILING",
        "PART 2 - PRODUCTS",
        "2.1 GLASS TILE",
        "A. GT-1: Cast glass tile at shower floors.",
        "2.2 SETTING GLASS TILE",
        clause);
  }

  private static List<String> product(String clause) {
    return List.of(
        "SECTION 09 30 23",
        "GLASS TILING",
        "PART 2 - PRODUCTS",
        "2.1 GLASS TILE",
        "A. GT-1: Cast glass tile at shower floors.",
        "B. " + clause);
  }

  private static List<String> schedule(String heading, String cell) {
    return List.of(
        "Tag,Material,Location,Finish,Remarks,\"" + heading + "\"",
        "GT-1,Glass tile,Shower floor,gloss,first,\"" + cell + "\"");
  }

  static Stream<Case> finders() {
    return Stream.of(
        Case.clause("open items", "Width of grout joints: [1/16 inch] [1/8 inch].", "grout-width"),
        Case.clause("standards", "Setting mortar: ANSI A118.15.", "mortar-class"),
        Case.clause("flatness", "Substrate flat within 1/8 inch in 10 feet.", "flatness"),
        Case.clause("deflection", "Deflection of framing: L/600 at the most.", "deflection"),
        Case.clause("amounts", "Shear bond strength of mortar: at least 450 psi.", "bond-strength"),
        Case.product("sizes", "GT-1: nominal size 4 in by 4 in.", "tile-size"),
        Case.product("terms", "GT-1: translucent glass tile.", "translucency"),
        Case.clause("requirements", "Build a mock-up of each glass tile.", "mockup"),
        Case.cell("open items", "Grout width", "TBD", "grout-width"),
        Case.cell("standards", "Mortar standard", "ANSI A118.15", "mortar-class"),
        Case.cell("flatness", "Substrate flatness", "1/8 in in 10 ft", "flatness"),
        Case.cell("deflection", "Deflection", "L/600", "deflection"),
        Case.cell("amounts", "Shear bond strength (psi)", "450", "bond-strength"),
        Case.cell("amounts", "Wet DCOF", "0.60", "floor-slip"),
        Case.cell("amounts", "Grout joint width", "1/8 in", "grout-width"),
        Case.cell("terms", "Translucency", "translucent", "translucency"),
        Case.cell("terms", "Backing", "painted", "tile-backing-stated"),
        Case.cell("requirements", "Mock-up", "required", "mockup"));
  }

  @Test
  void every_way_has_a_case() {
    Set<String> ways = new TreeSet<>();
    new StatementFinder(
        Checked.vocabulary(),
        all -> {
          all.forEach(way -> ways.add(way.name()));
          return all;
        });
    Set<String> tried = finders().map(Case::way).collect(Collectors.toSet());
    assertThat(tried).containsExactlyInAnyOrderElementsOf(ways);
  }

  @ParameterizedTest
  @MethodSource("finders")
  void what_a_finder_read_is_not_understood_without_it(Case c) throws IOException {
    Vocabulary words = Checked.vocabulary();
    Recogniser without =
        new Recogniser(
            words,
            new StatementFinder(
                words, all -> all.stream().filter(way -> !way.name().equals(c.way())).toList()),
            SPANS);
    holds(c, without);
  }

  /** Headings by the attribute that the vocabulary has them for, with a cell below each. */
  static Stream<Case> headings() {
    return Stream.of(
        heading("tile.kind", "Glass kind", "fused", "tile-kind"),
        heading("tile.size", "Face size", "4 x 4 in", "tile-size"),
        heading("tile.translucency", "Translucency", "opaque", "translucency"),
        heading("tile.backing", "Reverse face backing", "painted", "tile-backing-stated"),
        heading("tile.slip", "Wet DCOF", "0.60", "floor-slip"),
        heading("mortar.bond", "Shear bond strength (psi)", "450", "bond-strength"),
        heading("mortar.coverage", "Mortar coverage", "95 %", "coverage"),
        heading("grout.width", "Grout joint width", "1/8 in", "grout-width"),
        heading("movement.spacing", "Movement joint spacing", "8 ft", "movement-spacing"),
        heading("movement.width", "Movement joint width", "3/8 in", "movement-width"));
  }

  /** Cells that say by themselves what they are about. */
  static Stream<Case> speakingCells() {
    return Stream.of(
        heading("tile.standard", "Tile standard", "ANSI A137.2", "tile-standard"),
        heading("substrate.type", "Substrate", "concrete slab", "substrate-stated"),
        heading("substrate.flatness", "Substrate flatness", "1/8 in in 10 ft", "flatness"),
        heading("substrate.deflection", "Deflection limit", "L/600", "deflection"),
        heading("membrane.standard", "Membrane standard", "ANSI A118.10", "membrane"),
        heading("mortar.standard", "Mortar standard", "ANSI A118.15", "mortar-class"),
        heading("grout.standard", "Grout standard", "ANSI A118.7", "grout-class"),
        heading("sealant.standard", "Sealant standard", "ASTM C920", "joint-sealant"));
  }

  private static Case heading(String attribute, String heading, String cell, String check) {
    return Case.cell(attribute, heading, cell, check);
  }

  @ParameterizedTest
  @MethodSource("headings")
  void a_cell_below_a_heading_that_is_not_known_tells_by_itself_or_is_not_understood(Case c)
      throws IOException {
    Vocabulary words = withoutHeadings(c.way());
    holds(c, new Recogniser(words, new StatementFinder(words), SPANS));
  }

  @ParameterizedTest
  @MethodSource("speakingCells")
  void a_cell_that_speaks_for_itself_is_read_whatever_its_heading(Case c) throws IOException {
    Vocabulary words = withoutHeadings(c.way());
    Files.writeString(folder.resolve(c.file()), String.join("\n", c.lines()) + "\n");
    Outcome read = outcome(new Recogniser(Checked.vocabulary()));
    Outcome without = outcome(new Recogniser(words, new StatementFinder(words), SPANS));
    assertThat(read.verdict(c.check())).isNotEqualTo(Verdict.Outcome.UNREAD);
    assertThat(without.verdict(c.check())).isEqualTo(read.verdict(c.check()));
    assertThat(without.findings(c.check())).isEqualTo(read.findings(c.check()));
  }

  /** The words of the trade but for the headings of one attribute. */
  private static Vocabulary withoutHeadings(String attribute) throws IOException {
    return Vocabulary.of(
        path -> {
          StandardFiles.FileSource file = StandardFiles.open(path);
          boolean schedules = path.endsWith("schedules.yaml");
          if (!schedules && !path.endsWith("attributes.yaml")) return file;
          String text = new String(file.bytes(), StandardCharsets.UTF_8);
          // Headings abroad stand for the English ones.
          if (schedules) {
            String none = text.replaceFirst("(?m)^abroad:\n(?:  .*\n)+", "abroad: {tag: [qqq]}\n");
            return new StandardFiles.FileSource(path, none.getBytes(StandardCharsets.UTF_8), true);
          }
          String of = "(?m)(^  - id: " + attribute.replace(".", "\\.") + "\n(?:    .*\n)*?)";
          String less = text.replaceFirst(of + "    headers: .*\n", "$1    headers: [qqq]\n");
          assertThat(less).isNotEqualTo(text);
          return new StandardFiles.FileSource(path, less.getBytes(StandardCharsets.UTF_8), true);
        });
  }

  private void holds(Case c, Recogniser without) throws IOException {
    Files.writeString(folder.resolve(c.file()), String.join("\n", c.lines()) + "\n");
    Outcome read = outcome(new Recogniser(Checked.vocabulary()));
    assertThat(read.verdict(c.check())).as("read by all").isNotEqualTo(Verdict.Outcome.UNREAD);
    assertThat(read.missing(c.check())).as("read by all").isEmpty();

    Outcome unread = outcome(without);
    assertThat(unread.missing(c.check())).isEmpty();
    // The cells of a column and its neighbours may tell as well.
    boolean told = c.file().endsWith("csv") && unread.verdict(c.check()) == read.verdict(c.check());
    if (told) return;
    assertThat(unread.facts())
        .as("in the account of its document")
        .anySatisfy(words -> assertThat(words.text()).contains(c.words()));
    assertThat(unread.checked().reading().notUnderstood())
        .anySatisfy(
            each -> {
              assertThat(each.words().text()).contains(c.words());
              assertThat(each.couldAnswer()).contains(c.check());
              if (c.words().startsWith("GT-1") || c.file().endsWith("csv"))
                assertThat(each.tags()).containsExactly("GT-1");
            });
    assertThat(unread.findings(c.check())).isEmpty();
    assertThat(unread.verdict(c.check())).isEqualTo(Verdict.Outcome.UNREAD);
    assertThat(unread.checked().findings())
        .filteredOn(f -> f.kind() == FindingKind.UNREAD)
        .anySatisfy(f -> assertThat(f.tags()).contains("GT-1"));
  }

  private record Outcome(List<Account.Unread> facts, Checker.CheckedProject checked) {
    Verdict.Outcome verdict(String check) {
      return checked.verdicts().stream()
          .filter(v -> v.check().equals(check) && v.tag().equals("GT-1"))
          .map(Verdict::outcome)
          .findFirst()
          .orElseThrow();
    }

    List<String> findings(String check) {
      return checked.findings().stream()
          .filter(f -> f.check().equals(check) && f.kind() != FindingKind.UNREAD)
          .map(f -> f.kind() + " " + f.message())
          .toList();
    }

    List<Finding> missing(String check) {
      return checked.findings().stream()
          .filter(f -> f.check().equals(check) && f.kind() == FindingKind.MISSING)
          .toList();
    }
  }

  private Outcome outcome(Recogniser recogniser) {
    Vocabulary vocabulary = Checked.vocabulary();
    List<Document> documents = ReadAll.of(folder);
    List<Facts> facts = documents.stream().map(recogniser::recognise).toList();
    List<Account.Unread> unread = new ArrayList<>();
    facts.forEach(f -> unread.addAll(f.account().unread()));
    Project project = new Resolver(vocabulary).resolve(facts, List.of());
    return new Outcome(
        unread, new Checker(vocabulary, Checked.rules(vocabulary)).check(project, documents));
  }
}
