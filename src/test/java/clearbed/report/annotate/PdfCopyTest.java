package clearbed.report.annotate;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.report.annotate.note.Shortfall;
import clearbed.report.wording.Deferral;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationHighlight;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationText;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PdfCopyTest {
  @TempDir Path folder;
  private Desk desk;

  @BeforeEach
  void desk() throws IOException {
    desk = Desk.in(folder);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 90, 180, 270})
  void the_words_are_highlighted_however_the_page_is_turned(int rotation) throws Exception {
    write(rotation, false);
    var result =
        annotate(finding(Desk.page("s.pdf", 1, "Glass tile shall be set in white mortar.")));
    assertThat(result.failures()).isEmpty();
    assertThat(result.shortfalls()).isEmpty();
    List<PDAnnotation> marks = marks();
    assertThat(marks).hasSize(2);
    // Drawn at 70, 700 in 12 points: two lines, 14 apart, the page's corner at 20, 30.
    float[] quads = ((PDAnnotationHighlight) marks.get(0)).getQuadPoints();
    assertThat(quads).hasSize(16);
    assertThat(quads[0]).isBetween(69f, 71f);
    assertThat(quads[1]).isBetween(708f, 712f);
    assertThat(quads[8]).isBetween(69f, 71f);
    assertThat(quads[13]).isBetween(681f, 686f);
    assertThat(marks.get(1)).isInstanceOf(PDAnnotationText.class);
    assertThat(marks.get(1).getContents())
        .isEqualTo(
            "ERROR mortar (GT-1)\nThe mortar of GT-1 is not stated.\n"
                + "Question: Which mortar has GT-1?\n"
                + Deferral.LINE);
    assertThat(marks.get(1).getRectangle().getLowerLeftX()).isBetween(20f, 40f);
  }

  @Test
  void of_like_words_those_beside_the_known_ones_are_marked() throws Exception {
    write(0, false);
    Finding second = finding(row("A3", "GT-1"));
    Finding mate = Desk.finding("joint", Level.NOTE, row("B3", "1/16"));
    annotate(second, mate);
    assertThat(bottom()).isBetween(495f, 500f);
  }

  @Test
  void like_words_that_nothing_tells_apart_are_reported() throws Exception {
    write(0, false);
    var result = annotate(finding(row("A3", "GT-1")));
    assertThat(result.shortfalls())
        .extracting(Shortfall::reason)
        .containsExactly("its words stand on the page more than once; the first are marked");
  }

  @Test
  void a_figure_whose_unit_stands_in_the_heading_is_found_without_it() throws Exception {
    write(0, false);
    Finding spacing = finding(row("B4", "16 ft"));
    Finding mate = Desk.finding("joint", Level.NOTE, row("A4", "GT-2"));
    var result = annotate(spacing, mate);
    assertThat(result.shortfalls()).isEmpty();
    assertThat(marks().stream().filter(PDAnnotationHighlight.class::isInstance).count())
        .isEqualTo(2);
    assertThat(bottom()).isBetween(395f, 400f);
  }

  @Test
  void many_findings_at_the_same_words_share_one_note() throws Exception {
    write(0, false);
    Finding[] many = new Finding[25];
    for (int i = 0; i < many.length; i++) {
      many[i] = Desk.finding("check-" + i, Level.NOTE, Desk.page("s.pdf", 1, "GT-2"));
    }
    annotate(many);
    assertThat(marks()).hasSize(2);
    PDAnnotationText note = (PDAnnotationText) marks().get(1);
    assertThat(note.getSubject()).isEqualTo("25 findings");
    for (Finding finding : many) assertThat(note.getContents()).contains(finding.question());
  }

  @Test
  void words_inside_a_longer_word_are_not_taken_for_them() throws Exception {
    write(0, false);
    annotate(finding(Desk.page("s.pdf", 1, "GT-2")));
    // GT-20 stands above GT-2.
    assertThat(bottom()).isBetween(395f, 400f);
  }

  @Test
  void words_not_found_are_noted_in_the_corner_and_reported() throws Exception {
    write(0, false);
    var result = annotate(finding(Desk.page("s.pdf", 1, "terracotta jardiniere")));
    assertThat(result.shortfalls())
        .singleElement()
        .satisfies(s -> assertThat(s.reason()).contains("not found on the page"));
    assertThat(marks()).singleElement().isInstanceOf(PDAnnotationText.class);
  }

  @Test
  void an_encrypted_file_is_left_alone_and_its_findings_are_listed() throws Exception {
    write(0, true);
    var result = annotate(finding(Desk.page("s.pdf", 1, "GT-2")));
    assertThat(result.failures())
        .containsExactly(
            "s.pdf: no marked copy: the PDF is encrypted against changes; its findings are listed"
                + " beside");
    assertThat(desk.copies().resolve("s.pdf")).doesNotExist();
    assertThat(desk.copies().resolve("s.pdf.findings.txt")).content().contains("ERROR mortar");
  }

  @Test
  void the_same_report_gives_the_same_bytes() throws Exception {
    write(0, false);
    String before = Desk.digest(desk.sources().resolve("s.pdf"));
    annotate(finding(Desk.page("s.pdf", 1, "GT-2")));
    String first = Desk.digest(desk.copies().resolve("s.pdf"));
    annotate(finding(Desk.page("s.pdf", 1, "GT-2")));
    assertThat(Desk.digest(desk.copies().resolve("s.pdf"))).isEqualTo(first);
    assertThat(Desk.digest(desk.sources().resolve("s.pdf"))).isEqualTo(before);
  }

  @Test
  void what_was_signed_stays_as_it_was_under_the_marks() throws Exception {
    write(0, false);
    Path source = desk.sources().resolve("s.pdf");
    byte[] signed = signed(source);
    Files.write(source, signed);
    var result = annotate(finding(Desk.page("s.pdf", 1, "GT-2")));
    assertThat(result.failures()).isEmpty();
    assertThat(result.shortfalls())
        .singleElement()
        .satisfies(s -> assertThat(s.reason()).contains("signed"));
    assertThat(Files.readAllBytes(desk.copies().resolve("s.pdf"))).startsWith(signed);
    assertThat(marks()).hasAtLeastOneElementOfType(PDAnnotationHighlight.class);
  }

  private static byte[] signed(Path file) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
      PDSignature signature = new PDSignature();
      signature.setFilter(PDSignature.FILTER_ADOBE_PPKLITE);
      signature.setSubFilter(PDSignature.SUBFILTER_ADBE_PKCS7_DETACHED);
      pdf.addSignature(signature, content -> new byte[] {1, 2, 3});
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      pdf.saveIncremental(out);
      return out.toByteArray();
    }
  }

  /** Lower edge of the first highlight. */
  private float bottom() throws IOException {
    return marks().stream()
        .filter(PDAnnotationHighlight.class::isInstance)
        .map(mark -> ((PDAnnotationHighlight) mark).getQuadPoints()[5])
        .findFirst()
        .orElseThrow();
  }

  private static Finding finding(Origin origin) {
    return Desk.finding("mortar", Level.ERROR, origin);
  }

  private static Origin row(String cell, String text) {
    return new Origin("s.pdf", null, cell, 1, 2, null, text);
  }

  private AnnotatedCopies.WrittenCopies annotate(Finding... findings) {
    return desk.annotate(Desk.report("s.pdf", "pdf", findings));
  }

  private List<PDAnnotation> marks() throws IOException {
    try (PDDocument copy = Loader.loadPDF(desk.copies().resolve("s.pdf").toFile())) {
      return copy.getPage(0).getAnnotations();
    }
  }

  private void write(int rotation, boolean encrypted) throws IOException {
    try (PDDocument pdf = new PDDocument()) {
      PDPage page = new PDPage(new PDRectangle(20, 30, 612, 792));
      page.setRotation(rotation);
      pdf.addPage(page);
      try (PDPageContentStream out = new PDPageContentStream(pdf, page)) {
        line(out, 70, 700, "Glass tile shall be set in");
        line(out, 70, 686, "white mortar.");
        line(out, 70, 600, "GT-1 is not used here.");
        line(out, 70, 500, "GT-1");
        line(out, 200, 500, "1/16");
        line(out, 70, 450, "GT-20");
        line(out, 70, 400, "GT-2");
        line(out, 200, 470, "Spacing (ft)");
        line(out, 200, 450, "16");
        line(out, 200, 400, "16");
      }
      if (encrypted) {
        AccessPermission permission = new AccessPermission();
        permission.setCanModifyAnnotations(false);
        pdf.protect(new StandardProtectionPolicy("owner", "", permission));
      }
      pdf.save(desk.sources().resolve("s.pdf").toFile());
    }
  }

  private static void line(PDPageContentStream out, float x, float y, String words)
      throws IOException {
    out.beginText();
    out.setFont(new PDType1Font(Standard14Fonts.FontName.HELVETICA), 12);
    out.newLineAtOffset(x, y);
    out.showText(words);
    out.endText();
  }
}
