package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Document;
import clearbed.model.report.Finding;
import clearbed.model.value.Entry;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Schedules as offices lay them out, each read for whole tiles and for theirs alone. */
class WaysOfSchedulesTest {
  @TempDir Path folder;

  @Test
  void the_lines_of_facts_on_a_mark_are_its_card() {
    Checked c =
        Checked.ofFiles(
            folder,
            "facts.csv",
            "MARK,PROPERTY,VALUE,UNIT,REMARK\n"
                + "QT-1,Material,Glass tile,,\nQT-1,Size,3 x 6,in,\nQT-1,Thickness,5/16,in,\n"
                + "QT-1,Color,Moss,,\nQT-1,Mortar,ANSI A118.15,,white\nQT-1,Joint,1/8,in,\n"
                + "QP-2,Material,Porcelain tile,,\nQP-2,Size,12 x 24,in,\nQP-2,Joint,3/16,in,\n"
                + "QP-2,Mortar,ANSI A118.4,,gray\n");
    assertThat(c.governing("QT-1", "tile.size")).containsExactly("3 in x 6 in");
    assertThat(c.governing("QT-1", "grout.width")).containsExactly("0.125 in");
    assertThat(c.governing("QT-1", "mortar.colour")).containsExactly("white");
  }

  @Test
  void a_build_up_with_a_name_of_its_own_is_that_of_the_tile_within() {
    Checked c =
        Checked.ofFiles(
            folder,
            "walls.csv",
            "Layer,B1,B2,B3\nWhere,\"Steam bath, walls\",\"Office, wall\",\"Lobby, floor\"\n"
                + "1 Finish,\"QM.01 glass mosaic, 20 x 20 mm\",\"QC.02 glazed ceramic, 100 x 100 mm\",\"QS.03 slate\"\n"
                + "2 Grout,RG,CG2,CG2\n3 Adhesive,R2T white,C1 grey,C2 grey\n"
                + "4 Ground,Cement board,Plasterboard,Screed\n");
    assertThat(c.governing("QM.01", "tile.size")).containsExactly("20 mm x 20 mm");
    assertThat(c.governing("QM.01", "mortar.isoClass")).containsExactly("R2");
    assertThat(c.governing("QM.01", "substrate.type")).containsExactly("cement board");
  }

  @Test
  void lines_below_a_mark_in_its_cell_describe_the_tile() {
    Checked c =
        Checked.ofFiles(
            folder,
            "rooms.csv",
            "ROOM,SURFACE,FINISH,GROUT,REM.\n"
                + "12 Shower,Walls,\"QG-5\nGlass mosaic, translucent\n3/4 x 3/4 in\",Epoxy,1\n"
                + "12 Shower,Floor,\"QP-2\nPorcelain mosaic\n2 x 2 in\",Epoxy,-\n"
                + "14 Office,Wall,\"QG-6\nGlass tile, opaque\n2 x 12 in\",Unsanded cement,2\n");
    assertThat(c.governing("QG-5", "tile.size")).containsExactly("0.75 in x 0.75 in");
    assertThat(c.governing("QG-5", "tile.translucency")).containsExactly("translucent");
    assertThat(c.governing("QG-6", "tile.size")).containsExactly("2 in x 12 in");
  }

  @Test
  void a_room_sheet_says_what_the_tile_on_its_wall_is() {
    Checked c =
        Checked.ofFiles(
            folder,
            "sheet.csv",
            "Room,1.08 Hot bath\nArea / height,31 m2 / 2.90 m\nConditions,\"steam, 45 degrees\"\n"
                + "Floor,QP-2 porcelain tile\n"
                + "Walls,\"QG-6 glass mosaic\nFormat: 20 x 20 mm\nGrout: RG\nJoint: 2 mm\"\n");
    assertThat(c.governing("QG-6", "tile.size")).containsExactly("20 mm x 20 mm");
    assertThat(c.governing("QG-6", "grout.width")).containsExactly("2 mm");
    assertThat(c.governing("QG-6", "location.exposure")).contains("steam");
  }

  @Test
  void what_a_legend_explains_is_said_of_the_cells_with_its_letters_alone() {
    Checked.ofFiles(
        folder,
        "tiles.md",
        "| Mark | Material | Exp. | Membrane |\n|---|---|---|---|\n"
            + "| QG-1 | Glass mosaic | W | WPM |\n| QG-2 | Glass tile | D | None |\n\n"
            + "Abbreviations\n\n| Abbrev. | Meaning |\n|---|---|\n"
            + "| W | Wet, interior |\n| D | Dry, interior |\n"
            + "| WPM | Bonded waterproof membrane, ANSI A118.10 |\n"
            + "| CIM | Crack isolation membrane, ANSI A118.12 |\n");
    Checked c = Checked.taught(folder);
    assertThat(c.governing("QG-1", "membrane.standard")).contains("ANSI A118.10");
    assertThat(c.governing("QG-2", "location.exposure")).containsExactly("dry");
    assertThat(c.governing("QG-2", "membrane.crackIsolation")).isEmpty();
  }

  @Test
  void a_mark_and_a_product_that_both_have_tables_make_one_tile() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.md",
            "| Mark | Product | Room |\n|---|---|---|\n| Q-11 | P11 | Pool |\n| Q-12 | P12 | Lobby |\n\n"
                + "| Product | Material | Face size |\n|---|---|---|\n"
                + "| P11 | Glass mosaic | 1 x 1 in |\n| P12 | Glass tile | 3 x 6 in |\n\n"
                + "| Mark | Mortar | Joint |\n|---|---|---|\n"
                + "| Q-11 | ANSI A118.15 | 1/8 in |\n| Q-12 | ANSI A118.4 | 1/16 in |\n");
    assertThat(c.project().glass())
        .extracting(Entry::tag)
        .containsExactlyInAnyOrder("Q-11", "Q-12");
    assertThat(c.governing("Q-11", "tile.size")).containsExactly("1 in x 1 in");
    assertThat(c.governing("Q-11", "grout.width")).containsExactly("0.125 in");
  }

  @Test
  void each_of_several_uses_of_a_sealant_is_read() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.md",
            "| Mark | Material | Sealant class | Sealant use |\n|---|---|---|---|\n"
                + "| QG-1 | Glass mosaic | 25 | NT, I, G |\n| QG-2 | Glass tile | 50 | T, M |\n");
    assertThat(c.governing("QG-1", "sealant.use")).containsExactlyInAnyOrder("NT", "I", "G");
    assertThat(c.governing("QG-2", "sealant.use")).containsExactlyInAnyOrder("T", "M");
  }

  @Test
  void a_tensile_figure_is_no_shear_bond_whatever_it_stands_under() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.md",
            "| Mark | Material | Adhesive | Adhesion |\n|---|---|---|---|\n"
                + "| QG-1 | Glass mosaic | C2TE S1 | Tensile, min. 1.0 N/mm2 |\n"
                + "| QG-2 | Glass tile | R2T | Shear, min. 2.5 N/mm2 |\n");
    assertThat(c.governing("QG-1", "mortar.tensile")).containsExactly("at least 1 N/mm²");
    assertThat(c.governing("QG-1", "mortar.bond")).isEmpty();
    assertThat(c.governing("QG-2", "mortar.bond")).containsExactly("at least 2.5 N/mm²");
  }

  @Test
  void standards_that_a_sentence_lists_by_their_titles_are_asked_of_no_tile() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Mark,Material,Sealant\nQG-1,Glass mosaic,Neutral silicone\n",
            "spec.txt",
            "SECTION 09 30 00 TILING\n\n1.1 The standards named in these documents are: "
                + "EN 12004: adhesives; EN 13888: grouts; EN 14891: liquid-applied waterproofing; "
                + "ISO 11600: joint sealants. The edition current at tender applies.\n\n"
                + "1.2 Glass tile QG-1 shall be cleaned with water.\n");
    assertThat(c.governing("QG-1", "membrane.standard")).isEmpty();
    assertThat(c.governing("QG-1", "sealant.kind")).containsExactly("silicone");
    assertThat(c.findings("joint-sealant")).extracting(Finding::tags).isNotEmpty();
  }

  @Test
  void a_question_that_a_letter_opens_is_a_question() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Mark,Material\nQG-1,Glass mosaic\n",
            "addendum.txt",
            "ADDENDUM 2\n\nQ. Is the deck part of the glass tile work?\n\nA. No, QG-1 is.\n");
    assertThat(c.documents()).noneMatch(d -> d.status() == Document.Status.UNREADABLE);
  }

  private static final String BILL = "Item,Description,Qty,Unit,Rate\n";

  @Test
  void lines_over_the_items_of_a_bill_describe_their_tiles() {
    Checked c =
        Checked.ofFiles(
            folder,
            "bill.csv",
            BILL
                + ",\"Wall tiling QM1; 10 x 10 mm glass mosaic, opaque; to basin; bedded in C2TE S2 adhesive, white; pointing in RG; joints 1 mm\",,,\n"
                + "A,over 600 mm wide,64,m2,\nB,not exceeding 600 mm wide,22,m,\n"
                + ",\"Wall tiling QM2; ditto but 20 x 20 mm; joints 2 mm\",,,\n"
                + "C,over 600 mm wide,18,m2,\n"
                + ",\"Coping QS4; honed granite 300 x 30 mm; bedded in C2 adhesive\",,,\n"
                + "D,straight,40,m,\n");
    assertThat(c.governing("QM1", "mortar.isoClass")).contains("C2");
    assertThat(c.governing("QM2", "tile.size")).contains("20 mm x 20 mm");
    assertThat(c.governing("QM2", "tile.translucency")).contains("opaque");
    assertThat(c.governing("QM2", "grout.width")).doesNotContain("1 mm");
    assertThat(c.hasGlass("QS4")).isFalse();
  }

  @Test
  void a_description_over_items_is_of_each_that_does_not_say_so_itself() {
    Checked c =
        Checked.ofFiles(
            folder,
            "bill.csv",
            BILL
                + ",Glass mosaic; paper-faced sheets; bedding in white C2TE S1 adhesive; joints 2 mm wide,,,\n"
                + "A,QM1; 20 x 20 x 4 mm; opaque; to walls of Learner pool,186,m2,\n"
                + "B,QM2; 25 x 25 x 6 mm; translucent; to columns,42,m2,\n"
                + ",Glazed porcelain tiles; bedding in grey C2 adhesive; joints 4 mm wide,,,\n"
                + "C,QC1; 200 x 200 x 9 mm; to floor,310,m2,\n"
                + "D,QC2; 100 x 200 x 9 mm; to skirting,95,m,\n");
    assertThat(c.governing("QM1", "tile.mounting")).containsExactly("paper-face");
    assertThat(c.governing("QM2", "mortar.colour")).containsExactly("white");
    assertThat(c.hasGlass("QC1")).isFalse();
  }

  @Test
  void what_is_said_of_items_is_said_of_their_tiles() {
    Checked c =
        Checked.ofFiles(
            folder,
            "bill.csv",
            BILL
                + ",\"Items A and B: movement joints 8 mm wide at 4.5 m centres, filled with polysulfide.\",,,\n"
                + "A,\"QM-01 Glass mosaic, 20 x 20 mm; to pool\",40,m2,\n"
                + "B,\"QM-02 Glass mosaic, 25 x 25 mm; to pool\",40,m2,\n"
                + "C,\"QM-03 Glass mosaic, 48 x 48 mm; to bar\",4,m2,\n");
    assertThat(c.governing("QM-02", "movement.width")).containsExactly("8 mm");
    assertThat(c.governing("QM-03", "movement.width")).isEmpty();
  }

  @Test
  void a_section_by_its_letter_is_no_tile() {
    Checked c =
        Checked.ofFiles(
            folder,
            "clauses.md",
            "# M40  Tiling - project clauses\n\n### 110A  GLASS MOSAIC, TYPE QM-A\n\n"
                + "- Size: 20 x 20 mm.\n- Thickness: 4 mm.\n- Joint width: 2 mm.\n- Background: render.\n\n"
                + "### 120A  QUARRY TILES, TYPE QT-A\n\n- Size: 150 x 150 x 15 mm.\n- Joint width: 8 mm.\n");
    assertThat(c.project().entries()).extracting(Entry::tag).doesNotContain("M40");
    assertThat(c.governing("QM-A", "grout.width")).containsExactly("2 mm");
  }

  @Test
  void of_a_tile_that_one_line_alone_names_one_thing_is_asked() {
    String full =
        ",Glass mosaic,Fused,ANSI A137.2,1 x 1 in,1/4 in,Opaque,None,Paper-face,Wall,Dry,Cement board,\"ANSI A118.15, white\",ANSI A118.7,1/8 in\n";
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Mark,Material,Kind,Standard,Size,Thickness,Light,Back,Mounting,Surface,Exposure,Substrate,Mortar,Grout,Joint\n"
                + "QG-1"
                + full
                + "QG-2"
                + full
                + "QG-3"
                + full,
            "notes.txt",
            "SECTION 09 30 00 TILING\n\n2.2 GLASS TILE\n\n1. QG-1: glass mosaic.\n\n2. QG-2: glass mosaic.\n\n"
                + "3. QG-3: glass mosaic.\n\n4. QG-9: glass accent tile, loose.\n");
    assertThat(c.findings("unscheduled-tag"))
        .anySatisfy(f -> assertThat(f.tags()).contains("QG-9"));
    assertThat(c.findings("grout-width")).noneMatch(f -> f.tags().contains("QG-9"));
    assertThat(c.findings("substrate-stated")).noneMatch(f -> f.tags().contains("QG-9"));
  }
}
