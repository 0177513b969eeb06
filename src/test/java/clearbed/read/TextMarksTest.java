package clearbed.read;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Struck, deleted, hidden and remarked words in the formats of running text. */
class TextMarksTest {
  private static final String STRUCK = "struck through, not in force: ";
  private static final String DELETED = "deleted by a tracked change, not in force: ";
  private static final String HIDDEN = "hidden text; read like the rest: ";
  private static final String INSERTED =
      "inserted by a tracked change not yet accepted; read as in force: ";
  private static final String REMARK =
      "a person's comment, no requirement; what it leaves open is open: ";

  @TempDir Path folder;

  @Test
  void web_pages_strike_by_elements_styles_and_classes() throws IOException {
    Document document =
        read(
            "page.html",
            """
            <html><head><style>p { margin: 0 } .c3, span.old { color: red;
            text-decoration: line-through }</style></head><body>
            <p>Mortar: <s>ANSI A118.4</s> ANSI A118.15.</p>
            <p><strike>Whole.</strike></p><p>Grout <del>A118.6</del>A118.7.</p>
            <p>Bond <span style="TEXT-DECORATION: none line-through">300 psi</span> 400 psi.</p>
            <p>Seal <span class="c3 x">urethane</span> silicone.</p>
            <p class="c3x">Kept <u>all</u>.</p>
            <table><tr><td>GT-1</td><td style="text-decoration-line: line-through">A118.4</td>
            <td><s>A118.1</s> A118.15</td></tr></table>
            </body></html>
            """);

    assertThat(said(document))
        .containsExactly(
            "1 Mortar: ANSI A118.15.",
            "3 Grout A118.7.",
            "4 Bond 400 psi.",
            "5 Seal silicone.",
            "6 Kept all.",
            "7 GT-1/A118.15");
    assertThat(gaps(document))
        .containsExactly(
            "1 " + STRUCK + "ANSI A118.4",
            "2 " + STRUCK + "Whole.",
            "3 " + STRUCK + "A118.6",
            "4 " + STRUCK + "300 psi",
            "5 " + STRUCK + "urethane",
            "7 B1 " + STRUCK + "A118.4",
            "7 C1 " + STRUCK + "A118.1");
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  @Test
  void markdown_strikes_with_tildes() throws IOException {
    Document document =
        read(
            "spec.md",
            """
            Mortar: ~~ANSI A118.4~~ ANSI A118.15, ~3/8 in bed, ~2.5 kg.

            ~~All of
            this.~~

            Seal <del>urethane</del> silicone \\~~ as ever.

            | Tag  | Mortar           |
            |------|------------------|
            | GT-1 | ~~A118.4~~ A118.15 |
            | ~~GT-2~~ | ~~A118.4~~ |
            """);

    assertThat(said(document))
        .containsExactly(
            "1 Mortar: ANSI A118.15, ~3/8 in bed, ~2.5 kg.",
            "3 Seal silicone \\~~ as ever.",
            "4 Tag/Mortar; GT-1/A118.15");
    assertThat(gaps(document))
        .containsExactly(
            "1 " + STRUCK + "ANSI A118.4",
            "2 " + STRUCK + "All of this.",
            "3 " + STRUCK + "urethane",
            "4 B2 " + STRUCK + "A118.4",
            "4 A3 " + STRUCK + "GT-2",
            "4 B3 " + STRUCK + "A118.4");
  }

  @Test
  void rich_text_says_what_its_library_does_not() throws IOException {
    Document document =
        read(
            "spec.rtf",
            """
            {\\rtf1\\ansi\\deff0{\\fonttbl{\\f0 Times;}}{\\*\\revtbl{Unknown;}{Desk;}}
            {\\header\\pard SECTION 09 30 13\\par}{\\footer\\pard Issue 3\\par}
            \\pard Mortar: {\\strike ANSI A118.4} ANSI A118.15.\\par
            \\pard\\plain\\striked1 Whole.\\striked0\\par
            \\pard\\plain\\strike Gone\\plain  alive \\'e9t\\u233?.\\par
            Seen {\\v hidden} end.\\par
            A {\\deleted gone} {\\revised new} b.\\par
            Note{\\super\\chftn{\\footnote\\pard\\plain\\chftn  White mortar.}} here.\\par
            Remark{\\*\\atnid SD}{\\*\\atnauthor Desk}\\chatn{\\*\\annotation\\pard Verify} here.\\par
            \\trowd\\cellx2000\\cellx4000 \\intbl GT-1\\cell {\\strike A118.4} A118.15\\cell\\row
            \\pard Last.\\par}
            """);

    assertThat(said(document))
        .containsExactly(
            "header SECTION 09 30 13",
            "footer Issue 3",
            "1 Mortar: ANSI A118.15.",
            "3 alive \u00E9t\u00E9.",
            "4 Seen hidden end.",
            "5 A new b.",
            "6 Note here.",
            "6 footnote White mortar.",
            "7 Remark here.",
            "7 comment Verify",
            "8 GT-1/A118.15",
            "9 Last.");
    assertThat(gaps(document))
        .containsExactly(
            "1 " + STRUCK + "ANSI A118.4",
            "2 " + STRUCK + "Whole.",
            "3 " + STRUCK + "Gone",
            "4 " + HIDDEN + "hidden",
            "5 " + DELETED + "gone",
            "5 " + INSERTED + "new",
            "7 comment " + REMARK + "Verify",
            "8 " + STRUCK + "A118.4",
            "header a page header: no requirement by itself: SECTION 09 30 13",
            "footer a page footer: no requirement by itself: Issue 3");
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  @Test
  void an_open_document_text_says_what_its_library_does_not() throws IOException {
    String content =
        """
        <office:document-content xmlns:office="o" xmlns:table="t" xmlns:text="x" xmlns:style="s"
          xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:draw="d"><office:automatic-styles>
        <style:style style:name="T1" style:family="text"><style:text-properties
          style:text-line-through-style="solid"/></style:style>
        <style:style style:name="T2" style:family="text"><style:text-properties
          text:display="none"/></style:style>
        <style:style style:name="P1" style:family="paragraph"
          style:parent-style-name="Void"/>
        <text:list-style style:name="L1"><text:list-level-style-number text:level="1"
          style:num-format="A" style:num-suffix="."/></text:list-style>
        </office:automatic-styles><office:body><office:text>
        <text:tracked-changes><text:changed-region text:id="c1"><text:deletion><office:change-info>
        <dc:creator>Desk</dc:creator><dc:date>2026</dc:date></office:change-info>
        <text:p>gone</text:p></text:deletion></text:changed-region>
        <text:changed-region text:id="c2"><text:insertion/></text:changed-region>
        </text:tracked-changes>
        <text:h text:outline-level="2">MORTAR</text:h>
        <text:p>Mortar: <text:span text:style-name="T1">ANSI A118.4</text:span> ANSI A118.15.</text:p>
        <text:p text:style-name="P1">Whole.</text:p>
        <text:p>Seen <text:span text:style-name="T2">hidden</text:span> end.</text:p>
        <text:p>A <text:change text:change-id="c1"/><text:change-start
          text:change-id="c2"/>new<text:change-end text:change-id="c2"/> b.</text:p>
        <text:p>Note<text:note text:note-class="footnote"><text:note-citation>1</text:note-citation>
          <text:note-body><text:p>White mortar.</text:p></text:note-body></text:note> here.</text:p>
        <text:p>Remark<office:annotation><dc:creator>Desk</dc:creator><dc:date>2026</dc:date>
          <text:p>Verify</text:p></office:annotation> here.</text:p>
        <text:list text:style-name="L1"><text:list-item><text:p>First</text:p></text:list-item>
        <text:list-item><text:p>Second</text:p></text:list-item></text:list>
        <table:table><table:table-column/><table:table-row><table:table-cell
          table:number-columns-spanned="2"><text:p>GT-1</text:p></table:table-cell>
          <table:covered-table-cell/><table:table-cell><text:p><text:span
          text:style-name="T1">A118.4</text:span> A118.15<office:annotation><text:p>Confirm</text:p>
          </office:annotation></text:p></table:table-cell></table:table-row></table:table>
        <text:p>Last on <text:date>4 May</text:date>.</text:p>
        </office:text></office:body></office:document-content>
        """;
    String styles =
        """
        <office:document-styles xmlns:office="o" xmlns:style="s" xmlns:text="x"><office:styles>
        <style:style style:name="Void" style:family="paragraph"><style:text-properties
          style:text-line-through-type="double"/></style:style></office:styles>
        <office:master-styles><style:master-page><style:header><text:p>SECTION 09 30 13</text:p>
        </style:header></style:master-page></office:master-styles></office:document-styles>
        """;
    Path file = folder.resolve("spec.odt");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      add(zip, "mimetype", "application/vnd.oasis.opendocument.text");
      add(zip, "content.xml", content);
      add(zip, "styles.xml", styles);
    }

    Document document = read(file);

    assertThat(said(document))
        .containsExactly(
            "header SECTION 09 30 13",
            "1 MORTAR",
            "2 Mortar: ANSI A118.15.",
            "4 Seen hidden end.",
            "5 A new b.",
            "6 Note here.",
            "6 footnote White mortar.",
            "7 Remark here.",
            "7 comment Verify",
            "8 A. First",
            "9 B. Second",
            "10 GT-1/A118.15",
            "11 Last on 4 May.");
    Table table =
        (Table)
            document.blocks().stream().filter(Table.class::isInstance).findFirst().orElseThrow();
    assertThat(table.rows().get(0).at(2).remark()).isEqualTo("Confirm");
    assertThat(gaps(document))
        .containsExactly(
            "2 " + STRUCK + "ANSI A118.4",
            "3 " + STRUCK + "Whole.",
            "4 " + HIDDEN + "hidden",
            "5 " + DELETED + "gone",
            "5 " + INSERTED + "new",
            "7 comment " + REMARK + "Verify",
            "10 C1 " + STRUCK + "A118.4",
            "10 C1 comment " + REMARK + "Confirm",
            "header a page header: no requirement by itself: SECTION 09 30 13");
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  /** The file is what LibreOffice 7.4 makes of the rich text above, in Word's old format. */
  @Test
  void an_old_word_file_says_what_its_library_does_not() throws IOException {
    Path file = folder.resolve("spec.doc");
    try (InputStream in = TextMarksTest.class.getResourceAsStream("marks.doc")) {
      Files.copy(in, file);
    }

    Document document = read(file);

    assertThat(said(document))
        .containsExactly(
            "header SECTION 09 30 13",
            "1 Mortar: ANSI A118.15.",
            "3 alive \u00E9t\u00E9.",
            "4 Seen hidden end.",
            "5 A new b.",
            "6 Note here.",
            "6 footnote White mortar.",
            "7 Remark here.",
            "7 comment Verify",
            "8 GT-1/A118.15",
            "9 Last.",
            "footer Issue 3");
    assertThat(gaps(document))
        .containsExactlyInAnyOrder(
            "1 " + STRUCK + "ANSI A118.4",
            "2 " + STRUCK + "Whole.",
            "3 " + STRUCK + "Gone",
            "4 " + HIDDEN + "hidden",
            "5 " + DELETED + "gone",
            "5 " + INSERTED + "new",
            "7 comment " + REMARK + "Verify",
            "8 B1 " + STRUCK + "A118.4",
            "header a page header: no requirement by itself: SECTION 09 30 13",
            "footer a page footer: no requirement by itself: Issue 3");
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  private Document read(String name, String content) throws IOException {
    return read(Files.writeString(folder.resolve(name), content));
  }

  private static Document read(Path file) {
    return ReadAll.of(file).get(0);
  }

  private static void add(ZipOutputStream zip, String name, String content) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(content.getBytes(UTF_8));
  }

  private static List<String> said(Document document) {
    List<String> said = new ArrayList<>();
    for (Block block : document.blocks()) {
      if (block instanceof Paragraph p) said.add(place(p) + p.label() + blank(p) + p.text());
      if (block instanceof Table t) {
        List<String> rows =
            t.rows().stream()
                .map(r -> String.join("/", r.cells().stream().map(Table.Cell::text).toList()))
                .toList();
        said.add(t.origin().paragraph() + " " + String.join("; ", rows));
      }
    }
    return said;
  }

  private static String blank(Paragraph p) {
    return p.label().isEmpty() ? "" : " ";
  }

  private static String place(Block block) {
    String number = block.origin().paragraph() == null ? "" : block.origin().paragraph() + " ";
    return number + (block.origin().part() == null ? "" : block.origin().part() + " ");
  }

  private static List<String> gaps(Document document) {
    return document.gaps().stream()
        .map(
            g ->
                (g.origin().paragraph() == null ? "" : g.origin().paragraph() + " ")
                    + (g.origin().cell() == null ? "" : g.origin().cell() + " ")
                    + (g.origin().part() == null ? "" : g.origin().part() + " ")
                    + g.reason()
                    + ": "
                    + g.origin().text())
        .toList();
  }
}
