package clearbed.recognise.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.Facts;
import clearbed.recognise.Recogniser;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.limit.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Schedules as people lay them out. Cells are written with | between them; "=>" spans to it. */
class ScheduleFinderTest {

  /** A cell "text>3" covers three columns; an empty one is left out. */
  private static Table table(String... lines) {
    List<Table.Row> rows = new ArrayList<>();
    for (int r = 0; r < lines.length; r++) {
      List<Table.Cell> cells = new ArrayList<>();
      int column = 0;
      for (String raw : lines[r].split("\\|", -1)) {
        String text = raw.trim();
        int span = 1;
        if (text.matches(".*>\\d")) {
          span = text.charAt(text.length() - 1) - '0';
          text = text.substring(0, text.length() - 2);
        }
        if (!text.isEmpty()) cells.add(new Table.Cell(column, span, false, text, "", r + 1, 0));
        column += span;
      }
      if (!cells.isEmpty()) rows.add(new Table.Row(r + 1, cells, false));
    }
    return new Table(new Origin("schedule.xlsx", "Tile", null, null, null, null, null), rows, true);
  }

  private static Facts read(String... lines) {
    return new Recogniser(Checked.vocabulary())
        .recognise(Document.read("schedule.xlsx", "xlsx", List.of(table(lines)), List.of()));
  }

  private static List<String> glassTags(Facts facts) {
    return facts.rows().stream().filter(ScheduleRow::glass).map(ScheduleRow::tag).toList();
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

  private static String cell(Facts facts, String tag, String attribute) {
    return facts.rows().stream()
        .filter(r -> r.tag().equals(tag))
        .flatMap(r -> r.statements().stream())
        .filter(s -> s.attribute().equals(attribute))
        .map(s -> s.origin().cell())
        .findFirst()
        .orElse("");
  }

  @Test
  void title_rows_above_the_header_are_passed_over() {
    Facts facts =
        read(
            "TILE SCHEDULE",
            "Issued for tender",
            "",
            "Tag | Material | Size | Mortar",
            "GT-1 | Glass tile | 3 x 6 in | ANSI A118.15");
    assertThat(glassTags(facts)).containsExactly("GT-1");
    assertThat(said(facts, "GT-1", "mortar.standard")).isEqualTo("ANSI A118.15");
    assertThat(cell(facts, "GT-1", "mortar.standard")).isEqualTo("D5");
  }

  @Test
  void a_header_of_two_lines_with_merged_cells_is_one_header() {
    Facts facts =
        read(
            "Tile>3 | Setting>2 | Grout>2",
            "Tag | Material | Size | Mortar | Mortar color | Grout | Grout joint",
            "GT-1 | Glass mosaic | 1 x 1 in | ANSI A118.4 | White | ANSI A118.7 | 1/16 in");
    assertThat(said(facts, "GT-1", "mortar.standard")).isEqualTo("ANSI A118.4");
    assertThat(said(facts, "GT-1", "mortar.colour")).isEqualTo("white");
    assertThat(said(facts, "GT-1", "grout.standard")).isEqualTo("ANSI A118.7");
    assertThat(said(facts, "GT-1", "grout.width")).isEqualTo("0.0625 in");
  }

  @Test
  void blank_columns_between_the_others_do_no_harm() {
    Facts facts =
        read(
            "| Tag | | Material | | Size",
            "| GT-1 | | Glass tile | | 4 x 4 in",
            "| GT-2 | | Glass mosaic | | 20 x 20 mm");
    assertThat(glassTags(facts)).containsExactly("GT-1", "GT-2");
    assertThat(said(facts, "GT-2", "tile.size")).isEqualTo("20 mm x 20 mm");
    assertThat(cell(facts, "GT-2", "tile.size")).isEqualTo("F3");
  }

  @Test
  void several_tables_on_one_sheet_each_have_their_own_header() {
    Facts facts =
        read(
            "WALL TILE",
            "Tag | Material | Size | Mortar",
            "GT-1 | Glass tile | 3 x 6 in | ANSI A118.4",
            "",
            "POOL TILE",
            "Mark | Description | Exposure | Adhesive",
            "GT-2 | Glass mosaic | Submerged | ANSI A118.15");
    assertThat(glassTags(facts)).containsExactly("GT-1", "GT-2");
    assertThat(said(facts, "GT-2", "location.exposure")).isEqualTo("submerged");
    assertThat(said(facts, "GT-2", "mortar.standard")).isEqualTo("ANSI A118.15");
    assertThat(said(facts, "GT-1", "location.exposure")).isEmpty();
  }

  @Test
  void a_unit_in_the_header_holds_for_the_column() {
    Facts facts =
        read(
            "Tag | Material | Size (mm) | Shear bond (psi) | Grout joint (in)",
            "GT-1 | Glass tile | 300 x 600 | 450 | 1/8");
    assertThat(said(facts, "GT-1", "tile.size")).isEqualTo("300 mm x 600 mm");
    assertThat(said(facts, "GT-1", "mortar.bond")).isEqualTo("450 psi");
    assertThat(said(facts, "GT-1", "grout.width")).isEqualTo("0.125 in");
  }

  @Test
  void a_unit_in_the_header_needs_no_bracket() {
    Facts facts =
        read(
            "Code | Product | Size mm | Grout joint mm | Movement joint mm | Movement joints at m",
            "GT-1 | Glass tile | 300 x 600 | 3 | 8 | 2.4");
    assertThat(said(facts, "GT-1", "tile.size")).isEqualTo("300 mm x 600 mm");
    assertThat(said(facts, "GT-1", "grout.width")).isEqualTo("3 mm");
    assertThat(said(facts, "GT-1", "movement.width")).isEqualTo("8 mm");
    assertThat(said(facts, "GT-1", "movement.spacing")).isEqualTo("2.4 m");
  }

  @Test
  void a_group_heading_between_rows_says_what_they_are() {
    Facts facts =
        read(
            "Tag | Material | Size | Mortar",
            "GLASS MOSAIC",
            "M-1 | Sea green blend | 1 x 1 in | ANSI A118.15",
            "PORCELAIN TILE",
            "M-2 | Sea green blend | 12 x 12 in | ANSI A118.4");
    assertThat(glassTags(facts)).containsExactly("M-1");
  }

  @Test
  void ditto_marks_repeat_the_cell_above() {
    Facts facts =
        read(
            "Tag | Material | Size | Mortar",
            "GT-1 | Glass tile | 3 x 6 in | ANSI A118.15",
            "GT-2 | Glass tile | 4 x 4 in | ditto",
            "GT-3 | Glass tile | 4 x 8 in | \"",
            "GT-4 | Glass tile | 4 x 8 in | ″");
    assertThat(said(facts, "GT-2", "mortar.standard")).isEqualTo("ANSI A118.15");
    assertThat(said(facts, "GT-3", "mortar.standard")).isEqualTo("ANSI A118.15");
    assertThat(said(facts, "GT-4", "mortar.standard")).isEqualTo("ANSI A118.15");
  }

  @Test
  void a_ditto_mark_for_the_material_is_the_material() {
    Facts facts =
        read(
            "Tag | Material | Size | Mortar",
            "GT-1 | Glass tile | 3 x 6 in | ANSI A118.15",
            "GT-2 | do. | 4 x 4 in | ANSI A118.4",
            "GT-3 | \" | 4 x 4 in | ANSI A118.4");
    assertThat(glassTags(facts)).containsExactly("GT-1", "GT-2", "GT-3");
  }

  @Test
  void notes_below_the_table_are_notes() {
    Facts facts =
        read(
            "Tag | Material | Size",
            "GT-1 | Glass tile | 3 x 6 in",
            "",
            "Notes:",
            "1. Set all glass tile in white mortar meeting ANSI A118.15.");
    assertThat(glassTags(facts)).containsExactly("GT-1");
    assertThat(facts.rows()).hasSize(1);
    assertThat(facts.sections())
        .flatExtracting(Section::clauses)
        .flatExtracting(Clause::statements)
        .extracting(s -> s.attribute() + " " + s.content().text())
        .contains("mortar.standard ANSI A118.15", "mortar.colour white");
  }

  @Test
  void a_schedule_that_runs_across_is_turned() {
    Facts facts =
        read(
            "Tag | GT-1 | GT-2",
            "Material | Glass tile | Glass mosaic",
            "Size | 3 x 6 in | 1 x 1 in",
            "Mortar | ANSI A118.4 | ANSI A118.15",
            "Exposure | Dry | Submerged");
    assertThat(glassTags(facts)).containsExactly("GT-1", "GT-2");
    assertThat(said(facts, "GT-2", "mortar.standard")).isEqualTo("ANSI A118.15");
    assertThat(cell(facts, "GT-2", "mortar.standard")).isEqualTo("C4");
  }

  @Test
  void a_room_finish_schedule_places_the_tags() {
    Facts facts =
        read(
            "Room No. | Room name | Floor | Base | Wall | Ceiling",
            "101 | Shower room | PT-1 | - | GT-1 | ACT-1",
            "102 | Lobby | PT-2 | WB-1 | GT-2 / PNT-1 | ACT-1");
    assertThat(facts.rows()).isEmpty();
    assertThat(facts.rooms())
        .extracting(u -> u.tag() + " " + u.surface())
        .contains("GT-1 wall", "GT-2 wall", "PT-1 floor");
    assertThat(facts.rooms())
        .filteredOn(u -> u.tag().equals("GT-1"))
        .allSatisfy(
            u -> {
              assertThat(u.room()).contains("Shower room");
              assertThat(u.origin().cell()).isEqualTo("E2");
            });
  }

  @Test
  void one_cell_may_hold_several_tags() {
    Facts facts =
        read(
            "Tag | Material | Size",
            "GT-1, GT-2 | Glass tile | 3 x 6 in",
            "GT-3 | Glass tile | 1 x 1 in");
    assertThat(glassTags(facts)).containsExactly("GT-1", "GT-2", "GT-3");
  }

  @Test
  void a_glass_row_without_a_tag_is_kept_and_told_of() {
    Facts facts =
        read(
            "Tag | Material | Size",
            "GT-1 | Glass tile | 3 x 6 in",
            "| Glass border tile | 1 x 6 in");
    assertThat(glassTags(facts)).containsExactly("GT-1", "Glass border tile");
    assertThat(facts.gaps())
        .extracting(Document.Gap::reason)
        .anyMatch(r -> r.contains("without a tag"));
  }

  @Test
  void a_cell_that_sends_elsewhere_states_nothing() {
    Facts facts =
        read(
            "Tag | Material | Size | Mortar",
            "GT-1 | Glass tile | 3 x 6 in | See Section 09 30 00",
            "GT-2 | Glass tile | 3 x 6 in | n/a");
    assertThat(said(facts, "GT-1", "mortar.standard")).isEmpty();
    assertThat(said(facts, "GT-2", "mortar.standard")).isEmpty();
  }

  @Test
  void a_list_of_anything_else_is_no_schedule() {
    Facts facts =
        read(
            "Date | Event",
            "12 March | Site visit",
            "14 March | Tender closes",
            Arrays.toString(new int[0]));
    assertThat(facts.rows()).isEmpty();
    assertThat(facts.rooms()).isEmpty();
  }

  @Test
  void headings_are_known_in_short_forms_and_any_order() {
    Facts facts =
        read(
            "Mark | Type offered | Nom. size | GR. JT | Width of mvmt jt | Fixed to substrate",
            "GT-1 | Cast glass tile | 3 x 6 in | 1/8 in | 1/4 in | Mortar bed");
    assertThat(said(facts, "GT-1", "tile.kind")).isEqualTo("cast");
    assertThat(said(facts, "GT-1", "tile.size")).isEqualTo("3 in x 6 in");
    assertThat(said(facts, "GT-1", "grout.width")).isEqualTo("0.125 in");
    assertThat(said(facts, "GT-1", "movement.width")).isEqualTo("0.25 in");
    assertThat(said(facts, "GT-1", "substrate.type")).isEqualTo("mortar bed");
  }

  @Test
  void a_line_that_looks_like_a_heading_does_not_keep_a_schedule_from_being_turned() {
    Facts facts =
        read(
            "Property | GT-1 | GT-2",
            "Material | Cast glass tile | Glass mosaic",
            "Size | 3 x 6 in | 1 x 1 in",
            "Surface | Wall | Floor",
            "Exposure | Dry | Wet");
    assertThat(glassTags(facts)).containsExactly("GT-1", "GT-2");
    assertThat(facts.rooms()).isEmpty();
  }

  @Test
  void requirements_by_property_are_not_turned_into_tiles() {
    Facts facts =
        read(
            "Property | Requirement | Applies to",
            "Quality of glass tile | ANSI A137.2 | All glass tile",
            "Adhesion | Shear bond strength 450 psi | All glass tile",
            "Slip resistance | Wet DCOF 0.42 | GT-3",
            "Stiffness of substrate | L/480 | All glass tile");
    assertThat(glassTags(facts)).isEmpty();
  }

  @Test
  void numbered_notes_are_no_schedule() {
    assertThat(read("No. | Note", "1 | White mortar at GT-1.", "2 | Cut wet.").rows()).isEmpty();
  }

  private static Facts under(String heading, String... lines) {
    Paragraph over = Paragraph.body(Origin.ofDocument("A-1.pdf").withText(heading), heading);
    return new Recogniser(Checked.vocabulary())
        .recognise(Document.read("A-1.pdf", "pdf", List.of(over, table(lines)), List.of()));
  }

  @Test
  void a_table_under_a_heading_on_movement_joints_gives_their_width() {
    String[] lines = {"Tile | Width of joint | Greatest centres", "GT-1 | 10 mm | 2.4 m"};
    Facts joints = under("Movement joints in glass tile", lines);
    assertThat(said(joints, "GT-1", "movement.width")).isEqualTo("10 mm");
    assertThat(said(joints, "GT-1", "movement.spacing")).isEqualTo("2.4 m");
    assertThat(said(joints, "GT-1", "grout.width")).isEmpty();
    // What is grouted has no centres, whatever stands over the table.
    assertThat(said(under("Schedule of tile", lines), "GT-1", "movement.width")).isEqualTo("10 mm");
  }

  @Test
  void a_column_may_hold_the_width_of_joints_and_the_depth_of_what_fills_them() {
    Facts facts =
        read(
            "Place | Marks | Longest side | Movement | Width × depth of sealant",
            "Basin | GM-1 | 3.0 m | 0.9 mm | 8 × 5 mm",
            "Hearth wall | GM-2 | 2.5 m | 1.5 mm | 10 × 6 mm");
    assertThat(said(facts, "GM-1", "movement.spacing")).isEqualTo("3 m");
    assertThat(said(facts, "GM-1", "movement.width")).isEqualTo("8 mm");
    assertThat(said(facts, "GM-2", "sealant.depth")).isEqualTo("6 mm");
  }

  @Test
  void a_column_of_former_values_beside_the_spacing_of_joints_harms_nothing() {
    Facts facts =
        read(
            "Tile | Width of joint | Greatest centres | Superseded",
            "GM-1 | 10 mm | 2.4 m | 4.5 m",
            "GM-2 | 8 mm | 3.0 m | 4.5 m");
    assertThat(said(facts, "GM-1", "movement.width")).isEqualTo("10 mm");
  }

  @Test
  void marks_beside_numbered_rooms_are_those_of_what_is_laid_there() {
    Facts facts =
        read(
            "No. | Room | Part | Mark | Substrate",
            "U1.04 | Indoor basin | walls | GM-1 | cement render",
            "E0.14 | Showers | walls | GM-2 | masonry with cement render",
            "E0.15 | Showers | walls | GM-2 | masonry with cement render");
    assertThat(said(facts, "GM-1", "substrate.type")).isEqualTo("mortar bed");
  }

  @Test
  void words_that_say_this_and_that_of_a_tile_describe_it_whatever_they_stand_under() {
    Facts facts =
        read(
            "Mark | Element and place | Condition | Replacement",
            "L1-G1 | Glass tile, lobby wall | 42 % hollow | Kiln-formed glass, 6 in. x 24 in., transparent, no backing, loose pieces",
            "L1-G2 | Glass mosaic, basin | Leaking | Pressed glass, 3/4 in. x 3/4 in., opaque, no backing, mesh mounted",
            "L1-M1 | Mirror, alcove | Sound | Keep");
    assertThat(said(facts, "L1-G1", "tile.size")).isEqualTo("6 in x 24 in");
    assertThat(said(facts, "L1-G2", "tile.translucency")).isEqualTo("opaque");
  }

  @Test
  void a_table_of_sealants_by_location_is_read_as_clauses() {
    Facts facts =
        under(
            "SEALANTS",
            "Location | Sealant | Class | Use",
            "Window perimeters | Silicone, ASTM C920 | Class 50 | Use NT",
            "Shower floor tile, GT-2 | Polyurethane, ASTM C920 | Class 25 | Use T");
    assertThat(facts.rows()).isEmpty();
    assertThat(facts.sections().get(0).clauses())
        .flatExtracting(Clause::statements)
        .filteredOn(s -> s.limits().tags().contains("GT-2"))
        .extracting(Statement::attribute)
        .contains("sealant.standard", "sealant.class", "sealant.use");
  }

  @Test
  void a_heading_of_a_few_letters_is_known_by_its_neighbour() {
    Facts facts =
        read(
            "Tag | Material | Substrate | Setting bed | Movement joint width | At",
            "GT-1 | Glass tile | Concrete slab | ANSI A118.15 | 3/8 in | 8 ft");
    assertThat(said(facts, "GT-1", "mortar.standard")).isEqualTo("ANSI A118.15");
    assertThat(said(facts, "GT-1", "movement.spacing")).isEqualTo("8 ft");
  }

  @Test
  void a_dash_stands_for_no_tag_and_for_no_value() {
    Facts facts =
        read(
            "Tag | Description | Size | Joint width, mm | See-through",
            "GW-1 | Glass mosaic, lounge | 25 x 25 x 6 mm | \u2013 | opaque",
            "GW-2 | Glass mosaic, bar | 25 x 25 x 6 mm | 3 | \u2014",
            "\u2013 | Movement joints in glass tile, by the metre | - | - | -");
    assertThat(glassTags(facts)).containsExactly("GW-1", "GW-2");
    assertThat(said(facts, "GW-1", "grout.width")).isEmpty();
    assertThat(said(facts, "GW-2", "grout.width")).isEqualTo("3 mm");
    assertThat(facts.account().unread()).noneMatch(unread -> unread.samples().contains("-"));
  }

  @Test
  void brackets_behind_a_look_explain_it_and_give_no_other() {
    Facts facts =
        read(
            "Tag | Description | Size | See-through",
            "GW-1 | Fused glass tile | 2 x 8 in | Not see-through (clear face over foil)",
            "GW-2 | Cast glass tile | 2 x 8 in | Translucent (opaque where GW-5 meets it)",
            "GW-3 | Cast glass tile | 2 x 8 in | Transparent");
    assertThat(said(facts, "GW-1", "tile.translucency")).isEqualTo("opaque");
    assertThat(said(facts, "GW-2", "tile.translucency")).contains("opaque", "translucent");
    assertThat(said(facts, "GW-3", "tile.translucency")).isEqualTo("transparent");
  }
}
