package clearbed.read.word;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Paragraph.Region;
import clearbed.model.document.Table;
import clearbed.read.ReadAll;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WordReaderTest {
  private static final String WORD =
      "xmlns:w=\"http://schemas.openxmlformats.org/wordprocessingml/2006/main\""
          + " xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\""
          + " xmlns:mc=\"http://schemas.openxmlformats.org/markup-compatibility/2006\""
          + " xmlns:v=\"urn:schemas-microsoft-com:vml\"";

  private static final String NUMBERING =
      """
      <w:abstractNum w:abstractNumId="0">
        <w:lvl w:ilvl="0"><w:start w:val="1"/><w:numFmt w:val="decimal"/><w:pStyle w:val="Part"/><w:lvlText w:val="PART %1 -"/></w:lvl>
        <w:lvl w:ilvl="1"><w:start w:val="1"/><w:numFmt w:val="decimal"/><w:pStyle w:val="Article"/><w:lvlText w:val="%1.%2"/></w:lvl>
        <w:lvl w:ilvl="2"><w:start w:val="1"/><w:numFmt w:val="upperLetter"/><w:lvlText w:val="%3."/></w:lvl>
        <w:lvl w:ilvl="3"><w:start w:val="1"/><w:numFmt w:val="lowerRoman"/><w:lvlText w:val="(%4)"/></w:lvl>
      </w:abstractNum>
      <w:abstractNum w:abstractNumId="1">
        <w:lvl w:ilvl="0"><w:start w:val="1"/><w:numFmt w:val="bullet"/><w:lvlText w:val="\uF0B7"/></w:lvl>
      </w:abstractNum>
      <w:num w:numId="1"><w:abstractNumId w:val="0"/></w:num>
      <w:num w:numId="2"><w:abstractNumId w:val="1"/></w:num>
      <w:num w:numId="3"><w:abstractNumId w:val="0"/>
        <w:lvlOverride w:ilvl="2"><w:startOverride w:val="5"/></w:lvlOverride></w:num>
      """;

  private static final String STYLES =
      """
      <w:style w:type="paragraph" w:default="1" w:styleId="Normal"><w:name w:val="Normal"/></w:style>
      <w:style w:type="paragraph" w:styleId="Part"><w:name w:val="CSI Part"/>
        <w:pPr><w:numPr><w:numId w:val="1"/></w:numPr><w:outlineLvl w:val="0"/></w:pPr></w:style>
      <w:style w:type="paragraph" w:styleId="Article"><w:name w:val="Article"/><w:basedOn w:val="Part"/>
        <w:pPr><w:numPr><w:ilvl w:val="1"/></w:numPr><w:outlineLvl w:val="1"/></w:pPr></w:style>
      <w:style w:type="paragraph" w:styleId="H3"><w:name w:val="heading 3"/></w:style>
      <w:style w:type="paragraph" w:styleId="H3x"><w:name w:val="Own"/><w:basedOn w:val="H3"/></w:style>
      """;

  @TempDir Path folder;

  @Test
  void automaticNumbersAreComputedFromTheNumberingDefinitions() throws IOException {
    Document document =
        read(
            styled("Part", "GENERAL")
                + styled("Article", "SCOPE")
                + listed(1, 2, "First")
                + listed(1, 3, "Inner")
                + listed(1, 3, "Inner too")
                + listed(1, 2, "Second")
                + styled("Article", "REFERENCES")
                + listed(1, 2, "Starts again")
                + styled("Part", "PRODUCTS")
                + styled("Article", "TILE")
                + listed(3, 2, "Overridden")
                + listed(3, 2, "Counts on")
                + listed(2, 0, "Bullet")
                + listed(0, 0, "Number taken off")
                + styled("H3x", "Heading by inheritance"));

    assertThat(document.blocks())
        .extracting(b -> label(b) + "|" + ((Paragraph) b).text())
        .containsExactly(
            "PART 1 -|GENERAL",
            "1.1|SCOPE",
            "A.|First",
            "(i)|Inner",
            "(ii)|Inner too",
            "B.|Second",
            "1.2|REFERENCES",
            "A.|Starts again",
            "PART 2 -|PRODUCTS",
            "2.1|TILE",
            "E.|Overridden",
            "F.|Counts on",
            "\u2022|Bullet",
            "|Number taken off",
            "|Heading by inheritance");
    assertThat(document.blocks())
        .extracting(b -> ((Paragraph) b).headingLevel(), b -> ((Paragraph) b).listLevel())
        .startsWith(tuple(1, 0), tuple(2, 1), tuple(0, 2), tuple(0, 3))
        .endsWith(tuple(0, 0), tuple(0, -1), tuple(3, -1));
  }

  private static String label(Block block) {
    return ((Paragraph) block).label();
  }

  @Test
  void theTextIsWhatItsReaderSeesWithChangesAccepted() throws IOException {
    Document document =
        read(
            p(
                    "<w:ins><w:r><w:t>Epoxy</w:t></w:r></w:ins><w:del><w:r><w:delText>Cement</w:delText></w:r></w:del>"
                        + run(" mor\u00ADtar,\u00A0white"))
                + p("<w:moveFrom><w:r><w:t>Moved away</w:t></w:r></w:moveFrom>")
                + "<w:p><w:pPr><w:rPr><w:del/></w:rPr></w:pPr>"
                + run("Joined ")
                + "</w:p>"
                + p(run("to this"))
                + p(
                    "<w:r><w:fldChar w:fldCharType=\"begin\"/></w:r><w:r><w:instrText>REF x</w:instrText></w:r>"
                        + "<w:r><w:fldChar w:fldCharType=\"separate\"/></w:r>"
                        + run("Section 2.1")
                        + "<w:r><w:fldChar w:fldCharType=\"end\"/></w:r>"
                        + run(" applies"))
                + p(run("Seen ") + "<w:r><w:rPr><w:vanish/></w:rPr><w:t>hidden</w:t></w:r>")
                + "<w:sdt><w:sdtContent>"
                + p(run("In a control"))
                + "</w:sdtContent></w:sdt>"
                + p(
                    "<w:sdt><w:sdtPr><w:showingPlcHdr/></w:sdtPr><w:sdtContent>"
                        + run("Enter colour")
                        + "</w:sdtContent></w:sdt>")
                + p("<w:r><w:sym w:font=\"Symbol\" w:char=\"F0B0\"/></w:r>" + run("F")));

    assertThat(texts(document, Region.BODY))
        .containsExactly(
            "Epoxy mortar, white",
            "Joined to this",
            "Section 2.1 applies",
            "Seen hidden",
            "In a control",
            "[Enter colour]",
            "\u00B0F");
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  @Test
  void wordsBehindAFieldThatNeverEndsAreNamedWithTheirPlace() throws IOException {
    String begins = "<w:r><w:fldChar w:fldCharType=\"begin\"/></w:r>";
    String ends = "<w:r><w:fldChar w:fldCharType=\"end\"/></w:r>";
    Document document =
        read(p(run("Read")) + p(run("Read, too") + begins) + p(run("Lost")) + p(run("Lost, too")));

    assertThat(texts(document, Region.BODY)).containsExactly("Read", "Read, too");
    assertThat(document.status()).isEqualTo(Status.PARTLY);
    assertThat(document.gaps())
        .singleElement()
        .satisfies(
            gap -> {
              assertThat(gap.reason()).contains("a field begins here and has no end");
              assertThat(gap.origin().paragraph()).isEqualTo(3);
            });
    assertThat(read(p(begins + run("Code") + ends) + p(run("Read"))).gaps()).isEmpty();
  }

  @Test
  void tablesKeepSpansMergedCellsAndTablesWithinCells() throws IOException {
    String inner = "<w:tbl>" + row(tc("", p(run("Inner")))) + "</w:tbl>";
    Document document =
        read(
            p(run("Before"))
                + "<w:tbl>"
                + row(
                    tc("<w:vMerge w:val=\"restart\"/>", p(run("Room")))
                        + tc("<w:gridSpan w:val=\"2\"/>", p(run("Glass tile"))))
                + row(
                    tc("<w:vMerge/>", p(""))
                        + tc("", p(run("GT-1")) + p(run("wet")))
                        + tc("", inner + p(run("A118.4"))))
                + "<w:tr><w:trPr><w:del/></w:trPr>"
                + tc("", p(run("Deleted")))
                + "</w:tr>"
                + "</w:tbl>"
                + p(run("After")));

    Table table = (Table) document.blocks().get(1);
    assertThat(table.origin().paragraph()).isEqualTo(2);
    assertThat(table.rows()).hasSize(2);
    assertThat(table.rows().get(0).at(2).text()).isEqualTo("Glass tile");
    assertThat(table.rows().get(1).at(0))
        .matches(Table.Cell::continued)
        .extracting(Table.Cell::text)
        .isEqualTo("Room");
    assertThat(table.rows().get(1).at(1).text()).isEqualTo("GT-1\nwet");
    assertThat(table.rows().get(1).at(2).text()).isEqualTo("A118.4");
    assertThat(((Table) document.blocks().get(2)).rows().get(0).at(0).text()).isEqualTo("Inner");
    assertThat(document.blocks().get(3).origin().paragraph()).isEqualTo(10);
  }

  @Test
  void theAnnotatorFindsEveryParagraphAndCellAgain() throws IOException {
    Document document =
        read(
            p(run("First"))
                + "<w:sdt><w:sdtContent>"
                + p(run("In a control"))
                + "</w:sdtContent></w:sdt>"
                + "<w:tbl>"
                + row(tc("", p(run("Tag"))) + tc("", p(run("Mortar"))))
                + row(tc("", p(run("GT-1"))) + tc("", p(run("A118.4"))))
                + "</w:tbl>"
                + p(
                    "<w:r><w:pict><v:shape><v:textbox><w:txbxContent>"
                        + p(run("Boxed"))
                        + "</w:txbxContent></v:textbox></v:shape></w:pict></w:r>"
                        + run("Anchor"))
                + p(run("Last")));

    assertThat(texts(document, Region.NOTE)).containsExactly("Boxed");
    try (InputStream in = Files.newInputStream(folder.resolve("test.docx"));
        XWPFDocument word = new XWPFDocument(in)) {
      for (Block block : document.blocks()) {
        if (block instanceof Paragraph p && p.region() == Region.BODY) {
          assertThat(textAt(word, p.origin())).contains(p.text());
        } else if (block instanceof Table t) {
          for (Table.Row row : t.rows()) {
            for (Table.Cell cell : row.cells()) {
              assertThat(textAt(word, t.origin(cell))).isEqualTo(cell.text());
            }
          }
        }
      }
      assertThat(WordParagraphs.of(word).get(7).getText()).isEqualTo("Last");
      assertThat(WordParagraphs.at(word, new Origin("x", null, null, null, 99, null, null)))
          .isEmpty();
    }
  }

  private static String textAt(XWPFDocument word, Origin origin) {
    return WordParagraphs.at(word, origin).map(XWPFParagraph::getText).orElseThrow();
  }

  @Test
  void headersFootersAndNotesAreMarkedAsSuch() throws IOException {
    try (XWPFDocument word = new XWPFDocument()) {
      word.createHeader(org.apache.poi.wp.usermodel.HeaderFooterType.DEFAULT)
          .createParagraph()
          .createRun()
          .setText("GLASS TILING");
      word.createFooter(org.apache.poi.wp.usermodel.HeaderFooterType.DEFAULT)
          .createParagraph()
          .createRun()
          .setText("093013");
      XWPFParagraph body = word.createParagraph();
      body.createRun().setText("Body");
      var note = word.createFootnote();
      note.createParagraph().createRun().setText("See the schedule");
      body.addFootnoteReference(note);
      try (var out = Files.newOutputStream(folder.resolve("notes.docx"))) {
        word.write(out);
      }
    }

    Document document = ReadAll.of(folder.resolve("notes.docx")).get(0);

    assertThat(texts(document, Region.HEADER)).containsExactly("GLASS TILING");
    assertThat(texts(document, Region.FOOTER)).containsExactly("093013");
    assertThat(texts(document, Region.NOTE)).containsExactly("See the schedule");
    assertThat(document.blocks())
        .filteredOn(b -> ((Paragraph) b).region() == Region.NOTE)
        .extracting(b -> b.origin().paragraph())
        .containsExactly(1);
  }

  private static String p(String inner) {
    return "<w:p>" + inner + "</w:p>";
  }

  private static String run(String text) {
    return "<w:r><w:t xml:space=\"preserve\">" + text + "</w:t></w:r>";
  }

  private static String styled(String style, String text) {
    return "<w:p><w:pPr><w:pStyle w:val=\"" + style + "\"/></w:pPr>" + run(text) + "</w:p>";
  }

  private static String listed(int number, int level, String text) {
    return "<w:p><w:pPr><w:numPr><w:ilvl w:val=\""
        + level
        + "\"/><w:numId w:val=\""
        + number
        + "\"/></w:numPr></w:pPr>"
        + run(text)
        + "</w:p>";
  }

  private static String row(String cells) {
    return "<w:tr>" + cells + "</w:tr>";
  }

  private static String tc(String properties, String inner) {
    return "<w:tc><w:tcPr>" + properties + "</w:tcPr>" + inner + "</w:tc>";
  }

  private static List<String> texts(Document document, Region region) {
    return document.blocks().stream()
        .filter(b -> b instanceof Paragraph p && p.region() == region)
        .map(b -> ((Paragraph) b).text())
        .toList();
  }

  /** Written by hand, since the library offers no way to make most of what is tested. */
  private Document read(String body) throws IOException {
    String type = "application/vnd.openxmlformats-officedocument.wordprocessingml.";
    String link = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
    Path file = folder.resolve("test.docx");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      add(
          zip,
          "[Content_Types].xml",
          "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
              + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
              + part("document", type + "document.main+xml")
              + part("styles", type + "styles+xml")
              + part("numbering", type + "numbering+xml")
              + "</Types>");
      add(
          zip,
          "_rels/.rels",
          relations(
              "<Relationship Id=\"r1\" Type=\""
                  + link
                  + "officeDocument\" Target=\"word/document.xml\"/>"));
      add(
          zip,
          "word/_rels/document.xml.rels",
          relations(
              "<Relationship Id=\"r1\" Type=\""
                  + link
                  + "styles\" Target=\"styles.xml\"/>"
                  + "<Relationship Id=\"r2\" Type=\""
                  + link
                  + "numbering\" Target=\"numbering.xml\"/>"));
      add(
          zip,
          "word/document.xml",
          "<w:document " + WORD + "><w:body>" + body + "</w:body></w:document>");
      add(zip, "word/styles.xml", "<w:styles " + WORD + ">" + STYLES + "</w:styles>");
      add(zip, "word/numbering.xml", "<w:numbering " + WORD + ">" + NUMBERING + "</w:numbering>");
    }
    return ReadAll.of(file).get(0);
  }

  private static String part(String name, String type) {
    return "<Override PartName=\"/word/" + name + ".xml\" ContentType=\"" + type + "\"/>";
  }

  private static String relations(String links) {
    return "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
        + links
        + "</Relationships>";
  }

  private static void add(ZipOutputStream zip, String name, String content) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(content.getBytes(UTF_8));
  }
}
