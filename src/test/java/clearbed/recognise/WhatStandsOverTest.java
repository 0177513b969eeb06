package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.model.value.Entry;
import clearbed.resolve.Project;
import clearbed.resolve.Resolver;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Titles, cards, lists and sentences that say what the words below them are for. */
class WhatStandsOverTest {
  @TempDir Path folder;

  private static final String SCHEDULE =
      "Tag,Material,Place\nVG-1,Cast glass mosaic,Shower wall\nVG-2,Fused glass tile,Hall wall\n"
          + "CT-1,Porcelain tile,Hall floor\n";

  private Checked with(String... lines) {
    return Checked.ofFiles(
        folder, "schedule.csv", SCHEDULE, "notes.txt", String.join("\n\n", lines) + "\n");
  }

  @Test
  void a_sentence_that_says_what_follows_is_for_ends_the_list_before_it() {
    Checked c =
        with(
            "TILE DRAWING NOTES",
            "ABBREVIATIONS",
            "AFF above finished floor. BU backer unit.",
            "THE REQUIREMENTS BELOW ARE FOR VG-1 AND VG-2 AND NOT FOR PORCELAIN.",
            "1. Bed in white mortar, ANSI A118.15.",
            "2. Soft joints 1/2 in wide.");
    assertThat(c.governing("VG-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("VG-2", "movement.width")).containsExactly("0.5 in");
  }

  @Test
  void the_name_of_a_project_limits_nothing() {
    Checked c =
        with(
            "GLASS TILE METHOD",
            "SLATE CREEK SWIM CLUB",
            "A. BEDDING",
            "1. White mortar, ANSI A118.15.");
    assertThat(c.governing("VG-2", "mortar.standard")).containsExactly("ANSI A118.15");
  }

  @Test
  void a_title_that_runs_on_names_the_part_of_the_work() {
    Checked c =
        with(
            "GLASS TILE NOTES",
            "Sealant at corners. Neutral-cure silicone, ASTM C920, Class 50, Use NT.",
            "Bed. White, ANSI A118.15, 470 psi shear bond.");
    assertThat(c.governing("VG-1", "sealant.class")).containsExactly("50");
    assertThat(c.governing("VG-1", "mortar.colour")).containsExactly("white");
  }

  @Test
  void what_stands_in_a_card_ends_with_it() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(body(1, "Card VG-7 \"Tern\" glass mosaic"));
    blocks.add(
        card(
            2,
            "What it is",
            "Cast glass mosaic, ANSI A137.2",
            "Size",
            "1 in. x 1 in.",
            "See-through?",
            "Opaque",
            "Mortar",
            "ANSI A118.4, gray"));
    blocks.add(body(3, "Card VG-8 \"Gull\" glass tile"));
    blocks.add(
        card(
            4,
            "What it is",
            "Fused glass tile, ANSI A137.2",
            "Size",
            "4 in. x 8 in.",
            "See-through?",
            "Translucent",
            "Mortar",
            "ANSI A118.15, white"));
    blocks.add(body(5, "For all glass tile: movement joints 1/2 in. wide."));
    Document document = Document.read("cards.docx", "docx", blocks, List.of());
    Facts facts = new Recogniser(Checked.vocabulary()).recognise(document);
    Project project = new Resolver(Checked.vocabulary()).resolve(List.of(facts), List.of());
    Checked c = new Checked(List.of(document), project, null);
    assertThat(project.glass().stream().map(Entry::tag)).containsExactly("VG-7", "VG-8");
    assertThat(c.governing("VG-7", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(c.governing("VG-7", "movement.width")).containsExactly("0.5 in");
    assertThat(c.governing("VG-8", "movement.width")).containsExactly("0.5 in");
  }

  @Test
  void below_an_item_on_one_tile_a_paragraph_that_opens_with_others_is_on_those() {
    Checked c =
        with(
            "GLASS TILE NOTES",
            "a. VG-1: opaque, 1/4 in thick.",
            "b. VG-2: translucent; white mortar, ANSI A118.15.",
            "VG-1 sheets are bedded in gray mortar; the mortar meets ANSI A118.4.");
    assertThat(c.governing("VG-1", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(c.governing("VG-2", "mortar.standard")).containsExactly("ANSI A118.15");
  }

  private static Paragraph body(int at, String text) {
    return Paragraph.body(new Origin("cards.docx", null, null, null, at, null, text), text);
  }

  private static Table card(int at, String... namesAndValues) {
    List<Table.Row> rows = new ArrayList<>();
    for (int i = 0; i < namesAndValues.length; i += 2)
      rows.add(
          new Table.Row(
              i / 2,
              List.of(cell(i / 2, 0, namesAndValues[i]), cell(i / 2, 1, namesAndValues[i + 1])),
              false));
    return new Table(new Origin("cards.docx", null, null, null, at, null, ""), rows, false);
  }

  private static Table.Cell cell(int row, int column, String text) {
    return new Table.Cell(column, 1, false, text, "", row, 0);
  }
}
