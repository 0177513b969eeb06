package clearbed.read;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextFormatsTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {",", ";", "\t", "|"})
  void everyDelimiterIsFound(String mark) throws IOException {
    String text =
        "Tag,Size,Note\nGT-1,\"4 in\nby 4 in\",white\n\nGT-2,2 in,grey\n".replace(",", mark);

    Table table = table(read("list.csv", text, UTF_8));

    assertThat(table.sheet()).isTrue();
    assertThat(rows(table))
        .containsExactly("Tag/Size/Note", "GT-1/4 in\nby 4 in/white", "GT-2/2 in/grey");
    assertThat(table.rows()).extracting(Table.Row::number).containsExactly(1, 2, 4);
    assertThat(table.origin(table.rows().get(2).at(1)).cell()).isEqualTo("B4");
    assertThat(table.origin().sheet()).isNull();
  }

  @Test
  void everyCharsetIsFound() throws IOException {
    String text = "Tag,Temperature\nGT-1,\u2013 10 \u00B0C\nGT-2,caf\u00E9\n";
    for (Charset charset :
        List.of(UTF_8, Charset.forName("windows-1252"), StandardCharsets.UTF_16)) {
      assertThat(rows(table(read("t.csv", text, charset))))
          .as(charset.name())
          .containsExactly("Tag/Temperature", "GT-1/\u2013 10 \u00B0C", "GT-2/caf\u00E9");
    }
    assertThat(rows(table(read("t.csv", "\uFEFF" + text, UTF_8))))
        .first()
        .isEqualTo("Tag/Temperature");
  }

  @Test
  void aFewBrokenBytesAreNamedAndSpoilNoOtherLetter() throws IOException {
    String text = "Tag,Temperature,Note\nGT-1,\u2013 10 \u00B0C,caf\u00E9\n";
    byte[] bytes = (text + "GT-2,5 \u00B0C,wh#te\n").getBytes(UTF_8);
    for (int i = 0; i < bytes.length; i++) if (bytes[i] == '#') bytes[i] = (byte) 0xE4;
    for (String name : List.of("t.csv", "t.txt")) {
      Files.write(folder.resolve(name), bytes);
      Document document = ReadAll.of(folder.resolve(name)).get(0);
      assertThat(rows(table(document)))
          .containsExactly(
              "Tag/Temperature/Note",
              "GT-1/\u2013 10 \u00B0C/caf\u00E9",
              "GT-2/5 \u00B0C/wh\uFFFDte");
      assertThat(document.status()).isEqualTo(Status.PARTLY);
      assertThat(document.gaps())
          .extracting(Document.Gap::reason)
          .containsExactly(
              "1 of its letters cannot be made out and show as \uFFFD; open and save it again as"
                  + " UTF-8");
    }
  }

  @Test
  void aStrayInchMarkDoesNotSwallowTheRestOfTheFile() throws IOException {
    Document document = read("t.csv", "Tag,Size\nGT-1,\"4 in\nGT-2,2 in\n", UTF_8);

    assertThat(document.status()).isEqualTo(Status.PARTLY);
    assertThat(document.gaps().get(0).reason()).contains("quotation marks do not pair");
    assertThat(rows(table(document))).containsExactly("Tag/Size", "GT-1/\"4 in", "GT-2/2 in");
  }

  @Test
  void typedSpecificationsSplitAtNumbersAndKeepHangingLinesTogether() throws IOException {
    String text =
        """
        PART 2 - PRODUCTS
        2.3 MORTAR
        A. Mortar: latex-modified, with a shear bond of
           2.76 MPa or more, white behind translu-
           cent tile, of the thin-
           set kind.
        B. Grout: ANSI A118.7.
          1. Colour: white.
          - mixed with clean water

        A paragraph that goes on
        over two lines.
        Tag: GT-1
        Colour: white
        """;

    Document document = read("spec.txt", text, UTF_8);

    assertThat(texts(document))
        .containsExactly(
            "PART 2 - PRODUCTS",
            "2.3 MORTAR",
            "A. Mortar: latex-modified, with a shear bond of 2.76 MPa or more, white behind"
                + " translucent tile, of the thin-set kind.",
            "B. Grout: ANSI A118.7.",
            "1. Colour: white.",
            "- mixed with clean water",
            "A paragraph that goes on over two lines.",
            "Tag: GT-1",
            "Colour: white");
    assertThat(document.blocks().get(8).origin().paragraph()).isEqualTo(9);
  }

  @Test
  void markdownHasHeadingsAndDrawnTables() throws IOException {
    String text =
        """
        # Schedule

        **Note:** see below.

        | Tag  | Mortar \\| bed |
        |------|--------------:|
        | GT-1 | A118.15       |

        After it.
        """;

    Document document = read("schedule.md", text, UTF_8);

    assertThat(((Paragraph) document.blocks().get(0)).headingLevel()).isEqualTo(1);
    assertThat(texts(document)).containsExactly("Schedule", "Note: see below.", "After it.");
    assertThat(rows(table(document))).containsExactly("Tag/Mortar | bed", "GT-1/A118.15");
    assertThat(document.blocks())
        .extracting(b -> b.origin().paragraph())
        .containsExactly(1, 2, 3, 4);
  }

  @Test
  void aTextThatIsReallyDelimitedIsATable() throws IOException {
    Document document = read("export.txt", "Tag\tSize\nGT-1\t4 in\nGT-2\t2 in\n", UTF_8);

    assertThat(document.format()).isEqualTo("csv");
    assertThat(rows(table(document))).hasSize(3);
  }

  @Test
  void webPagesKeepHeadingsListsAndSpans() throws IOException {
    String html =
        """
        <html><head><title>x</title><script>var a = 1;</script></head><body>
        <h2>Mortar</h2><p>White&nbsp;where
        translucent.</p><ol><li>First</li><li>Second</li></ol>
        <table><tr><th rowspan="2">Tag</th><th colspan="2">Mortar</th></tr>
        <tr><td>Standard</td><td>Bond</td></tr>
        <tr><td>GT-1</td><td>A118.15</td><td>450 psi</td></tr></table>
        <img src="http://192.0.2.1/x.png"/></body></html>
        """;

    Document document = read("page.html", html, UTF_8);

    assertThat(document.blocks())
        .filteredOn(Paragraph.class::isInstance)
        .extracting(
            b -> ((Paragraph) b).text(),
            b -> ((Paragraph) b).headingLevel(),
            b -> ((Paragraph) b).label())
        .containsExactly(
            tuple("Mortar", 2, ""),
            tuple("White where translucent.", 0, ""),
            tuple("First", 0, "1."),
            tuple("Second", 0, "2."));
    Table table = table(document);
    assertThat(rows(table))
        .containsExactly("Tag/Mortar", "Tag/Standard/Bond", "GT-1/A118.15/450 psi");
    assertThat(table.rows().get(1).at(0).continued()).isTrue();
    assertThat(table.rows().get(0).at(2).text()).isEqualTo("Mortar");
  }

  @Test
  void richTextIsReadWithItsTables() throws IOException {
    String rtf =
        "{\\rtf1\\ansi {\\pard Mortar: ANSI A118.15.\\par}"
            + "\\trowd\\cellx2000\\cellx4000 \\intbl GT-1\\cell A118.4\\cell\\row"
            + "{\\pard After.\\par}}";

    Document document = read("note.rtf", rtf, UTF_8);

    assertThat(texts(document)).contains("Mortar: ANSI A118.15.", "After.");
    assertThat(rows(table(document))).containsExactly("GT-1/A118.4");
  }

  @Test
  void openDocumentSheetsHaveAddressesPastRepeatedCells() throws IOException {
    String content =
        """
        <o:document-content xmlns:o="urn:oasis:names:tc:opendocument:xmlns:office:1.0"
          xmlns:t="urn:oasis:names:tc:opendocument:xmlns:table:1.0"
          xmlns:x="urn:oasis:names:tc:opendocument:xmlns:text:1.0"><o:body><o:spreadsheet>
        <t:table t:name="Tile">
        <t:table-row><t:table-cell t:number-columns-spanned="3"><x:p>GLASS</x:p></t:table-cell>
          <t:covered-table-cell t:number-columns-repeated="2"/></t:table-row>
        <t:table-row t:number-rows-repeated="3"><t:table-cell t:number-columns-repeated="1024"/></t:table-row>
        <t:table-row t:visibility="collapse"><t:table-cell><o:annotation><x:p>check</x:p></o:annotation>
          <x:p>GT-1</x:p><x:p>wet</x:p></t:table-cell>
          <t:table-cell t:number-columns-repeated="2"/><t:table-cell><x:p>A<x:s x:c="2"/>B</x:p></t:table-cell></t:table-row>
        <t:table-row t:number-rows-repeated="1048570"><t:table-cell/></t:table-row>
        </t:table></o:spreadsheet></o:body></o:document-content>
        """;
    Path file = folder.resolve("list.ods");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      zip.putNextEntry(new ZipEntry("mimetype"));
      zip.write("application/vnd.oasis.opendocument.spreadsheet".getBytes(UTF_8));
      zip.putNextEntry(new ZipEntry("content.xml"));
      zip.write(content.getBytes(UTF_8));
    }

    Table table = table(ReadAll.of(file).get(0));

    assertThat(table.origin().sheet()).isEqualTo("Tile");
    assertThat(table.rows()).extracting(Table.Row::number).containsExactly(1, 5);
    assertThat(table.rows().get(0).at(2).text()).isEqualTo("GLASS");
    assertThat(table.rows().get(1).hidden()).isTrue();
    assertThat(table.rows().get(1).at(0).text()).isEqualTo("GT-1\nwet");
    assertThat(table.rows().get(1).at(0).remark()).isEqualTo("check");
    assertThat(table.rows().get(1).at(3).text()).isEqualTo("A  B");
  }

  private Document read(String name, String text, Charset charset) throws IOException {
    Path file = folder.resolve(name);
    Files.write(file, text.getBytes(charset));
    return ReadAll.of(file).get(0);
  }

  private static List<String> texts(Document document) {
    return document.blocks().stream()
        .filter(Paragraph.class::isInstance)
        .map(b -> ((Paragraph) b).text())
        .toList();
  }

  private static Table table(Document document) {
    List<Block> tables = document.blocks().stream().filter(Table.class::isInstance).toList();
    assertThat(tables).as(document.toString()).hasSize(1);
    return (Table) tables.get(0);
  }

  private static List<String> rows(Table table) {
    return table.rows().stream()
        .map(r -> String.join("/", r.cells().stream().map(Table.Cell::text).toList()))
        .toList();
  }
}
