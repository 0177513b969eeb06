package clearbed.read.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.read.ReadAll;
import clearbed.read.layout.Line;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Running text in columns is read column by column; what stands in rows stays a table. */
class PdfColumnsTest {
  private static final PDRectangle TABLOID = new PDRectangle(1224, 792);
  private static final String[] NOTES = {
    "FOLLOW THE WRITTEN INSTRUCTIONS OF THE TILE MAKER AND OF THE MORTAR MAKER. SUBMIT THEM WITH"
        + " THE SAMPLES BEFORE TILE IS ORDERED.",
    "BUILD A MOCK-UP 4 FT X 4 FT OF EACH GLASS TILE, GROUTED. IT STAYS UNTIL THE JOB IS DONE.",
    "GT-1 ON CEMENT BOARD. GT-2 ON MEMBRANE OVER CEMENT BOARD.",
    "SUBSTRATE SHALL BE WITHIN 1/8 IN. IN 10 FT. CHECK WITH A STRAIGHTEDGE AND SHOW THE ARCHITECT"
        + " ANY LOW SPOTS BEFORE SETTING BEGINS.",
    "DEFLECTION UNDER GLASS TILE NOT OVER L/600.",
    "SHEAR BOND OF GLASS TILE AT 28 DAYS: 460 PSI MINIMUM FOR ALL GLASS TILE ON THIS JOB.",
    "BACK-BUTTER EACH TILE AND LEAVE NO VOIDS BEHIND CLEAR GLASS.",
    "WAIT 48 HOURS AFTER SETTING, THEN GROUT. KEEP THE SHOWERS OFF FOR 21 DAYS AFTER GROUTING AND"
        + " SAY SO ON A SIGN.",
    "CUT WET. CLEAN UP SLIVERS DAILY.",
    "CLEAN GLASS TILE WITH A MILD DETERGENT. NO ACID, NO SCOURING POWDER, NO STEEL WOOL."
  };
  private static final String[] KEYNOTES = {
    "GT-2 ON ALL SHOWER WALLS TO 7'-4\" A.F.F.",
    "GT-1 FIELD, INTERIOR, DRY, NO SUN ON THIS WALL.",
    "GT-1 BAND AT 48\" ON TOILET ROOM WALLS, ALSO BEHIND THE HAND DRYERS AND AT THE DOOR.",
    "MIRROR M-1 OVER LAVS, CLIP MOUNTED.",
    "FRP PANELS AT MOP SINK, SET IN PANEL ADHESIVE BY THE MAKER OF THE PANELS.",
    "CT-1 CERAMIC TO 6'-0\" A.F.F."
  };
  private static final String[] CLAUSES = {
    "Mortar: latex-modified cement mortar that meets ANSI A118.15, white where the tile is"
        + " translucent, from one manufacturer for the whole of the work.",
    "Grout: high-performance cement grout that meets ANSI A118.7, unsanded for polished tile.",
    "Membrane: load-bearing, bonded, waterproof membrane that meets ANSI A118.10 and is accepted"
        + " in writing by the manufacturer of the glass tile.",
    "Sealant: ASTM C920, Type S, Grade NS, Class 50, Use NT.",
    "Cleaner: a neutral cleaner that the manufacturer of the tile accepts in writing."
  };

  @TempDir Path folder;

  @Test
  void notesInThreeColumnsKeepTheirMarksAndTheirOrder() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page(TABLOID)
                  .text(PdfSheet.BOLD, 14, 48, 60, "A-501   TILE ELEVATIONS, KEYNOTES AND NOTES");
              PdfColumn left = new PdfColumn(pdf, 48, 108, 350, 8, 4).heading("KEYNOTES");
              for (int i = 0; i < KEYNOTES.length; i++) left.item("" + (i + 1), KEYNOTES[i]);
              PdfColumn middle =
                  new PdfColumn(pdf, 437, 108, 350, 8, 4)
                      .heading(
                          "GLASS TILE NOTES. THESE APPLY TO GT-1 AND GT-2 AND NOT TO CERAMIC TILE OR"
                              + " QUARRY TILE.");
              for (int i = 0; i < 6; i++) middle.item("" + (char) ('A' + i), NOTES[i]);
              PdfColumn right = new PdfColumn(pdf, 826, 108, 350, 8, 4);
              for (int i = 6; i < 10; i++) right.item("" + (char) ('A' + i), NOTES[i]);
            });

    assertThat(tables(document)).isEmpty();
    assertThat(texts(document))
        .containsSubsequence(
            "KEYNOTES",
            "1 " + KEYNOTES[0],
            "2 " + KEYNOTES[1],
            "3 " + KEYNOTES[2],
            "4 " + KEYNOTES[3],
            "5 " + KEYNOTES[4],
            "6 " + KEYNOTES[5])
        .containsSubsequence(
            "GLASS TILE NOTES. THESE APPLY TO GT-1 AND GT-2 AND NOT TO CERAMIC TILE OR QUARRY TILE.",
            "A " + NOTES[0],
            "B " + NOTES[1],
            "C " + NOTES[2],
            "D " + NOTES[3],
            "E " + NOTES[4],
            "F " + NOTES[5],
            "G " + NOTES[6],
            "H " + NOTES[7],
            "I " + NOTES[8],
            "J " + NOTES[9])
        .hasSize(19);
  }

  @Test
  void aSpecificationInTwoColumnsIsReadDownTheFirstAndThenTheSecond() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page().text(PdfSheet.BOLD, 12, 230, 80, "SECTION 09 30 13");
              new PdfColumn(pdf, 54, 110, 240, 9, 5)
                  .heading("PART 2 - PRODUCTS")
                  .heading("2.1 SETTING MATERIALS")
                  .item("A.", CLAUSES[0])
                  .item("B.", CLAUSES[1])
                  .item("C.", CLAUSES[2]);
              new PdfColumn(pdf, 318, 110, 240, 9, 5)
                  .item("D.", CLAUSES[3])
                  .heading("2.2 ACCESSORIES")
                  .item("A.", CLAUSES[4])
                  .item("B.", "Backer rod: closed-cell foam.");
            });

    assertThat(texts(document))
        .containsExactly(
            "SECTION 09 30 13",
            "PART 2 - PRODUCTS",
            "2.1 SETTING MATERIALS",
            "A. " + CLAUSES[0],
            "B. " + CLAUSES[1],
            "C. " + CLAUSES[2],
            "D. " + CLAUSES[3],
            "2.2 ACCESSORIES",
            "A. " + CLAUSES[4],
            "B. Backer rod: closed-cell foam.");
  }

  @Test
  void aParagraphThatRunsIntoTheNextColumnIsOne() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              new PdfColumn(pdf, 54, 110, 240, 9, 5)
                  .item("A.", CLAUSES[2])
                  .item("B.", CLAUSES[1])
                  .item("C.", "Mortar: latex-modified cement mortar, white where the tile is");
              new PdfColumn(pdf, 318, 110, 240, 9, 5)
                  .rest(18, "translucent, and from one manufacturer for all of the work.")
                  .item("D.", CLAUSES[4])
                  .item("E.", CLAUSES[0]);
            });

    assertThat(texts(document))
        .containsExactly(
            "A. " + CLAUSES[2],
            "B. " + CLAUSES[1],
            "C. Mortar: latex-modified cement mortar, white where the tile is translucent, and from"
                + " one manufacturer for all of the work.",
            "D. " + CLAUSES[4],
            "E. " + CLAUSES[0]);
  }

  @Test
  void aNoteInCapitalsThatRunsIntoTheNextColumnIsOne() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              new PdfColumn(pdf, 54, 110, 240, 8, 4)
                  .item("A", NOTES[0])
                  .item("B", NOTES[3])
                  .item("C", "MOVEMENT JOINTS 16'-0\" EACH WAY, AT PERIMETERS AND AT EVERY");
              new PdfColumn(pdf, 318, 110, 240, 8, 4)
                  .rest(18, "INSIDE CORNER AND CHANGE OF PLANE.")
                  .item("D", NOTES[7])
                  .item("E", NOTES[9]);
            });

    assertThat(texts(document))
        .containsExactly(
            "A " + NOTES[0],
            "B " + NOTES[3],
            "C MOVEMENT JOINTS 16'-0\" EACH WAY, AT PERIMETERS AND AT EVERY INSIDE CORNER AND CHANGE"
                + " OF PLANE.",
            "D " + NOTES[7],
            "E " + NOTES[9]);
  }

  @Test
  void marksWithoutAPointHangBeforeTheNotesOfOneColumn() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              PdfColumn notes = new PdfColumn(pdf, 72, 110, 300, 9, 5).heading("TILE NOTES");
              for (int i = 0; i < 9; i++) notes.item("" + (char) ('A' + i), 26, NOTES[i]);
            });

    assertThat(tables(document)).isEmpty();
    assertThat(texts(document)).startsWith("TILE NOTES", "A " + NOTES[0], "B " + NOTES[1]);
    assertThat(texts(document)).hasSize(10).endsWith("I " + NOTES[8]);
  }

  @Test
  void shortNotesSideBySideBelongToTheListsOfTheirMarks() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              for (int i = 0; i < 5; i++) {
                pdf.text(60, 100 + 14 * i, "" + (i + 1))
                    .text(76, 100 + 14 * i, "SEAL THE TILE EDGE AT DOOR NUMBER " + i + ".")
                    .text(330, 100 + 14 * i, "" + (i + 6))
                    .text(346, 100 + 14 * i, "LEAVE THE GROUT OUT AT POST NUMBER " + i + ".");
              }
            });

    assertThat(tables(document)).isEmpty();
    assertThat(texts(document))
        .hasSize(10)
        .startsWith("1 SEAL THE TILE EDGE AT DOOR NUMBER 0.")
        .endsWith("10 LEAVE THE GROUT OUT AT POST NUMBER 4.");
  }

  @Test
  void aHeadingAcrossTheColumnsStartsANewBand() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              new PdfColumn(pdf, 54, 110, 240, 9, 5)
                  .item("A.", CLAUSES[0])
                  .item("B.", CLAUSES[1])
                  .item("C.", CLAUSES[4]);
              new PdfColumn(pdf, 318, 110, 240, 9, 5).item("D.", CLAUSES[2]).item("E.", CLAUSES[4]);
              pdf.text(
                  PdfSheet.BOLD,
                  12,
                  54,
                  300,
                  "NOTES ON GROUTING, FOR ALL WALLS AND FLOORS OF THE POOL HALL");
              new PdfColumn(pdf, 54, 330, 240, 9, 5).item("F.", CLAUSES[2]).item("G.", CLAUSES[4]);
              new PdfColumn(pdf, 318, 330, 240, 9, 5).item("H.", CLAUSES[0]).item("I.", CLAUSES[1]);
            });

    assertThat(texts(document))
        .containsExactly(
            "A. " + CLAUSES[0],
            "B. " + CLAUSES[1],
            "C. " + CLAUSES[4],
            "D. " + CLAUSES[2],
            "E. " + CLAUSES[4],
            "NOTES ON GROUTING, FOR ALL WALLS AND FLOORS OF THE POOL HALL",
            "F. " + CLAUSES[2],
            "G. " + CLAUSES[4],
            "H. " + CLAUSES[0],
            "I. " + CLAUSES[1]);
  }

  @Test
  void aShortLastColumnIsAColumnStill() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page(TABLOID);
              PdfColumn first = new PdfColumn(pdf, 48, 108, 350, 9, 4);
              for (int i = 0; i < 6; i++) first.paragraph(NOTES[i]);
              PdfColumn second = new PdfColumn(pdf, 437, 108, 350, 9, 4);
              for (int i = 5; i >= 0; i--) second.paragraph(NOTES[i]);
              new PdfColumn(pdf, 826, 108, 350, 9, 4).paragraph(NOTES[7]);
            });

    assertThat(texts(document))
        .containsExactly(
            NOTES[0], NOTES[1], NOTES[2], NOTES[3], NOTES[4], NOTES[5], NOTES[5], NOTES[4],
            NOTES[3], NOTES[2], NOTES[1], NOTES[0], NOTES[7]);
  }

  @Test
  void aGutterMayBeAsNarrowAsALetterIsWide() throws IOException {
    for (float gutter : new float[] {12, 9, 6}) {
      Document document =
          read(
              pdf -> {
                pdf.page();
                PdfColumn left = new PdfColumn(pdf, 54, 110, 240, 9, 4);
                PdfColumn right = new PdfColumn(pdf, 294 + gutter, 110, 240, 9, 4);
                for (String words : CLAUSES) left.paragraph(words);
                for (int i = CLAUSES.length - 1; i >= 0; i--) right.paragraph(CLAUSES[i]);
              });

      assertThat(texts(document))
          .as("gutter of %s points", gutter)
          .containsExactly(
              CLAUSES[0],
              CLAUSES[1],
              CLAUSES[2],
              CLAUSES[3],
              CLAUSES[4],
              CLAUSES[4],
              CLAUSES[3],
              CLAUSES[2],
              CLAUSES[1],
              CLAUSES[0]);
    }
  }

  @Test
  void notesBesideARuledTableAreNotCutByIt() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              PdfColumn notes = new PdfColumn(pdf, 54, 110, 220, 9, 5);
              for (int i = 0; i < 6; i++) notes.item("" + (i + 1), NOTES[i]);
              pdf.grid(new float[] {320, 380, 540}, new float[] {121, 141, 161, 181});
              for (int r = 0; r < 3; r++) {
                pdf.text(324, 134 + 20 * r, r == 0 ? "Tag" : "GT-" + r)
                    .text(384, 134 + 20 * r, r == 0 ? "Mortar" : "ANSI A118.15");
              }
            });

    assertThat(rows(tables(document).get(0)))
        .containsExactly("Tag|Mortar", "GT-1|ANSI A118.15", "GT-2|ANSI A118.15");
    assertThat(tables(document)).hasSize(1);
    assertThat(texts(document))
        .containsExactly(
            "1 " + NOTES[0],
            "2 " + NOTES[1],
            "3 " + NOTES[2],
            "4 " + NOTES[3],
            "5 " + NOTES[4],
            "6 " + NOTES[5]);
  }

  @Test
  void notesBesideAnUnruledScheduleStandApartFromIt() throws IOException {
    float[] xs = {330, 372, 470, 540};
    Document document =
        read(
            pdf -> {
              pdf.page();
              PdfColumn notes = new PdfColumn(pdf, 54, 110, 230, 9, 5);
              for (int i = 0; i < 8; i++) notes.item((i + 1) + ".", NOTES[i]);
              PdfColumn schedule = new PdfColumn(pdf, 330, 110, 250, 9, 7);
              schedule.row(xs, "TAG", "TILE", "SIZE", "JOINT");
              schedule.row(xs, "GT-1", "CAST GLASS, LOOSE", "4X4", "1/8");
              schedule.row(xs, "GT-2", "MOSAIC, PAPER FACED SHEETS", "1X1", "1/16");
              schedule.row(xs, "GT-3", "FUSED GLASS", "2X8", "1/8");
            });

    assertThat(tables(document)).hasSize(1);
    assertThat(rows(tables(document).get(0)))
        .containsExactly(
            "TAG|TILE|SIZE|JOINT",
            "GT-1|CAST GLASS, LOOSE|4X4|1/8",
            "GT-2|MOSAIC, PAPER FACED SHEETS|1X1|1/16",
            "GT-3|FUSED GLASS|2X8|1/8");
    assertThat(texts(document))
        .containsExactly(
            "1. " + NOTES[0],
            "2. " + NOTES[1],
            "3. " + NOTES[2],
            "4. " + NOTES[3],
            "5. " + NOTES[4],
            "6. " + NOTES[5],
            "7. " + NOTES[6],
            "8. " + NOTES[7]);
  }

  @Test
  void aLegendBesideNotesStandsApartFromThem() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page().text(PdfSheet.BOLD, 9, 54, 96, "LEGEND");
              for (int i = 1; i <= 6; i++) {
                pdf.text(54, 100 + 12 * i, "GT-" + i)
                    .text(100, 100 + 12 * i, "GLASS MOSAIC TILE, COLOUR NO. " + i);
              }
              PdfColumn notes = new PdfColumn(pdf, 318, 112, 240, 8, 5);
              for (int i = 0; i < 6; i++) notes.item("" + (i + 1), NOTES[i]);
            });

    assertThat(tables(document)).hasSize(1);
    assertThat(rows(tables(document).get(0)))
        .hasSize(6)
        .startsWith("GT-1|GLASS MOSAIC TILE, COLOUR NO. 1")
        .endsWith("GT-6|GLASS MOSAIC TILE, COLOUR NO. 6");
    assertThat(texts(document))
        .containsExactly(
            "LEGEND",
            "1 " + NOTES[0],
            "2 " + NOTES[1],
            "3 " + NOTES[2],
            "4 " + NOTES[3],
            "5 " + NOTES[4],
            "6 " + NOTES[5]);
  }

  @Test
  void aScheduleOfTenColumnsWithWrappedCellsIsATable() throws IOException {
    float[] xs = {48, 90, 210, 270, 320, 440, 560, 700, 820, 980};
    String[][] rows = {
      {
        "MARK",
        "MATERIAL",
        "SIZE",
        "THK",
        "FINISH",
        "MOUNTING",
        "SETTING MATERIAL",
        "GROUT",
        "LOCATION",
        "REMARKS"
      },
      {
        "GT-1",
        "CAST GLASS, LOOSE",
        "4X4",
        "3/8",
        "MATTE, CLEAR",
        "LOOSE",
        "LATEX-MODIFIED MORTAR, WHITE, ANSI A118.15",
        "ANSI A118.7, UNSANDED",
        "COMMONS, NORTH WALL ONLY, ABOVE THE BENCH",
        "PATCH THE WALL WITH ONE WHITE COMPOUND FIRST. SEE THE NOTES ON A-501."
      },
      {
        "GT-2",
        "GLASS MOSAIC, TRANSLUCENT",
        "1X1",
        "1/4",
        "POLISHED",
        "PAPER FACED SHEETS",
        "ANSI A118.15",
        "ANSI A118.7",
        "SHOWERS",
        "MEMBRANE BEHIND ALL WALLS."
      },
      {
        "GT-3",
        "FUSED GLASS",
        "2X8",
        "5/16",
        "POLISHED WITH A FACTORY EDGE",
        "MESH BACKED",
        "EPOXY, ANSI A118.3",
        "EPOXY, ANSI A118.3",
        "TOILET ROOMS AT 48 IN. BAND",
        "NO TILE BEHIND MIRRORS."
      },
      {
        "CT-1",
        "GLAZED CERAMIC",
        "4X4",
        "1/4",
        "BRIGHT",
        "DOT MOUNTED",
        "ANSI A136.1 TYPE I",
        "ANSI A118.6",
        "TOILET ROOMS, TO 6 FT",
        "BULLNOSE AT ALL OUTSIDE CORNERS."
      }
    };
    for (float space : new float[] {5, 0}) {
      Document document =
          read(
              pdf -> {
                pdf.page(TABLOID);
                PdfColumn schedule = new PdfColumn(pdf, 48, 110, 1120, 8, space);
                for (String[] row : rows) schedule.row(xs, row);
              });

      assertThat(texts(document)).isEmpty();
      assertThat(rows(tables(document).get(0)))
          .as("%s points between rows", space)
          .containsExactlyElementsOf(Stream.of(rows).map(r -> String.join("|", r)).toList());
    }
  }

  @Test
  void marksAndDescriptionsThatWrapAreATable() throws IOException {
    float[] xs = {60, 120};
    Document document =
        read(
            pdf -> {
              pdf.page();
              PdfColumn schedule = new PdfColumn(pdf, 60, 110, 300, 9, 5);
              for (int i = 0; i < 6; i++) schedule.row(xs, "GT-" + (i + 1), NOTES[i]);
            });

    assertThat(texts(document)).isEmpty();
    assertThat(rows(tables(document).get(0)))
        .hasSize(6)
        .startsWith("GT-1|" + NOTES[0])
        .endsWith("GT-6|" + NOTES[5]);
  }

  @Test
  void twoColumnsOfLongCellsThatBeginTogetherAreATable() throws IOException {
    float[] xs = {54, 318};
    Document document =
        read(
            pdf -> {
              pdf.page();
              PdfColumn table = new PdfColumn(pdf, 54, 110, 500, 9, 7);
              table.row(xs, "REQUIREMENT", "ANSWER OF THE MAKER");
              for (int i = 0; i < 5; i++) table.row(xs, NOTES[i], NOTES[9 - i]);
            });

    assertThat(texts(document)).isEmpty();
    assertThat(rows(tables(document).get(0)))
        .containsExactly(
            "REQUIREMENT|ANSWER OF THE MAKER",
            NOTES[0] + "|" + NOTES[9],
            NOTES[1] + "|" + NOTES[8],
            NOTES[2] + "|" + NOTES[7],
            NOTES[3] + "|" + NOTES[6],
            NOTES[4] + "|" + NOTES[5]);
  }

  @Test
  void aScheduleInEvenLinesWithSomeWrappedCellsIsATable() throws IOException {
    String[][] rows = {
      {"MK", "FINISH", "ROOM OR FACE", "NOTES"},
      {"CT1", "Ceramic tile, glazed, 4 by 4", "103, 104, 106", "-"},
      {"CT2", "Ceramic mosaic, unglazed, 2 by 2", "103, 104", "-"},
      {"GT1", "Glass tile", "101 Hall, north wall", "Interior, dry, no direct sun at noon"},
      {"GT2", "Glass tile", "108, 109 Showers, walls", "Interior, wet"},
      {"GT3", "Glass tile", "108, 109 Showers, floors", "Interior, wet, slab on grade, walked on"},
      {"GT4", "Glass tile", "Entry pylon, all faces", "Exterior, freezing winters, full sun"},
      {"GU1", "Glass unit masonry, 8 by 8", "Stair 2", "-"},
      {"GL4", "Insulating glazing, low-e", "Storefront", "-"},
      {"SV1", "Sheet vinyl, glass-fiber backed", "105 Training", "-"}
    };
    float[] xs = {54, 100, 270, 400};
    Document document =
        read(
            pdf -> {
              pdf.page();
              PdfColumn table = new PdfColumn(pdf, 54, 110, 460, 9, 0);
              for (String[] row : rows) table.row(xs, row);
            });

    assertThat(texts(document)).isEmpty();
    assertThat(rows(tables(document).get(0)))
        .containsExactlyElementsOf(Stream.of(rows).map(r -> String.join("|", r)).toList());
  }

  @Test
  void cellsThatAreCentredAgainstEachOtherAreNotColumnsOfText() {
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      double y = 100 + 36 * i;
      lines.add(
          line(y, words("Glass mosaic tile of series " + i + ", set in the mortar that", 130)));
      lines.add(line(y + 6, words("GT-" + i, 54), words("ANSI A118.15", 460)));
      lines.add(line(y + 12, words("the schedule names for the walls of room " + i, 130)));
    }

    assertThat(new PageColumns(List.of(), new ArrayList<>()).of(lines)).hasSize(1);
  }

  private static Line line(double baseline, Line.Segment... segments) {
    return new Line(
        Stream.of(segments)
            .map(s -> new Line.Segment(s.text(), s.x0(), s.x1(), baseline, 10, false))
            .toList(),
        baseline);
  }

  private static Line.Segment words(String text, double x) {
    return new Line.Segment(text, x, x + 5 * text.length(), 0, 10, false);
  }

  @Test
  void aPageWithFewLinesHasTheColumnsOfThePageBefore() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              new PdfColumn(pdf, 54, 110, 240, 9, 5)
                  .item("A.", CLAUSES[0])
                  .item("B.", CLAUSES[1])
                  .item("C.", CLAUSES[2]);
              new PdfColumn(pdf, 318, 110, 240, 9, 5).item("D.", CLAUSES[4]).item("E.", CLAUSES[2]);
              pdf.page();
              new PdfColumn(pdf, 54, 110, 240, 9, 5).item("F.", CLAUSES[1]);
              new PdfColumn(pdf, 318, 110, 240, 9, 5).item("G.", CLAUSES[4]);
            });

    assertThat(texts(document)).endsWith("F. " + CLAUSES[1], "G. " + CLAUSES[4]);
  }

  @Test
  void aNumberedScheduleUnderItsHeadingsIsATable() throws IOException {
    float[] xs = {60, 110};
    Document document =
        read(
            pdf -> {
              pdf.page();
              PdfColumn schedule = new PdfColumn(pdf, 60, 110, 300, 9, 5);
              schedule.row(xs, "NO.", "DESCRIPTION");
              for (int i = 0; i < 4; i++) schedule.row(xs, "" + (i + 1), NOTES[i + 2]);
            });

    assertThat(texts(document)).isEmpty();
    assertThat(rows(tables(document).get(0)))
        .hasSize(5)
        .startsWith("NO.|DESCRIPTION", "1|" + NOTES[2])
        .endsWith("4|" + NOTES[5]);
  }

  @Test
  void addressesBesideEachOtherDoNotCutTheNotesBelow() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page()
                  .text(54, 80, "Linden Vale School District")
                  .text(330, 80, "Quarrystone Architects")
                  .text(54, 92, "14 Orchard Row")
                  .text(330, 92, "2 Mill Lane")
                  .text(54, 104, "Linden Vale")
                  .text(330, 104, "Upper Farrow");
              PdfColumn left = new PdfColumn(pdf, 54, 170, 240, 9, 5);
              for (int i = 0; i < 4; i++) left.item((i + 1) + ".", NOTES[i]);
              PdfColumn right = new PdfColumn(pdf, 318, 170, 240, 9, 5);
              for (int i = 4; i < 10; i++) right.item((i + 1) + ".", NOTES[i]);
            });

    assertThat(texts(document))
        .containsSubsequence(
            "1. " + NOTES[0], "4. " + NOTES[3], "5. " + NOTES[4], "10. " + NOTES[9]);
  }

  @Test
  void aScheduleBelowNotesInColumnsStaysWhole() throws IOException {
    float[] xs = {54, 110, 318, 450};
    Document document =
        read(
            pdf -> {
              pdf.page();
              PdfColumn left = new PdfColumn(pdf, 54, 100, 240, 9, 5);
              for (int i = 0; i < 4; i++) left.item((i + 1) + ".", NOTES[i]);
              PdfColumn right = new PdfColumn(pdf, 318, 100, 240, 9, 5);
              for (int i = 4; i < 9; i++) right.item((i + 1) + ".", NOTES[i]);
              PdfColumn schedule = new PdfColumn(pdf, 54, 340, 500, 9, 5);
              schedule.row(xs, "MARK", "TILE", "MORTAR", "JOINT");
              for (int i = 1; i < 7; i++) {
                schedule.row(xs, "GT-" + i, "GLASS MOSAIC NO. " + i, "ANSI A118.15", "1/8 IN.");
              }
            });

    assertThat(tables(document)).hasSize(1);
    assertThat(rows(tables(document).get(0)))
        .hasSize(7)
        .startsWith("MARK|TILE|MORTAR|JOINT", "GT-1|GLASS MOSAIC NO. 1|ANSI A118.15|1/8 IN.");
    assertThat(texts(document)).hasSize(9).startsWith("1. " + NOTES[0]).endsWith("9. " + NOTES[8]);
  }

  @Test
  void columnsWithinAFrameAreReadOneAfterTheOther() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page(TABLOID).grid(new float[] {700, 1190}, new float[] {80, 300});
              PdfColumn left = new PdfColumn(pdf, 710, 110, 220, 9, 5);
              for (int i = 0; i < 3; i++) left.item("" + (char) ('A' + i), NOTES[i]);
              PdfColumn right = new PdfColumn(pdf, 960, 110, 220, 9, 5);
              for (int i = 3; i < 6; i++) right.item("" + (char) ('A' + i), NOTES[i]);
            });

    assertThat(texts(document))
        .containsExactly(
            "A " + NOTES[0],
            "B " + NOTES[1],
            "C " + NOTES[2],
            "D " + NOTES[3],
            "E " + NOTES[4],
            "F " + NOTES[5]);
  }

  @Test
  void aWordInCapitalsSplitAtTheEndOfALineIsMadeWhole() throws IOException {
    Document document =
        read(
            pdf ->
                pdf.page()
                    .text(54, 100, "A")
                    .text(80, 100, "MOVEMENT JOINTS EACH WAY, ALSO AT PERIME-")
                    .text(80, 112, "TERS AND EVERY CHANGE OF PLANE. WATER-")
                    .text(80, 124, "RESISTANT BACKING BEHIND THEM.")
                    .text(54, 140, "B")
                    .text(80, 140, "CUT WET AND CLEAN UP SLIVERS."));

    assertThat(texts(document))
        .containsExactly(
            "A MOVEMENT JOINTS EACH WAY, ALSO AT PERIMETERS AND EVERY CHANGE OF PLANE."
                + " WATER-RESISTANT BACKING BEHIND THEM.",
            "B CUT WET AND CLEAN UP SLIVERS.");
  }

  @Test
  void aLegendLevelWithTheFirstOfTheNotesStandsApartFromThem() throws IOException {
    float[] xs = {330, 380};
    Document document =
        read(
            pdf -> {
              pdf.page();
              PdfColumn notes = new PdfColumn(pdf, 40, 60, 260, 8, 3).heading("TILE NOTES");
              for (int i = 0; i < 8; i++) notes.item((char) ('A' + i) + ".", NOTES[9 - i]);
              PdfColumn legend = new PdfColumn(pdf, 330, 60, 260, 8, 3).heading("LEGEND");
              legend.row(xs, "GT-1", "GLASS MOSAIC").row(xs, "GT-2", "CAST GLASS");
              legend.row(xs, "CT-1", "CERAMIC").row(xs, "PT-1", "PAINT");
            });

    assertThat(rows(tables(document).get(0)))
        .endsWith("GT-1|GLASS MOSAIC", "GT-2|CAST GLASS", "CT-1|CERAMIC", "PT-1|PAINT");
    assertThat(texts(document)).startsWith("TILE NOTES", "A. " + NOTES[9], "B. " + NOTES[8]);
  }

  @Test
  void articlesInTwoColumnsWithLevelLinesAreColumns() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              new PdfColumn(pdf, 54, 60, 240, 9, 0)
                  .heading("1.1 SUMMARY")
                  .paragraph(CLAUSES[0])
                  .paragraph("Submit samples.")
                  .heading("1.2 SUBMITTALS")
                  .paragraph(CLAUSES[1]);
              new PdfColumn(pdf, 318, 60, 240, 9, 0)
                  .heading("1.3 DELIVERY")
                  .paragraph("Keep the boxes dry.")
                  .paragraph("Store on pallets.")
                  .heading("1.4 CONDITIONS")
                  .paragraph(CLAUSES[2]);
            });

    assertThat(texts(document))
        .containsExactly(
            "1.1 SUMMARY",
            CLAUSES[0],
            "Submit samples.",
            "1.2 SUBMITTALS",
            CLAUSES[1],
            "1.3 DELIVERY",
            "Keep the boxes dry.",
            "Store on pallets.",
            "1.4 CONDITIONS",
            CLAUSES[2]);
  }

  @Test
  void titlesOfDrawingsBesideEachOtherAreReadEachByItself() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page(TABLOID);
              PdfColumn left = new PdfColumn(pdf, 48, 108, 350, 8, 4);
              for (int i = 0; i < 6; i++) left.item("" + (i + 1), KEYNOTES[i]);
              PdfColumn right = new PdfColumn(pdf, 437, 108, 350, 8, 4);
              for (int i = 0; i < 6; i++) right.item("" + (char) ('A' + i), NOTES[i]);
              pdf.text(PdfSheet.BOLD, 8, 60, 700, "1 / A-501  SHOWER, EAST")
                  .text(PdfSheet.BOLD, 8, 380, 700, "2 / A-501  TOILET, NORTH")
                  .text(PdfSheet.BOLD, 8, 700, 700, "3 / A-501  COMMONS, NORTH");
            });

    assertThat(tables(document)).isEmpty();
    assertThat(texts(document))
        .hasSize(15)
        .endsWith("1 / A-501 SHOWER, EAST", "2 / A-501 TOILET, NORTH", "3 / A-501 COMMONS, NORTH");
  }

  @Test
  void aRuledTableAcrossTheColumnsPartsThem() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              new PdfColumn(pdf, 54, 110, 240, 9, 5).item("A.", CLAUSES[0]).item("B.", CLAUSES[1]);
              new PdfColumn(pdf, 318, 110, 240, 9, 5).item("C.", CLAUSES[2]).item("D.", CLAUSES[3]);
              pdf.grid(new float[] {54, 200, 558}, new float[] {240, 260, 280})
                  .text(60, 253, "Tag")
                  .text(206, 253, "Mortar")
                  .text(60, 273, "GT-1")
                  .text(206, 273, "ANSI A118.15");
              new PdfColumn(pdf, 54, 310, 240, 9, 5).item("E.", CLAUSES[2]).item("F.", CLAUSES[4]);
              new PdfColumn(pdf, 318, 310, 240, 9, 5).item("G.", CLAUSES[4]).item("H.", CLAUSES[0]);
            });

    assertThat(document.blocks().get(4)).isInstanceOf(Table.class);
    assertThat(texts(document))
        .containsExactly(
            "A. " + CLAUSES[0],
            "B. " + CLAUSES[1],
            "C. " + CLAUSES[2],
            "D. " + CLAUSES[3],
            "E. " + CLAUSES[2],
            "F. " + CLAUSES[4],
            "G. " + CLAUSES[4],
            "H. " + CLAUSES[0]);
  }

  @Test
  void marksNearTheirWordsHangAsWell() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              PdfColumn notes = new PdfColumn(pdf, 72, 110, 300, 9, 0);
              for (int i = 0; i < 10; i++) notes.item("" + (i + 1), i < 9 ? 10 : 14, NOTES[i]);
            });

    assertThat(texts(document)).startsWith("1 " + NOTES[0], "2 " + NOTES[1], "3 " + NOTES[2]);
    assertThat(texts(document)).hasSize(10).endsWith("10 " + NOTES[9]);
  }

  @Test
  void figuresThatBeginLinesOfRunningTextAreNoMarks() throws IOException {
    Document document =
        read(
            pdf ->
                pdf.page()
                    .text(
                        54,
                        100,
                        "Wait 21 days before the pool is filled, and keep it so for at least")
                    .text(
                        54,
                        112,
                        "2 days. Glass tile is set in beds of no more than 3 mm, in areas of")
                    .text(
                        54,
                        124,
                        "3 square metres, and grouted when the bed has stood for as many as")
                    .text(54, 136, "4 days, or 5 where it is cold."));

    assertThat(texts(document)).hasSize(1);
  }

  interface Drawing {
    void on(PdfSheet pdf) throws IOException;
  }

  /** The document; every letter that was written is in it once. */
  private Document read(Drawing drawing) throws IOException {
    Path file = folder.resolve("test.pdf");
    String written;
    try (PdfSheet pdf = new PdfSheet()) {
      drawing.on(pdf);
      pdf.save(file);
      written = pdf.words();
    }
    Document document = ReadAll.of(file).get(0);
    StringBuilder read = new StringBuilder(String.join(" ", texts(document)));
    for (Table table : tables(document)) {
      for (Table.Row row : table.rows()) {
        for (Table.Cell cell : row.cells()) if (!cell.continued()) read.append(cell.text());
      }
    }
    assertThat(letters(read.toString())).isEqualTo(letters(written));
    assertThat(document.blocks()).allMatch(b -> b.origin().page() > 0);
    return document;
  }

  private static String letters(String words) {
    return words
        .chars()
        .filter(c -> !Character.isWhitespace(c) && c != '-')
        .sorted()
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  private static List<String> texts(Document document) {
    return document.blocks().stream()
        .filter(Paragraph.class::isInstance)
        .map(b -> ((Paragraph) b).text())
        .toList();
  }

  private static List<Table> tables(Document document) {
    List<Block> tables = document.blocks().stream().filter(Table.class::isInstance).toList();
    return tables.stream().map(Table.class::cast).toList();
  }

  private static List<String> rows(Table table) {
    return table.rows().stream()
        .map(r -> String.join("|", r.cells().stream().map(Table.Cell::text).toList()))
        .toList();
  }
}
