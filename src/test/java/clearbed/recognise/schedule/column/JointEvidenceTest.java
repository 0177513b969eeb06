package clearbed.recognise.schedule.column;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.model.report.Account;
import clearbed.recognise.Facts;
import clearbed.recognise.Recogniser;
import clearbed.recognise.schedule.row.ScheduleRow;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Columns are known by heading, unit, cells and neighbours together. */
class JointEvidenceTest {
  private static final Recogniser RECOGNISER = new Recogniser(Checked.vocabulary());

  /** Cells are written with | between them; an empty one is left out. */
  private static Facts read(String... lines) {
    return RECOGNISER.recognise(Document.read("t.xlsx", "xlsx", List.of(table(lines)), List.of()));
  }

  private static Facts under(String heading, String... lines) {
    Paragraph over = Paragraph.body(Origin.ofDocument("t.docx").withText(heading), heading);
    return RECOGNISER.recognise(
        Document.read("t.docx", "docx", List.of(over, table(lines)), List.of()));
  }

  private static Table table(String... lines) {
    List<Table.Row> rows = new ArrayList<>();
    for (int r = 0; r < lines.length; r++) {
      List<Table.Cell> cells = new ArrayList<>();
      String[] texts = lines[r].split("\\|", -1);
      for (int c = 0; c < texts.length; c++)
        if (!texts[c].isBlank()) cells.add(Table.Cell.of(r + 1, c, texts[c].trim()));
      if (!cells.isEmpty()) rows.add(new Table.Row(r + 1, cells, false));
    }
    Origin origin = new Origin("t.xlsx", "Sheet1", null, null, null, null, null);
    return new Table(origin, rows, true);
  }

  private static Map<String, String> columns(Facts facts) {
    Map<String, String> out = new LinkedHashMap<>();
    for (Account.TableAccount t : facts.account().tables())
      for (Account.Column c : t.columns()) out.put(c.heading(), c.as());
    return out;
  }

  private static String said(Facts facts, String tag, String attribute) {
    return String.join(
        ";",
        facts.rows().stream()
            .filter(r -> r.tag().equals(tag))
            .flatMap(r -> r.statements().stream())
            .filter(s -> s.attribute().equals(attribute))
            .map(s -> s.content().text())
            .toList());
  }

  @Test
  void short_forms_and_words_of_an_office_are_known_by_their_cells() {
    Facts facts =
        read(
            "MK | MAT'L | FCE (IN.) | THK (IN.) | BKG | SVC | CARRIED BY | SET W/ | SHR (PSI) | MORT. CLR | GRT | JT (IN.)",
            "Z1 | CAST GLASS MOSAIC | 1 x 1 | 1/4 | NONE | WET | CEM BD | ANSI A118.15 | 450 | WHT | ANSI A118.7 | 1/8",
            "Z2 | GLASS TILE | 4 x 4 | 3/8 | PAINTED | EXT, FREEZE-THAW | CONC | ANSI A118.4 | 400 | GRY | ANSI A118.7 | 1/8");
    assertThat(columns(facts))
        .containsEntry("MK", "tag")
        .containsEntry("MAT'L", "material")
        .containsEntry("FCE (IN.)", "tile.size")
        .containsEntry("THK (IN.)", "tile.thickness")
        .containsEntry("BKG", "tile.backing")
        .containsEntry("SVC", "location.exposure")
        .containsEntry("CARRIED BY", "substrate.type")
        .containsEntry("SET W/", "mortar.standard")
        .containsEntry("SHR (PSI)", "mortar.bond")
        .containsEntry("MORT. CLR", "mortar.colour")
        .containsEntry("GRT", "grout.standard")
        .containsEntry("JT (IN.)", "grout.width");
    assertThat(said(facts, "Z1", "substrate.type")).isEqualTo("cement board");
    assertThat(said(facts, "Z2", "mortar.colour")).isEqualTo("grey");
    assertThat(said(facts, "Z2", "location.exposure")).contains("exterior");
  }

  @Test
  void the_evidence_says_how_many_cells_and_which_word() {
    Facts facts =
        read(
            "Tag | Material | SVC",
            "G-1 | Glass mosaic | wet",
            "G-2 | Glass mosaic | dry",
            "G-3 | Glass mosaic | wet");
    assertThat(facts.account().tables().get(0).columns().get(2).evidence())
        .isEqualTo("abbreviation of service, cells 3 of 3");
  }

  @Test
  void what_two_meanings_fit_is_not_understood_and_says_what_it_might_be() {
    Facts facts =
        read(
            "Tag | Material | Size | Zorp",
            "G-1 | Glass mosaic | 1 x 1 in | 1/8 in",
            "G-2 | Glass mosaic | 2 x 2 in | 3/16 in");
    assertThat(columns(facts)).containsEntry("Zorp", "");
    assertThat(facts.account().unread())
        .filteredOn(u -> u.text().equals("Zorp"))
        .singleElement()
        .satisfies(
            u -> {
              assertThat(u.attributes()).contains("grout.width", "movement.width");
              assertThat(u.samples()).containsExactly("1/8 in", "3/16 in");
            });
  }

  @Test
  void a_colour_is_of_what_stands_beside_it_and_of_nothing_without_that() {
    assertThat(
            columns(
                read(
                    "Tag | Material | Adhesive | Shade",
                    "G-1 | Glass mosaic | ANSI A118.15 | white",
                    "G-2 | Glass tile | ANSI A118.4 | grey")))
        .containsEntry("Shade", "mortar.colour");
    assertThat(
            columns(
                read(
                    "Tag | Material | Shade | Size",
                    "G-1 | Glass mosaic | white | 1 x 1 in",
                    "G-2 | Glass tile | grey | 2 x 2 in")))
        .containsEntry("Shade", "");
  }

  @Test
  void a_heading_over_a_table_of_several_parts_of_the_work_decides_nothing() {
    assertThat(
            columns(
                under(
                    "2.3 GROUT",
                    "Type | Mortar | Color | Grout | Joint",
                    "GM-1 | ANSI A118.15 | White | ANSI A118.3 | 1/8 in",
                    "GM-2 | ANSI A118.4 | Gray | ANSI A118.7 | 1/8 in")))
        .containsEntry("Color", "mortar.colour");
  }

  @Test
  void a_heading_of_a_standard_over_widths_is_a_width() {
    assertThat(
            columns(
                read(
                    "Tag | Material | Mortar | Grout (mm)",
                    "G-1 | Glass mosaic | C2TES1 | 2",
                    "G-2 | Glass tile | C2TE | 3")))
        .containsEntry("Grout (mm)", "grout.width");
  }

  @Test
  void units_may_stand_in_a_row_of_their_own() {
    Facts facts =
        read(
            "Tag | Material | Thickness | Bond | Joint",
            "| | in | psi | mm",
            "G-1 | Glass mosaic | 1/4 | 450 | 3");
    assertThat(said(facts, "G-1", "tile.thickness")).isEqualTo("0.25 in");
    assertThat(said(facts, "G-1", "mortar.bond")).isEqualTo("450 psi");
    assertThat(said(facts, "G-1", "grout.width")).isEqualTo("3 mm");
  }

  @Test
  void one_attribute_may_stand_in_two_units_side_by_side() {
    Facts facts =
        read(
            "ID | Product | SIZE | | SHEAR BOND | ",
            "| | mm | in | MPa | psi",
            "V-1 | Glass mosaic | 25 x 25 | 1 x 1 | 3.1 | 450",
            "V-2 | Glass tile | 50 x 50 | 2 x 2 | 2.8 | 406");
    assertThat(said(facts, "V-1", "tile.size")).isEqualTo("25 mm x 25 mm;1 in x 1 in");
    assertThat(said(facts, "V-2", "mortar.bond")).isEqualTo("2.8 MPa;406 psi");
  }

  @Test
  void three_rows_may_head_a_table_with_groups_over_their_columns() {
    Facts facts =
        read(
            "| | TILE | | SETTING | | GROUT | ",
            "MK | DESCR | FACE | THK | MORTAR | BOND | TYPE | JT",
            "| | in | in | | psi | | in",
            "P-1 | Glass mosaic | 1 x 1 | 1/4 | ANSI A118.15 | 450 | ANSI A118.7 | 1/16",
            "P-2 | Cast glass tile | 2 x 2 | 5/16 | ANSI A118.4 | 400 | ANSI A118.3 | 1/8");
    assertThat(said(facts, "P-1", "grout.standard")).isEqualTo("ANSI A118.7");
    assertThat(said(facts, "P-2", "mortar.bond")).isEqualTo("400 psi");
    assertThat(said(facts, "P-2", "grout.width")).isEqualTo("0.125 in");
  }

  @Test
  void a_row_of_a_place_speaks_for_the_rows_below_that_do_not() {
    Facts facts =
        read(
            "Tag | Material | Size | Exposure",
            "LAP POOL WALLS, SUBMERGED",
            "G-1 | Glass mosaic | 1 x 1 in | ",
            "G-2 | Glass mosaic | 1 x 1 in | wet",
            "LOBBY",
            "G-3 | Glass mosaic | 1 x 1 in | ");
    assertThat(said(facts, "G-1", "location.exposure")).isEqualTo("submerged");
    assertThat(said(facts, "G-1", "location.surface")).contains("wall");
    assertThat(said(facts, "G-2", "location.exposure")).isEqualTo("wet");
    assertThat(said(facts, "G-3", "location.exposure")).isEqualTo("dry");
  }

  @Test
  void a_storey_is_no_surface() {
    Facts facts = read("Tag | Material | Size", "SECOND FLOOR", "G-1 | Glass mosaic | 1 x 1 in");
    assertThat(said(facts, "G-1", "location.surface")).isEmpty();
  }

  @Test
  void what_is_void_is_set_aside_and_said_to_be() {
    Facts facts =
        read(
            "Tag | Material | Size | Grout | Was | Remarks",
            "G-1 | Glass mosaic | 1 x 1 in | ANSI A118.7 | ANSI A118.6 | ",
            "G-2 | Glass mosaic | 2 x 2 in | ANSI A118.7 | ANSI A118.6 | Deleted, see G-1",
            "G-3 (VOID) | Glass mosaic | 2 x 2 in | ANSI A118.7 | | ",
            "TOTAL | | 120 | | | ");
    assertThat(facts.rows()).extracting(ScheduleRow::tag).containsExactly("G-1");
    assertThat(said(facts, "G-1", "grout.standard")).isEqualTo("ANSI A118.7");
    assertThat(facts.account().setAside())
        .extracting(Account.SetAside::why)
        .contains(
            "former values under \"Was\"",
            "no longer in force: Deleted, see G-1",
            "no longer in force: G-3 (VOID)",
            "a row of totals");
  }

  @Test
  void a_ditto_may_have_words_behind_it() {
    Facts facts =
        read(
            "Tag | Material | Size",
            "G-1 | Cast glass tile | 1 x 1 in",
            "G-2 | Ditto, translucent | 2 x 2 in");
    assertThat(said(facts, "G-2", "tile.kind")).isEqualTo("cast");
    assertThat(said(facts, "G-2", "tile.translucency")).isEqualTo("translucent");
  }

  @Test
  void a_table_without_headings_is_known_by_its_cells() {
    Facts facts =
        read(
            "G-1 | Glass mosaic tile | 20 x 20 mm | ANSI A118.15 | wet",
            "G-2 | Cast glass tile | 50 x 50 mm | ANSI A118.4 | dry",
            "P-1 | Porcelain tile | 300 x 600 mm | ANSI A118.4 | dry");
    assertThat(facts.rows()).filteredOn(ScheduleRow::glass).hasSize(2);
    assertThat(said(facts, "G-2", "mortar.standard")).isEqualTo("ANSI A118.4");
    assertThat(said(facts, "G-1", "location.exposure")).isEqualTo("wet");
  }

  @Test
  void types_may_run_across_under_names_that_are_no_tags() {
    Facts facts =
        read(
            "Property | Field | Border",
            "Composition | Cast glass tile | Glass mosaic",
            "Sheet | Loose | Paper face",
            "Size (mm) | 98 x 98 | 20 x 20",
            "Service | wet | submerged");
    assertThat(said(facts, "Field", "tile.size")).isEqualTo("98 mm x 98 mm");
    assertThat(said(facts, "Border", "location.exposure")).isEqualTo("submerged");
  }

  @Test
  void columns_of_nothing_that_is_asked_for_are_left_alone() {
    Facts facts =
        read(
            "Tag | Material | Size | Lead time | Price | Drawn by",
            "G-1 | Glass mosaic | 1 x 1 in | 6 wks | 42.00 | RT",
            "G-2 | Glass mosaic | 2 x 2 in | 8 wks | 45.00 | RT");
    assertThat(columns(facts))
        .containsEntry("Lead time", "")
        .containsEntry("Price", "")
        .containsEntry("Drawn by", "");
    assertThat(facts.account().setAside())
        .extracting(Account.SetAside::why)
        .contains("nothing that is asked for, under \"Lead time\"");
  }

  @Test
  void a_class_is_read_with_the_word_of_its_heading() {
    Facts facts =
        read(
            "Tag | Material | Sealant | Class",
            "G-1 | Glass mosaic | ASTM C920 | 50",
            "G-2 | Glass tile | ASTM C920 | 25");
    assertThat(said(facts, "G-1", "sealant.class")).isEqualTo("50");
  }

  @Test
  void a_number_of_a_row_is_no_tag_where_its_words_have_one() {
    Facts facts =
        read(
            "Item | Description | Chip | Thk.",
            "1 | GM-1 glass mosaic | 1x1 in | 6 mm",
            "2 | GM-2 cast glass tile | 2x2 in | 8 mm");
    assertThat(facts.rows()).extracting(ScheduleRow::tag).containsExactly("GM-1", "GM-2");
  }

  @Test
  void a_table_that_is_no_schedule_is_named_with_what_its_columns_might_be() {
    Facts facts =
        read(
            "Place | Soft joint wide | At",
            "Pool floor | 10 mm | 2.4 m",
            "Lobby wall | 6 mm | 6 m");
    assertThat(facts.account().tables().get(0).takenFor()).isEqualTo("none");
    assertThat(columns(facts))
        .containsEntry("Soft joint wide", "movement.width")
        .containsEntry("At", "movement.spacing");
  }

  @Test
  void initials_alone_are_no_evidence() {
    Facts facts =
        read(
            "Pos. | Tag | Material | Size",
            "3.010 | G-1 | Glass mosaic | 1 x 1 in",
            "3.020 | G-2 | Glass mosaic | 2 x 2 in");
    assertThat(columns(facts)).containsEntry("Pos.", "");
  }

  @Test
  void of_two_meanings_of_a_heading_the_cells_have_one() {
    Facts facts =
        read(
            "Mark | Material | Backing | Set with",
            "VG-1 | Cast glass mosaic | Backer board on wood studs | ANSI A118.15",
            "VG-2 | Cast glass mosaic | Mortar bed over concrete | ANSI A118.15",
            "VG-3 | Fused glass tile | Cement plaster over masonry | ANSI A118.3");
    assertThat(columns(facts)).containsEntry("Backing", "substrate.type");
    facts =
        read(
            "Mark | Material | Backing",
            "VG-1 | Cast glass mosaic | painted",
            "VG-2 | Fused glass tile | none");
    assertThat(columns(facts)).containsEntry("Backing", "tile.backing");
  }

  @Test
  void what_a_tile_may_lie_on_is_not_what_it_is() {
    Facts facts =
        read(
            "Mark | Room | Deflection | Carcass",
            "VG-1 | Foyer | L/480 | cement board over steel framing",
            "VG-2 | Kitchen | L/360 | timber by the builder",
            "VG-3 | Bath | L/480 | mortar bed over steel deck");
    assertThat(columns(facts)).containsEntry("Carcass", "");
    assertThat(facts.rows()).hasSize(3).noneMatch(ScheduleRow::decided);
  }

  @Test
  void joints_with_a_distance_in_each_direction_are_movement_joints() {
    Facts facts =
        read(
            "Tile | Interval in each direction, not over | Joint width",
            "VG-1, VG-2 | 18 ft | 1/4 in",
            "VG-3, VG-4, VG-5 | 9 ft | 3/8 in");
    assertThat(columns(facts))
        .containsEntry("Interval in each direction, not over", "movement.spacing")
        .containsEntry("Joint width", "movement.width");
  }
}
