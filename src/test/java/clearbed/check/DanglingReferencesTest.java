package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** References of an office's own form, wherever they stand. */
class DanglingReferencesTest {
  @TempDir Path folder;

  private List<Finding> findings() {
    return Checked.of(folder).findings("dangling-reference");
  }

  private void write(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }

  private void schedule() throws IOException {
    write("schedule.csv", "Tag,Material,Location\nGT-1,Cast glass tile,Lobby wall\n");
  }

  @Test
  void a_section_that_work_is_left_to_is_missed_and_one_that_is_listed_is_noted()
      throws IOException {
    schedule();
    write(
        "spec.txt",
        """
        SECTION 09 30 23
        GLASS TILING
        1.2 RELATED REQUIREMENTS
        A. Section 03 30 00 "Cast-in-Place Concrete" for slabs.
        3.1 JOINTS
        A. Fill the joints of glass tile as specified in Section 07 92 00.
        """);
    assertThat(findings())
        .filteredOn(f -> f.message().contains("07 92 00"))
        .extracting(Finding::level)
        .containsExactly(Level.WARNING);
    assertThat(findings())
        .filteredOn(f -> f.message().contains("03 30 00"))
        .allSatisfy(f -> assertThat(f.level()).isEqualTo(Level.NOTE));
  }

  @Test
  void a_number_behind_as_or_by_is_missed_where_the_set_counts_such() throws IOException {
    schedule();
    write(
        "tiling.txt",
        """
        GLASS TILING

        G.410 PLACES

        Joints at corners of glass tile, prepared as G.465.

        G.420 WIDTH

        Width 3/8 in. Joints over structural joints by G.410.

        G.430 SEALANT

        Silicone to ASTM C920.
        """);
    assertThat(findings())
        .singleElement()
        .satisfies(f -> assertThat(f.message()).contains("G.465"));
  }

  @Test
  void a_detail_on_a_sheet_that_is_not_there_is_missed_in_notes_that_name_a_glass_tag()
      throws IOException {
    schedule();
    write("notes.txt", "DRAWING NOTES\n1. AT THE SOFFIT TERMINATE GT-1 PER DETAIL 7/A-612.\n");
    assertThat(findings())
        .singleElement()
        .satisfies(f -> assertThat(f.message()).contains("DETAIL 7/A-612"));
  }

  @Test
  void positions_of_a_bill_are_known_by_their_cells() throws IOException {
    write(
        "bill.csv",
        """
        Pos.,Code,Description,Qty
        24.01.01,GT-1,"Cast glass tile, opaque, 50 x 50 x 8 mm",12
        24.01.02,GT-2,"Fused glass tile, opaque, 20 x 20 x 4 mm, sealant by Pos. 24.01.03",12
        24.01.03,,"Movement joint in GT-1 and GT-2, edges by Pos. 24.09.07",30
        """);
    assertThat(findings())
        .singleElement()
        .satisfies(f -> assertThat(f.message()).contains("24.09.07"));
  }

  @Test
  void a_table_beyond_the_last_of_those_that_are_counted_is_missed() throws IOException {
    schedule();
    String two = "GLASS TILING\n\nTable 1 - Standards\n\nTable 2 - Places of glass tile\n\n";
    write("tiling.txt", two + "Table 3 - Movement joints of glass tile\n");
    write("minutes.txt", "GLASS TILING\n4.1 Movement joints of GT-1: see table 7 of the text.\n");
    assertThat(findings()).extracting(Finding::message).anyMatch(m -> m.contains("table 7"));
    write("minutes.txt", "GLASS TILING\n4.1 Movement joints of GT-1: see table 3 of the text.\n");
    assertThat(findings()).isEmpty();
    // Two tables are hardly a count.
    write("tiling.txt", two);
    write("minutes.txt", "GLASS TILING\n4.1 Movement joints of GT-1: see table 7 of the text.\n");
    assertThat(findings()).isEmpty();
  }

  @Test
  void an_appendix_of_the_paper_itself_is_missed() throws IOException {
    schedule();
    write(
        "standard.txt",
        "GLASS TILE STANDARD\n\nThe extent of glass tile mock-ups is in Appendix D of this standard.\n");
    assertThat(findings())
        .extracting(Finding::message)
        .singleElement()
        .asString()
        .contains("Appendix D");
    write(
        "standard.txt",
        "GLASS TILE STANDARD\n\nThe extent of glass tile mock-ups is in Appendix D of this standard.\n\n"
            + "APPENDIX D - MOCK-UPS\n\nGlass tile: 2 m².\n");
    assertThat(findings()).isEmpty();
  }

  @Test
  void one_of_another_paper_is_missed_beside_its_others_alone() throws IOException {
    schedule();
    String asks =
        "GLASS TILE STANDARD\n\nGlass tile is delivered by Appendix F.\n\nRamp test of glass tile by EN 16165, Annex B.\n";
    write("standard.txt", asks);
    assertThat(findings()).isEmpty();
    write("standard.txt", asks + "\nAPPENDIX A - ROUTES\n\nBy the north gate.\n");
    assertThat(findings())
        .extracting(Finding::message)
        .singleElement()
        .asString()
        .contains("Appendix F");
  }

  @Test
  void an_answer_that_is_nothing_but_a_clause_is_missed_where_the_set_counts_such()
      throws IOException {
    schedule();
    write(
        "spec.md",
        """
        # 31 GLASS TILING
        ## 4/01 ADHESIVE
        Set glass tile GT-1 in white adhesive.
        ## 4/02 BED
        Contact of 95 % behind glass tile.
        ## 4/03 CLEANING
        Wash glass tile with clean water.
        """);
    write(
        "log.md",
        """
        | No. | Question | Answer |
        |---|---|---|
        | 1 | Which clause tells how long to wait? | Clause 4/09. |
        | 2 | And which how to clean? | See clause 4/03. |
        """);
    assertThat(findings()).extracting(Finding::message).singleElement().asString().contains("4/09");
  }
}
