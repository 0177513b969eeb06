package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Clause;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Marks that number notes and articles, told from marks of tiles. */
class MarksThatCountTest {
  private static final Recogniser RECOGNISER = new Recogniser(Checked.vocabulary());

  @Test
  void notesThatCountUpUnderTitlesOfWorkAreNotTiles() {
    List<Clause> clauses =
        clauses(
            "GLASS TILE NOTES",
            "N-01  SCOPE. W4 and W7 are glass tile.",
            "N-02  SUBMITTALS. Send data for all glass tile.",
            "N-03  FLATNESS behind glass tile: 1/8 in. in 10 ft.",
            "N-04  BOND. Shear bond of glass tile at least 450 psi.",
            "N-05  CLEANING. No acid on glass tile.",
            "N-06  JOINTS in glass tile at the perimeter.");
    assertThat(clauses).isNotEmpty();
    assertThat(clauses).flatExtracting(c -> c.limits().tags()).doesNotContain("N-03", "N-04");
    assertThat(clauses).flatExtracting(c -> c.subject().tags()).doesNotContain("N-01", "N-05");
    assertThat(clauses).anyMatch(c -> c.number().contains("N-04") && c.text().contains("450"));
  }

  @Test
  void aLegendOfTilesCountsUpAndStaysOne() {
    List<Clause> clauses =
        clauses(
            "FINISH LEGEND",
            "GT-1  GLASS MOSAIC TILE, aqua, 1 in. x 1 in.",
            "GT-2  GLASS TILE, clear, 3 in. x 6 in.",
            "GT-3  GLASS TILE, fused, 4 in. x 4 in.",
            "GT-4  GLASS MOSAIC TILE, gold, 3/4 in. x 3/4 in.",
            "GT-5  GLASS TILE, smoke, 2 in. x 8 in.");
    assertThat(clauses)
        .flatExtracting(c -> c.subject().tags())
        .contains("GT-1", "GT-2", "GT-3", "GT-4", "GT-5");
  }

  @Test
  void articlesBelowTheLetterOfTheirSectionAreNumbersOfArticles() {
    List<Clause> clauses =
        clauses(
            "SECTION K: GLASS TILE WORKS",
            "K.1 GENERAL",
            "K.1.1 Mock-up",
            "Build a mock-up of 3 m² of glass tile before work begins.",
            "K.2 MATERIALS",
            "K.2.1 Glass tile",
            "All glass tile shall conform to ANSI A137.2.");
    assertThat(clauses).flatExtracting(c -> c.subject().tags()).isEmpty();
    assertThat(clauses).anyMatch(c -> c.number().contains("K.2.1") && c.text().contains("A137.2"));
  }

  @Test
  void rowsThatOpenWithAMarkAreNoHeadings() {
    List<String> tags =
        rows(
                List.of(
                    List.of("Code", "Name", "Family", "Foyer", "Bar", "Spa", "Terrace", "Store"),
                    List.of("KT-01", "Linen", "Ceramic tile", "-", "-", "-", "-", "Walls"),
                    List.of("KT-02", "Slate", "Porcelain tile", "Floor", "Floor", "-", "-", "-"),
                    List.of("KT-11", "Brook", "Glass tile", "-", "-", "Walls", "-", "-"),
                    List.of("KT-12", "Ember", "Glass tile", "-", "Front", "-", "-", "-"),
                    List.of("KT-13", "Fern", "Glass tile", "-", "-", "-", "Wall", "-")))
            .stream()
            .filter(ScheduleRow::glass)
            .map(ScheduleRow::tag)
            .toList();
    assertThat(tags).containsExactly("KT-11", "KT-12", "KT-13");
  }

  @Test
  void articlesBelowLetteredPartsAreNumbersOfArticlesWhateverStandsBehindThem() {
    List<Clause> clauses =
        clauses(
            "Glass tile standard",
            "A.1 Reach of this standard. It governs the glass tile of the pavilion.",
            "A.2 Submittals. Send product data of all glass tile.",
            "A.3 Mock-up. Build one of each glass tile.",
            "B.1 Common. Glass tile conforms to ANSI A137.2.",
            "B.2 GX-1, washroom walls (interior, wet). Pressed glass mosaic tile, opaque.",
            "B.3 GX-2, porch wall (exterior, freezing winters). Cast glass tile, translucent.");
    assertThat(clauses).flatExtracting(c -> c.subject().tags()).doesNotContain("B.2", "A.3");
    assertThat(clauses)
        .anyMatch(c -> c.number().equals("B.3") && c.limits().tags().contains("GX-2"));
  }

  @Test
  void aNumberWithoutAStopIsATitleOverItsArticles() {
    List<Clause> clauses =
        clauses(
            "4 Movement joints",
            "4.1 Fields",
            "In glass tile at most 3 m by 3 m, joints 10 mm wide.",
            "5 Completion",
            "5.1 Cleaning",
            "No acid on glass tile.");
    assertThat(clauses)
        .filteredOn(c -> c.text().startsWith("In glass"))
        .flatExtracting(Clause::statements)
        .extracting(s -> s.attribute())
        .contains("movement.width");
  }

  private static List<Clause> clauses(String... lines) {
    List<Block> blocks = new ArrayList<>();
    for (String line : lines)
      blocks.add(
          Paragraph.body(
              new Origin("a.txt", null, null, null, blocks.size() + 1, null, line), line));
    return RECOGNISER
        .recognise(Document.read("a.txt", "txt", blocks, List.of()))
        .sections()
        .stream()
        .flatMap(section -> section.clauses().stream())
        .toList();
  }

  private static List<ScheduleRow> rows(List<List<String>> rows) {
    List<Table.Row> out = new ArrayList<>();
    for (List<String> cells : rows) {
      List<Table.Cell> row = new ArrayList<>();
      int number = out.size() + 1;
      for (String text : cells) row.add(Table.Cell.of(number, row.size(), text));
      out.add(new Table.Row(number, row, false));
    }
    List<Block> blocks = List.of(new Table(Origin.ofDocument("a.csv"), out, false));
    return RECOGNISER.recognise(Document.read("a.csv", "csv", blocks, List.of())).rows();
  }
}
