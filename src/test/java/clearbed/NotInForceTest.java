package clearbed;

import static clearbed.read.WordParts.p;
import static clearbed.read.WordParts.reference;
import static clearbed.read.WordParts.run;
import static clearbed.read.WordParts.struck;
import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.report.Finding;
import clearbed.model.value.Entry;
import clearbed.read.WordParts;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is struck, and what people say of a document, is no requirement of it. */
class NotInForceTest {
  private static final String SCHEDULE =
      "Tag,Material,Exposure\nGT-1,Glass mosaic tile,wet\nGT-2,Cast glass tile,dry\n";

  @TempDir Path folder;

  @Test
  void struck_requirements_of_a_section_do_not_govern() throws IOException {
    schedule();
    section(
        p(run("2.1 SETTING MATERIALS")),
        p(run("A. Mortar for glass tile: "), struck("ANSI A118.4"), run("ANSI A118.15.")),
        p(struck("B. Grout for glass tile: ANSI A118.3, white.")));

    Checked checked = Checked.of(folder);

    assertThat(checked.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(checked.entry("GT-1").values("grout.standard")).isEmpty();
  }

  @Test
  void a_footnote_speaks_for_the_article_that_calls_it() throws IOException {
    schedule();
    new WordParts()
        .part(
            "document",
            p(run("SECTION 09 30 13 - GLASS TILING"))
                + p(run("PART 2 - PRODUCTS"))
                + p(run("2.1 MORTAR"))
                + p(run("A. As the notes below say."), reference("footnote", 1))
                + p(run("2.2 GROUT"))
                + p(run("A. Grout for glass tile: ANSI A118.7.")))
        .part(
            "footnotes",
            "<w:footnote w:id=\"1\">"
                + p(run("Glass tile: ANSI A118.15, white."))
                + "</w:footnote>")
        .write(folder.resolve("093013.docx"));

    Entry entry = Checked.of(folder).entry("GT-1");

    assertThat(entry.governing("mortar.standard"))
        .singleElement()
        .satisfies(
            v -> {
              assertThat(v.content().text()).isEqualTo("ANSI A118.15");
              assertThat(v.origin().part()).isEqualTo("footnote");
              assertThat(v.origin().heading()).startsWith("2.1");
            });
    assertThat(entry.values("grout.colour")).isEmpty();
  }

  @Test
  void a_comment_in_a_section_leaves_open_and_requires_nothing() throws IOException {
    schedule();
    new WordParts()
        .part(
            "document",
            p(run("SECTION 09 30 13 - GLASS TILING"))
                + p(run("2.1 MORTAR"))
                + p(run("A. Mortar for glass tile: ANSI A118.15."), reference("comment", 1))
                + p(run("B. Grout for glass tile: ANSI A118.7."), reference("comment", 2)))
        .part(
            "comments",
            "<w:comment w:id=\"1\">"
                + p(run("Verify with architect"))
                + "</w:comment><w:comment w:id=\"2\">"
                + p(run("Last job had grout ANSI A118.3, GT-9: cast glass tile"))
                + "</w:comment>")
        .write(folder.resolve("093013.docx"));

    Checked checked = Checked.of(folder);

    assertThat(checked.findings("unresolved"))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.found()).isEqualTo("Verify with architect");
              assertThat(f.origin().place()).contains("2.1 A").endsWith(", comment");
            });
    assertThat(checked.governing("GT-1", "grout.standard")).containsExactly("ANSI A118.7");
    assertThat(checked.hasGlass("GT-9")).isFalse();
  }

  @Test
  void a_comment_on_a_cell_is_open_for_its_row_or_says_nothing() throws IOException {
    try (XSSFWorkbook workbook = new XSSFWorkbook()) {
      Sheet sheet = workbook.createSheet("Tile");
      row(sheet, 0, "Tag", "Material", "Mortar", "Grout");
      row(sheet, 1, "GT-1", "Glass mosaic tile", "ANSI A118.15", "ANSI A118.7");
      row(sheet, 2, "GT-2", "Cast glass tile", "ANSI A118.15", "ANSI A118.7");
      comment(sheet, 1, 2, "verify with architect");
      comment(sheet, 2, 0, "to be confirmed");
      comment(sheet, 2, 3, "Was ANSI A118.3 in issue 1");
      try (OutputStream out = Files.newOutputStream(folder.resolve("tile.xlsx"))) {
        workbook.write(out);
      }
    }

    Checked checked = Checked.of(folder);

    assertThat(checked.findings("unresolved"))
        .extracting(f -> f.tags() + " " + f.origin().cell() + " " + f.found())
        .containsExactlyInAnyOrder("[GT-1] C2 verify with architect", "[GT-2] A3 to be confirmed");
    assertThat(checked.findings("unresolved"))
        .extracting(Finding::message)
        .contains("A requirement of GT-2 is left open: to be confirmed.");
    assertThat(checked.findings("unresolved"))
        .extracting(Finding::origin)
        .allMatch(o -> o.place().endsWith(", comment"));
    assertThat(checked.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(checked.governing("GT-2", "grout.standard")).containsExactly("ANSI A118.7");
  }

  private void schedule() throws IOException {
    Files.writeString(folder.resolve("schedule.csv"), SCHEDULE);
  }

  private void section(String... paragraphs) throws IOException {
    String head = p(run("SECTION 09 30 13 - GLASS TILING")) + p(run("PART 2 - PRODUCTS"));
    new WordParts()
        .part("document", head + String.join("", List.of(paragraphs)))
        .write(folder.resolve("093013.docx"));
  }

  private static void row(Sheet sheet, int at, String... words) {
    var row = sheet.createRow(at);
    for (int i = 0; i < words.length; i++) row.createCell(i).setCellValue(words[i]);
  }

  private static void comment(Sheet sheet, int row, int column, String words) {
    var helper = sheet.getWorkbook().getCreationHelper();
    ClientAnchor anchor = helper.createClientAnchor();
    Comment comment = sheet.createDrawingPatriarch().createCellComment(anchor);
    comment.setString(helper.createRichTextString(words));
    comment.setAddress(row, column);
  }
}
