package clearbed.read;

import static clearbed.read.WordParts.p;
import static clearbed.read.WordParts.reference;
import static clearbed.read.WordParts.row;
import static clearbed.read.WordParts.run;
import static clearbed.read.WordParts.struck;
import static clearbed.read.WordParts.table;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import clearbed.model.document.Document;
import clearbed.model.document.Document.GapFate;
import clearbed.model.document.Document.Status;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Paragraph.Region;
import clearbed.model.document.Table;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.assertj.core.groups.Tuple;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What Word shows of words beyond the words: struck, deleted, inserted, hidden, remarked on. */
class WordMarksTest {
  private static final String STRUCK = "struck through, not in force";
  private static final String HIDDEN = "hidden text; read like the rest";

  @TempDir Path folder;

  @Test
  void struck_words_are_no_part_of_the_text_and_are_said() throws IOException {
    Document document =
        read(
            p(run("Mortar: "), struck("ANSI A118.4"), run(" ANSI A118.15.")),
            p(run("<w:dstrike/>", "Twice struck.")),
            p(struck("Grout: ANSI A118.6.")),
            p(struck("Kept"), run("<w:strike w:val=\"0\"/>", " alive")),
            table(row("", p(run("GT-1")), p(struck("A118.4 "), run("A118.15")))));

    assertThat(texts(document)).containsExactly("Mortar: ANSI A118.15.", "alive");
    assertThat(((Table) document.blocks().get(2)).rows().get(0).at(1).text()).isEqualTo("A118.15");
    assertThat(said(document))
        .containsExactly(
            tuple(1, null, STRUCK, "ANSI A118.4"),
            tuple(2, null, STRUCK, "Twice struck."),
            tuple(3, null, STRUCK, "Grout: ANSI A118.6."),
            tuple(4, null, STRUCK, "Kept"),
            tuple(6, "B1", STRUCK, "A118.4"));
    assertThat(document.gaps()).allMatch(g -> g.fate() == GapFate.NOT_IN_FORCE);
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  @Test
  void words_do_not_grow_together_over_struck_ones() throws IOException {
    Document document =
        read(
            p(run("A118.4"), struck(" and "), run("A118.15")),
            p(run("post"), struck("XX"), run("cured")));

    assertThat(texts(document)).containsExactly("A118.4 A118.15", "postcured");
  }

  @Test
  void tracked_deletions_are_said_and_insertions_are_in_force_and_said() throws IOException {
    Document document =
        read(
            p(
                run("Set in "),
                "<w:del><w:r><w:delText>ANSI A118.4</w:delText></w:r></w:del>",
                "<w:ins>" + run("ANSI A118.15") + "</w:ins>",
                run(".")),
            p("<w:ins>" + run("All of it new.") + "</w:ins>"),
            p("<w:moveFrom>" + run("Moved.") + "</w:moveFrom>"),
            p("<w:moveTo>" + run("Moved.") + "</w:moveTo>"),
            table(row("<w:del/>", p(run("GT-9")), p(run("Cast glass")))));

    assertThat(texts(document)).containsExactly("Set in ANSI A118.15.", "All of it new.", "Moved.");
    assertThat(document.blocks()).allMatch(b -> b instanceof Paragraph);
    String inserted = "inserted by a tracked change not yet accepted; read as in force";
    assertThat(said(document))
        .containsExactly(
            tuple(1, null, "deleted by a tracked change, not in force", "ANSI A118.4"),
            tuple(1, null, inserted + ", down to paragraph 2", "ANSI A118.15 / All of it new."),
            tuple(3, null, "moved away by a tracked change; read where they went", "Moved."),
            tuple(4, null, inserted, "Moved."),
            tuple(5, "A1", "deleted by a tracked change, not in force", "GT-9"),
            tuple(6, "B1", "deleted by a tracked change, not in force", "Cast glass"));
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  @Test
  void hidden_words_are_read_and_said_once_for_neighbours() throws IOException {
    String vanish = "<w:vanish/>";
    Document document =
        read(
            p(run("Seen "), run(vanish, "not seen")),
            p(run(vanish, "Second.")),
            p(run("Third.")),
            p(run(vanish, "Fourth.")),
            table(row("<w:hidden/>", p(run("GT-1")), p(run("Glass tile")))));

    assertThat(texts(document)).containsExactly("Seen not seen", "Second.", "Third.", "Fourth.");
    assertThat(((Table) document.blocks().get(4)).rows().get(0).cells()).hasSize(2);
    assertThat(said(document))
        .containsExactly(
            tuple(1, null, HIDDEN + ", down to paragraph 2", "not seen / Second."),
            tuple(4, null, HIDDEN + ", down to paragraph 6", "Fourth. / GT-1 / Glass tile"));
    assertThat(document.gaps()).allMatch(g -> g.fate() == GapFate.READ);
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  @Test
  void notes_stand_where_they_are_called_and_say_so() throws IOException {
    Document document =
        read(
            new WordParts()
                .part(
                    "document",
                    p(run("Mortar: ANSI A118.4"), reference("footnote", 2))
                        + p(run("Grout: ANSI A118.7"), reference("endnote", 3))
                        + table(row("", p(run("GT-1"), reference("footnote", 4))))
                        + p(run("Last.")))
                .part(
                    "footnotes",
                    "<w:footnote w:id=\"0\" w:type=\"separator\">"
                        + p(run("-"))
                        + "</w:footnote>"
                        + "<w:footnote w:id=\"2\">"
                        + p(run("In pools ANSI A118.15."))
                        + "</w:footnote><w:footnote w:id=\"4\">"
                        + p(run("Supplied by the owner."))
                        + "</w:footnote>")
                .part(
                    "endnotes", "<w:endnote w:id=\"3\">" + p(run("White only.")) + "</w:endnote>"));

    assertThat(texts(document))
        .containsExactly(
            "Mortar: ANSI A118.4",
            "In pools ANSI A118.15.",
            "Grout: ANSI A118.7",
            "White only.",
            "Supplied by the owner.",
            "Last.");
    assertThat(document.blocks().get(1).origin().place()).endsWith(", paragraph 1, footnote");
    assertThat(document.blocks().get(3).origin().part()).isEqualTo("endnote");
    assertThat(document.blocks().get(5).origin().place()).endsWith(", cell A1, footnote");
    assertThat(document.gaps()).isEmpty();
  }

  @Test
  void comments_stand_beside_the_text_and_are_said_to_be_no_requirement() throws IOException {
    Document document =
        read(
            new WordParts()
                .part(
                    "document",
                    p(run("Mortar: ANSI A118.4"), reference("comment", 0))
                        + p(run("Grout: ANSI A118.7"), reference("comment", 1)))
                .part(
                    "comments",
                    "<w:comment w:id=\"0\" w:author=\"Spec desk\">"
                        + p(run("Verify with architect"))
                        + "</w:comment><w:comment w:id=\"1\" w:author=\"Spec desk\">"
                        + "<w:p w14:paraId=\"0000000A\">"
                        + run("Epoxy?")
                        + "</w:p></w:comment><w:comment w:id=\"5\">"
                        + p(run("On nothing."))
                        + "</w:comment>")
                .part(
                    "commentsExtended", "<w15:commentEx w15:paraId=\"0000000A\" w15:done=\"1\"/>"));

    assertThat(document.blocks())
        .extracting(b -> ((Paragraph) b).text(), b -> ((Paragraph) b).region())
        .containsExactly(
            tuple("Mortar: ANSI A118.4", Region.BODY),
            tuple("Verify with architect", Region.COMMENT),
            tuple("Grout: ANSI A118.7", Region.BODY),
            tuple("On nothing.", Region.COMMENT));
    String remark = "a person's comment, no requirement; what it leaves open is open";
    assertThat(said(document))
        .containsExactly(
            tuple(1, null, remark + " (Spec desk)", "Verify with architect"),
            tuple(2, null, "a comment marked as settled, no requirement (Spec desk)", "Epoxy?"),
            tuple(null, null, remark, "On nothing."));
    assertThat(document.gaps()).allMatch(g -> g.origin().part().equals("comment"));
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  @Test
  void page_headers_are_passed_over_and_said_once() throws IOException {
    String header = p(run("SECTION 09 30 13")) + table(row("", p(run("GLASS")), p(run("TILING"))));
    Document document =
        read(
            new WordParts()
                .part("document", p(run("Body.")))
                .part("header1", header)
                .part("header2", header)
                .part("footer1", p(run("Issue 3"))));

    assertThat(document.blocks())
        .extracting(b -> ((Paragraph) b).text(), b -> b.origin().part())
        .containsExactly(
            tuple("SECTION 09 30 13", "header"),
            tuple("GLASS | TILING", "header"),
            tuple("Body.", null),
            tuple("Issue 3", "footer"));
    assertThat(said(document))
        .containsExactly(
            tuple(
                null,
                null,
                "a page header: no requirement by itself",
                "SECTION 09 30 13 / GLASS | TILING"),
            tuple(null, null, "a page footer: no requirement by itself", "Issue 3"));
    assertThat(document.status()).isEqualTo(Status.READ);
  }

  private Document read(String... body) throws IOException {
    return read(new WordParts().part("document", String.join("", body)));
  }

  private Document read(WordParts parts) throws IOException {
    Path file = parts.write(folder.resolve("spec.docx"));
    return ReadAll.of(file).get(0);
  }

  private static List<Tuple> said(Document document) {
    return document.gaps().stream()
        .map(g -> tuple(g.origin().paragraph(), g.origin().cell(), g.reason(), g.origin().text()))
        .toList();
  }

  private static List<String> texts(Document document) {
    return document.blocks().stream()
        .filter(Paragraph.class::isInstance)
        .map(b -> ((Paragraph) b).text())
        .toList();
  }
}
