package clearbed.report.annotate;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.report.annotate.note.Shortfall;
import clearbed.report.wording.Deferral;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTRunTrackChange;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

class WordCopyTest {
  @TempDir Path folder;
  private Desk desk;

  @BeforeEach
  void desk() throws IOException {
    desk = Desk.in(folder);
  }

  @Test
  void the_comment_spans_the_words_of_the_finding() throws Exception {
    write(false);
    var result =
        desk.annotate(
            Desk.report(
                "s.docx",
                "docx",
                Desk.finding("mortar", Level.ERROR, Desk.paragraph("s.docx", 3, "White mortar"))));
    assertThat(result.failures()).isEmpty();
    assertThat(result.shortfalls()).isEmpty();
    Path copy = desk.copies().resolve("s.docx");
    List<Element> comments = Desk.elements(copy, "word/comments.xml", "comment");
    assertThat(comments).hasSize(1);
    assertThat(comments.get(0).getTextContent())
        .isEqualTo(
            "ERROR mortar (GT-1)"
                + "The mortar of GT-1 is not stated."
                + "Question: Which mortar has GT-1?"
                + Deferral.LINE);
    assertThat(attribute(comments.get(0), "author")).isEqualTo("Clearbed");
    assertThat(covered(copy, attribute(comments.get(0), "id"))).isEqualTo("White mortar");
    assertThat(Desk.elements(copy, "word/document.xml", "commentReference")).hasSize(1);
  }

  @Test
  void a_table_cell_takes_its_comment_itself() throws Exception {
    write(false);
    Origin cell = new Origin("s.docx", null, "B2", null, 4, null, "A118.4");
    var result =
        desk.annotate(Desk.report("s.docx", "docx", Desk.finding("mortar", Level.NOTE, cell)));
    assertThat(result.shortfalls()).isEmpty();
    assertThat(covered(desk.copies().resolve("s.docx"), "0")).isEqualTo("A118.4");
  }

  @Test
  void words_within_a_paragraph_are_covered_alone_and_the_paragraph_reads_and_looks_as_before()
      throws Exception {
    try (XWPFDocument word = new XWPFDocument();
        OutputStream out = Files.newOutputStream(desk.sources().resolve("s.docx"))) {
      XWPFParagraph paragraph = word.createParagraph();
      paragraph.createRun().setText("GT-4: mortar ");
      var bold = paragraph.createRun();
      bold.setBold(true);
      bold.setText("coverage 85 percent minimum, ");
      paragraph.createRun().setText("evenly spread.");
      word.write(out);
    }
    Path copy = desk.copies().resolve("s.docx");
    String clause = "GT-4: mortar coverage 85 percent minimum, evenly spread.";
    Origin whole = Desk.paragraph("s.docx", 1, clause);
    Origin across = Desk.paragraph("s.docx", 1, "minimum, evenly");
    desk.annotate(
        Desk.report(
            "s.docx",
            "docx",
            found(Desk.finding("coverage", Level.ERROR, whole), "at least 85 %"),
            Desk.finding("vague", Level.NOTE, across),
            Desk.finding("mockup", Level.NOTE, whole)));
    assertThat(covered(copy, "0")).isEqualTo("85 percent");
    assertThat(covered(copy, "1")).isEqualTo("minimum, evenly");
    assertThat(covered(copy, "2")).isEqualTo(clause);
    assertThat(String.join("", words(copy))).isEqualTo(clause);
    try (InputStream in = Files.newInputStream(copy);
        XWPFDocument word = new XWPFDocument(in)) {
      StringBuilder bold = new StringBuilder();
      for (var run : word.getParagraphArray(0).getRuns()) if (run.isBold()) bold.append(run.text());
      assertThat(bold).hasToString("coverage 85 percent minimum, ");
    }
  }

  private static Finding found(Finding f, String found) {
    return new Finding(
        f.id(),
        f.check(),
        f.kind(),
        f.level(),
        f.state(),
        f.tags(),
        f.attribute(),
        f.origin(),
        f.places(),
        f.message(),
        found,
        f.expected(),
        f.steps(),
        f.question(),
        f.clause(),
        f.source(),
        "",
        f.suppressed(),
        Finding.FindingWording.NONE);
  }

  @Test
  void tracked_changes_and_earlier_comments_stay() throws Exception {
    write(true);
    Path copy = desk.copies().resolve("s.docx");
    desk.annotate(
        Desk.report(
            "s.docx",
            "docx",
            Desk.finding("mortar", Level.ERROR, Desk.paragraph("s.docx", 3, "White mortar")),
            Desk.finding("grout", Level.ERROR, Desk.paragraph("s.docx", 3, "White mortar"))));
    assertThat(Desk.elements(copy, "word/comments.xml", "comment"))
        .extracting(c -> attribute(c, "id"))
        .containsExactly("7", "8", "9");
    assertThat(Desk.elements(copy, "word/comments.xml", "comment").get(0).getTextContent())
        .isEqualTo("Keep this.");
    assertThat(Desk.elements(copy, "word/document.xml", "ins"))
        .singleElement()
        .satisfies(ins -> assertThat(ins.getTextContent()).isEqualTo(" for glass"));
    assertThat(words(copy)).isEqualTo(words(desk.sources().resolve("s.docx")));
  }

  @Test
  void a_place_that_is_not_there_is_noted_at_the_first_words_and_reported() throws Exception {
    write(false);
    var result =
        desk.annotate(
            Desk.report(
                "s.docx",
                "docx",
                Desk.finding("mockup", Level.ERROR, Desk.paragraph("s.docx", 400, "gone")),
                Desk.finding("grout", Level.ERROR, Desk.paragraph("s.docx", 3, "epoxy"))));
    assertThat(result.shortfalls())
        .extracting(Shortfall::reason)
        .containsExactly(
            "it names no paragraph of the body that is there; noted at the first with words",
            "the paragraph there does not hold the words");
    assertThat(covered(desk.copies().resolve("s.docx"), "0")).isEqualTo("PART 2");
  }

  private static String attribute(Element element, String name) {
    return element.getAttributeNS(element.getNamespaceURI(), name);
  }

  private static List<String> words(Path file) throws Exception {
    return Desk.elements(file, "word/document.xml", "t").stream()
        .map(Element::getTextContent)
        .toList();
  }

  /** The words between start and end of a comment, which must be in one paragraph. */
  private static String covered(Path file, String id) throws Exception {
    Element start = marker(file, "commentRangeStart", id);
    StringBuilder words = new StringBuilder();
    for (Node n = start.getNextSibling(); n != null; n = n.getNextSibling()) {
      if ("commentRangeEnd".equals(n.getLocalName()) && attribute((Element) n, "id").equals(id)) {
        return words.toString();
      }
      words.append(n.getTextContent());
    }
    throw new AssertionError("the range of comment " + id + " does not end in its paragraph");
  }

  private static Element marker(Path file, String name, String id) throws Exception {
    return new ArrayList<>(Desk.elements(file, "word/document.xml", name))
        .stream().filter(e -> attribute(e, "id").equals(id)).findFirst().orElseThrow();
  }

  /** An empty paragraph, a heading, a paragraph with a tracked insertion, a table. */
  private void write(boolean commented) throws IOException {
    try (XWPFDocument word = new XWPFDocument();
        OutputStream out = Files.newOutputStream(desk.sources().resolve("s.docx"))) {
      word.createParagraph();
      word.createParagraph().createRun().setText("PART 2");
      XWPFParagraph paragraph = word.createParagraph();
      paragraph.setSpacingAfter(40);
      paragraph.createRun().setText("White mortar");
      CTRunTrackChange insertion = paragraph.getCTP().addNewIns();
      insertion.setId(BigInteger.ONE);
      insertion.setAuthor("Somebody");
      var text = insertion.addNewR().addNewT();
      text.setStringValue(" for glass");
      text.setSpace(org.apache.xmlbeans.impl.xb.xmlschema.SpaceAttribute.Space.PRESERVE);
      XWPFTable table = word.createTable(2, 2);
      table.getRow(0).getCell(0).setText("Tag");
      table.getRow(1).getCell(1).setText("A118.4");
      if (commented) {
        var comment = word.createComments().createComment(BigInteger.valueOf(7));
        comment.setAuthor("Somebody");
        comment.createParagraph().createRun().setText("Keep this.");
      }
      word.write(out);
    }
  }
}
