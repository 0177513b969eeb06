package clearbed.read.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Paragraph.Region;
import clearbed.model.document.Table;
import clearbed.read.ReadAll;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PdfReaderTest {
  @TempDir Path folder;

  @Test
  void linesAreJoinedIntoParagraphsThatKnowTheirPage() throws IOException {
    Document document =
        read(
            pdf ->
                pdf.page()
                    .text(PdfSheet.BOLD, 12, 72, 100, "PART 2 - PRODUCTS")
                    .text(72, 130, "2.1")
                    .text(108, 130, "SETTING MATERIALS")
                    .text(90, 150, "A.")
                    .text(
                        108,
                        150,
                        "Mortar: latex-modified thin-set mortar that meets ANSI A118.15, bond of more than")
                    .text(
                        108,
                        162,
                        "400 psi, 2.76 MPa, white where the tile is translucent, from one manu-")
                    .text(108, 174, "facturer.")
                    .text(90, 194, "B.")
                    .text(108, 194, "Grout: ANSI A118.7.")
                    .page()
                    .text(90, 100, "C.")
                    .text(108, 100, "Sealant: ASTM C920."));

    assertThat(document.status()).isEqualTo(Status.READ);
    assertThat(texts(document))
        .containsExactly(
            "PART 2 - PRODUCTS",
            "2.1 SETTING MATERIALS",
            "A. Mortar: latex-modified thin-set mortar that meets ANSI A118.15, bond of more than"
                + " 400 psi, 2.76 MPa, white where the tile is translucent, from one manufacturer.",
            "B. Grout: ANSI A118.7.",
            "C. Sealant: ASTM C920.");
    assertThat(document.blocks()).extracting(b -> b.origin().page()).containsExactly(1, 1, 1, 1, 2);
    assertThat(document.blocks())
        .extracting(b -> b.origin().paragraph())
        .containsExactly(1, 2, 3, 4, 5);
  }

  @Test
  void aPageThatIsListedAgainIsReadOnce() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page().text(72, 100, "Grout: ANSI A118.7.");
              pdf.pdf.addPage(pdf.pdf.getPage(0));
              pdf.pdf.addPage(pdf.pdf.getPage(0));
              pdf.page().text(72, 100, "Sealant: ASTM C920.");
            });

    assertThat(texts(document)).containsExactly("Grout: ANSI A118.7.", "Sealant: ASTM C920.");
    assertThat(document.blocks()).extracting(b -> b.origin().page()).containsExactly(1, 4);
    assertThat(document.status()).isEqualTo(Status.READ);
    assertThat(document.gaps())
        .extracting(Document.Gap::reason)
        .containsExactly("the same page stands in the file 2 times more; read once");
  }

  @Test
  void aRuledTableKeepsWrappedAndMergedCells() throws IOException {
    float[] xs = {72, 132, 252, 372, 540};
    Document document =
        read(
            pdf -> {
              pdf.page()
                  .text(72, 90, "The schedule below governs.")
                  .grid(xs, new float[] {120, 140, 170, 200})
                  .text(75, 133, "Tag")
                  .text(135, 133, "Tile")
                  .text(255, 133, "Mortar")
                  .text(375, 133, "Remarks")
                  .text(75, 152, "GT-1")
                  .text(135, 152, "Glass mosaic,")
                  .text(135, 164, "translucent")
                  .text(255, 158, "ANSI A118.15")
                  .text(75, 182, "GT-2")
                  .text(135, 182, "Fused glass")
                  .text(255, 182, "ANSI A118.4");
            });

    Table table = table(document);
    assertThat(rows(table))
        .containsExactly(
            "Tag|Tile|Mortar|Remarks",
            "GT-1|Glass mosaic, translucent|ANSI A118.15",
            "GT-2|Fused glass|ANSI A118.4");
    assertThat(table.origin(table.rows().get(1).at(2)).cell()).isEqualTo("C2");
    assertThat(table.origin(table.rows().get(1).at(2)).page()).isEqualTo(1);
    assertThat(texts(document)).containsExactly("The schedule below governs.");
  }

  @Test
  void aCellOverSeveralRowsStandsInEachOfThem() throws IOException {
    Document document =
        read(
            pdf ->
                pdf.page()
                    .line(72, 100, 400, 100)
                    .line(72, 120, 400, 120)
                    .line(172, 140, 400, 140)
                    .line(72, 160, 400, 160)
                    .line(72, 100, 72, 160)
                    .line(172, 100, 172, 160)
                    .line(280, 120, 280, 160)
                    .line(400, 100, 400, 160)
                    .text(75, 113, "Room")
                    .text(175, 113, "Glass tile and mortar")
                    .text(75, 143, "Steam room")
                    .text(175, 133, "GT-1")
                    .text(283, 133, "A118.15")
                    .text(175, 153, "GT-2")
                    .text(283, 153, "A118.4"));

    Table table = table(document);
    assertThat(rows(table))
        .containsExactly(
            "Room|Glass tile and mortar", "Steam room|GT-1|A118.15", "Steam room|GT-2|A118.4");
    assertThat(table.rows().get(0).at(2).text()).isEqualTo("Glass tile and mortar");
    assertThat(table.rows().get(2).at(0).continued()).isTrue();
    assertThat(table.origin(table.rows().get(2).at(0)).cell()).isEqualTo("A2");
  }

  @Test
  void aTableWithoutRulesIsFoundByItsColumnsAndRowsByTheFirst() throws IOException {
    Document document =
        read(
            pdf ->
                pdf.page()
                    .text(72, 90, "TILE SCHEDULE")
                    .text(72, 110, "Tag")
                    .text(130, 110, "Description")
                    .text(280, 110, "Mortar")
                    .text(400, 110, "Joint")
                    .text(72, 126, "GT-1")
                    .text(130, 126, "Cast glass tile,")
                    .text(280, 126, "ANSI A118.15")
                    .text(400, 126, "1/8 in")
                    .text(130, 137, "metallic back")
                    .text(72, 153, "GT-2")
                    .text(130, 153, "Glass mosaic")
                    .text(280, 153, "ANSI A118.4")
                    .text(400, 153, "1/16 in")
                    .text(72, 169, "CT-1")
                    .text(130, 169, "Porcelain")
                    .text(280, 169, "ANSI A118.1")
                    .text(400, 169, "3/16 in")
                    .text(
                        72,
                        200,
                        "All tile shall be set by the thin-bed method in the mortar that the schedule names for"));

    assertThat(rows(table(document)))
        .containsExactly(
            "Tag|Description|Mortar|Joint",
            "GT-1|Cast glass tile, metallic back|ANSI A118.15|1/8 in",
            "GT-2|Glass mosaic|ANSI A118.4|1/16 in",
            "CT-1|Porcelain|ANSI A118.1|3/16 in");
    assertThat(texts(document)).hasSize(2).first().isEqualTo("TILE SCHEDULE");
  }

  @Test
  void proseInTwoColumnsIsReadColumnByColumn() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              for (int i = 0; i < 12; i++) {
                pdf.text(
                    72,
                    100 + 12 * i,
                    "left words that fill the column " + (char) ('a' + i) + " of it");
                pdf.text(
                    320,
                    100 + 12 * i,
                    "right words that fill the column " + (char) ('a' + i) + " of it");
              }
            });

    assertThat(document.blocks()).allMatch(b -> b instanceof Paragraph);
    String all = String.join(" ", texts(document));
    assertThat(all.indexOf("left words that fill the column l"))
        .isPositive()
        .isLessThan(all.indexOf("right words"));
  }

  @Test
  void linesThatComeAgainAtTheEdgeAreHeadersAndFooters() throws IOException {
    Document document =
        read(
            pdf -> {
              for (int i = 1; i <= 3; i++) {
                pdf.page()
                    .text(72, 40, "GLASS TILING")
                    .text(72, 120, "Paragraph number " + i + " says something of its own.")
                    .text(280, 760, "093013 - " + i);
              }
            });

    assertThat(regions(document, Region.HEADER))
        .containsExactly("GLASS TILING", "GLASS TILING", "GLASS TILING");
    assertThat(regions(document, Region.FOOTER))
        .containsExactly("093013 - 1", "093013 - 2", "093013 - 3");
    assertThat(regions(document, Region.BODY)).hasSize(3);
  }

  @Test
  void aTitleBlockBesideTheNotesOfASheetIsReadByItself() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page().grid(new float[] {20, 450, 590}, new float[] {20, 770});
              for (int i = 1; i <= 8; i++) {
                pdf.text(40, 500 + 20 * i, i + ".")
                    .text(60, 500 + 20 * i, "Note number " + i + ".");
              }
              pdf.text(460, 600, "TILE NOTES").text(460, 660, "A-650");
            });

    assertThat(texts(document))
        .hasSize(10)
        .startsWith("1. Note number 1.", "2. Note number 2.")
        .endsWith("TILE NOTES", "A-650");
  }

  @Test
  void tablesWithTheSameWordsInTheFirstColumnKeepThemBoth() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              for (int y : new int[] {100, 300}) {
                pdf.grid(new float[] {72, 150, 300}, new float[] {y, y + 20, y + 40})
                    .text(75, y + 13, "Mark")
                    .text(155, y + 13, y == 100 ? "Tile" : "Backing")
                    .text(75, y + 33, "GT-1")
                    .text(155, y + 33, y == 100 ? "Cast glass" : "None");
              }
            });

    assertThat(document.blocks()).hasSize(2);
    assertThat(rows((Table) document.blocks().get(0)))
        .containsExactly("Mark|Tile", "GT-1|Cast glass");
    assertThat(rows((Table) document.blocks().get(1))).containsExactly("Mark|Backing", "GT-1|None");
  }

  @Test
  void aColumnFurtherRightDoesNotCutTheLinesOfNotes() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              for (int i = 0; i < 6; i++) {
                pdf.text(40, 100 + 40 * i, i + 1 + ". SUBMIT THE TILE MAKER'S WRITTEN")
                    .text(56, 112 + 40 * i, "ACCEPTANCE OF THE MEMBRANE.")
                    .text(480, 500 + 20 * i, "SHEET A-65" + i);
              }
            });

    assertThat(texts(document))
        .contains("3. SUBMIT THE TILE MAKER'S WRITTEN ACCEPTANCE OF THE MEMBRANE.");
  }

  @Test
  void aTableThatGoesOnOverThePageIsOneTable() throws IOException {
    Document document =
        read(
            pdf -> {
              for (int page = 0; page < 2; page++) {
                pdf.page().grid(new float[] {72, 150, 300}, new float[] {90, 110, 130, 150});
                pdf.text(75, 103, "Tag").text(153, 103, "Mortar");
                for (int r = 1; r <= 2; r++) {
                  pdf.text(75, 103 + 20 * r, "GT-" + (2 * page + r));
                  pdf.text(153, 103 + 20 * r, "A118.4");
                }
              }
            });

    Table table = table(document);
    assertThat(rows(table))
        .containsExactly("Tag|Mortar", "GT-1|A118.4", "GT-2|A118.4", "GT-3|A118.4", "GT-4|A118.4");
    assertThat(table.origin(table.rows().get(4).at(0)).page()).isEqualTo(2);
  }

  @Test
  void scannedPagesAreSaidToHaveNoText() throws IOException {
    Document scanned = read(pdf -> picture(pdf.page()));
    assertThat(scanned.status()).isEqualTo(Status.UNREADABLE);
    assertThat(scanned.reason()).contains("scanned").contains("text recognition");

    Document mixed =
        read(pdf -> picture(pdf.page().text(72, 100, "Words of a page with a text layer.").page()));
    assertThat(mixed.status()).isEqualTo(Status.PARTLY);
    assertThat(mixed.gaps()).singleElement().extracting(g -> g.origin().page()).isEqualTo(2);
  }

  @Test
  void aPasswordIsAskedToBeTakenOff() throws IOException {
    Path file = folder.resolve("locked.pdf");
    try (PdfSheet pdf = new PdfSheet()) {
      pdf.page().text(72, 100, "secret");
      pdf.pdf.protect(new StandardProtectionPolicy("owner", "user", new AccessPermission()));
      pdf.save(file);
    }

    Document document = ReadAll.of(file).get(0);

    assertThat(document.status()).isEqualTo(Status.UNREADABLE);
    assertThat(document.reason()).isEqualTo("password-protected; save a copy without a password");
  }

  private static void picture(PdfSheet pdf) throws IOException {
    PDDocument target = pdf.pdf;
    BufferedImage image = new BufferedImage(20, 20, BufferedImage.TYPE_INT_RGB);
    pdf.content().drawImage(LosslessFactory.createFromImage(target, image), 0, 0, 612, 792);
  }

  interface Drawing {
    void on(PdfSheet pdf) throws IOException;
  }

  private Document read(Drawing drawing) throws IOException {
    Path file = folder.resolve("test.pdf");
    try (PdfSheet pdf = new PdfSheet()) {
      drawing.on(pdf);
      pdf.save(file);
    }
    return ReadAll.of(file).get(0);
  }

  private static List<String> texts(Document document) {
    return document.blocks().stream()
        .filter(Paragraph.class::isInstance)
        .map(b -> ((Paragraph) b).text())
        .toList();
  }

  private static List<String> regions(Document document, Region region) {
    return document.blocks().stream()
        .filter(b -> b instanceof Paragraph p && p.region() == region)
        .map(b -> ((Paragraph) b).text())
        .toList();
  }

  private static Table table(Document document) {
    List<Block> tables = document.blocks().stream().filter(Table.class::isInstance).toList();
    assertThat(tables).hasSize(1);
    return (Table) tables.get(0);
  }

  private static List<String> rows(Table table) {
    return table.rows().stream()
        .map(r -> String.join("|", r.cells().stream().map(Table.Cell::text).toList()))
        .toList();
  }
}
