package clearbed.read.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.model.document.Document.GapFate;
import clearbed.model.document.Document.Status;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.read.ReadAll;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationStrikeout;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Lines through the words of a page, which are only lines and words to the file. */
class PdfStrikesTest {
  private static final String STRUCK = "struck through, not in force";

  @TempDir Path folder;

  @Test
  void words_with_a_line_or_a_thin_box_through_them_are_not_in_force() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page();
              struck(
                  pdf, 72, 100, "Mortar for glass tile: ", "ANSI A118.4", " ANSI A118.15, white.");
              pdf.text(72, 130, "Grout for all tile: ANSI A118.6,");
              pdf.text(72, 142, "unsanded, in grey.");
              pdf.content()
                  .addRect(72, 792 - 130 + 2.6f, width("Grout for all tile: ANSI A118.6,"), 0.7f);
              pdf.content().addRect(72, 792 - 142 + 2.6f, width("unsanded, in grey."), 0.7f);
              pdf.content().fill();
              pdf.text(72, 170, "Sealant: silicone, neutral cure.");
            });

    assertThat(texts(document))
        .containsExactly(
            "Mortar for glass tile: ANSI A118.15, white.", "Sealant: silicone, neutral cure.");
    assertThat(said(document))
        .containsExactly(
            "1 " + STRUCK + ": ANSI A118.4",
            "1 " + STRUCK + ": Grout for all tile: ANSI A118.6, unsanded, in grey.");
    assertThat(document.gaps()).allMatch(g -> g.fate() == GapFate.NOT_IN_FORCE);
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  @Test
  void a_remark_that_strikes_words_out_takes_them_out() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page().text(72, 100, "Bond of 300 psi or more.").text(72, 130, "Colour white.");
              PDAnnotationStrikeout note = new PDAnnotationStrikeout();
              float x0 = 72 + width("Bond of ");
              float x1 = x0 + width("300 psi");
              note.setQuadPoints(new float[] {x0, 700, x1, 700, x0, 690, x1, 690});
              note.setRectangle(new PDRectangle(x0, 690, x1 - x0, 10));
              note.setContents("Maker says more");
              PDAnnotationText sticky = new PDAnnotationText();
              sticky.setRectangle(new PDRectangle(10, 10, 20, 20));
              sticky.setContents("Verify with architect");
              pdf.pdf.getPage(0).setAnnotations(List.of(note, sticky));
            });

    assertThat(texts(document)).containsExactly("Bond of or more.", "Colour white.");
    String remark = "1 comment a person's comment, no requirement: ";
    assertThat(said(document))
        .containsExactly(
            "1 " + STRUCK + ": 300 psi",
            remark + "Maker says more",
            remark + "Verify with architect");
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  @Test
  void one_line_through_a_row_of_a_table_strikes_the_row() throws IOException {
    float[] xs = {72, 132, 252, 372};
    Document document =
        read(
            pdf -> {
              pdf.page().grid(xs, new float[] {120, 140, 160, 180});
              row(pdf, 133, "Tag", "Tile", "Mortar");
              row(pdf, 153, "GT-1", "Glass mosaic", "ANSI A118.15");
              row(pdf, 173, "GT-2", "Cast glass", "A118.4");
              pdf.line(72, 170, 372, 170);
            });

    Table table = (Table) document.blocks().get(0);
    assertThat(rows(table)).containsExactly("Tag|Tile|Mortar", "GT-1|Glass mosaic|ANSI A118.15");
    assertThat(said(document)).containsExactly("1 " + STRUCK + ": GT-2 Cast glass A118.4");
  }

  @Test
  void underlines_borders_and_lines_that_go_far_beyond_strike_nothing() throws IOException {
    Document document =
        read(
            pdf -> {
              pdf.page().text(72, 100, "Underlined words stay.");
              pdf.line(72, 101.5f, 72 + width("Underlined words stay."), 101.5f);
              pdf.text(72, 140, "Over a line across the page.");
              pdf.line(20, 137, 590, 137);
              // The border of two rows ends at the cell that stands over both.
              pdf.line(72, 200, 300, 200).line(72, 240, 300, 240);
              pdf.line(72, 200, 72, 240).line(150, 200, 150, 240).line(300, 200, 300, 240);
              pdf.line(72, 220, 300, 220);
              pdf.text(75, 223, "Both").text(155, 213, "GT-1").text(155, 233, "GT-2");
            });

    assertThat(String.join(" ", all(document)))
        .contains("Underlined words stay.", "Over a line across the page.", "GT-1", "GT-2");
    assertThat(document.gaps()).isEmpty();
  }

  @Test
  void margins_that_come_again_are_said_to_be_passed_over() throws IOException {
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

    assertThat(said(document))
        .containsExactly("1 header a page header: no requirement by itself: GLASS TILING");
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  private static void row(PdfSheet pdf, float y, String... words) throws IOException {
    float x = 75;
    for (String word : words) {
      pdf.text(x, y, word);
      x = x < 100 ? 135 : x + 120;
    }
  }

  /** The middle words struck through by a line of their length. */
  private static void struck(PdfSheet pdf, float x, float y, String... words) throws IOException {
    pdf.text(x, y, String.join("", words));
    float from = x + width(words[0]);
    pdf.line(from, y - 3, from + width(words[1]), y - 3);
  }

  private static float width(String words) throws IOException {
    PDFont font = PdfSheet.PLAIN;
    return font.getStringWidth(words) / 1000 * 10;
  }

  private interface Drawing {
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

  private static List<String> all(Document document) {
    return document.blocks().stream().map(Object::toString).toList();
  }

  private static List<String> rows(Table table) {
    return table.rows().stream()
        .map(r -> String.join("|", r.cells().stream().map(Table.Cell::text).toList()))
        .toList();
  }

  private static List<String> said(Document document) {
    return document.gaps().stream()
        .map(
            g ->
                g.origin().page()
                    + " "
                    + (g.origin().part() == null ? "" : g.origin().part() + " ")
                    + g.reason()
                    + ": "
                    + g.origin().text())
        .toList();
  }
}
