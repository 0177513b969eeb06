package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.mark.OutputKind;
import clearbed.mark.OwnMark;
import clearbed.mark.OwnOutput;
import clearbed.mark.ViewWords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of documents and findings, as a file. */
class ViewTest {
  @TempDir Path folder;

  private Path view(Path documents, Object... more) {
    Path page = folder.resolve("page.html");
    Object[] first = {
      "check", documents, "-o", folder.resolve("f.xlsx"), "--view", page, "--quiet"
    };
    Object[] all = new Object[first.length + more.length];
    System.arraycopy(first, 0, all, 0, first.length);
    System.arraycopy(more, 0, all, first.length, more.length);
    Shell shell = Shell.run(all);
    assertThat(shell.code()).as(shell.err()).isLessThan(2);
    return page;
  }

  private static int count(String text, String pattern) {
    Matcher m = Pattern.compile(pattern).matcher(text);
    int count = 0;
    while (m.find()) count++;
    return count;
  }

  @Test
  void it_shows_each_document_in_order_each_finding_once_and_who_decides() throws IOException {
    String page = Files.readString(view(Path.of("sample-specs/draft")));
    assertThat(page)
        .containsSubsequence(
            ">07-92-00-joint-sealants.txt ",
            ">09-30-00-tiling.docx ",
            ">A-650-interior-finish-notes.pdf ",
            ">A-651-tile-schedule.xlsx ",
            ">A-652-room-finish-schedule.csv ");
    int listed = count(page, "<li data-level=");
    assertThat(listed).isGreaterThan(10);
    assertThat(count(page, "<article class=\"finding ")).isEqualTo(listed);
    assertThat(page).contains(ViewWords.DECIDES).doesNotContain("Of the set as a whole");
    for (String kind : new String[] {"read", "context", "aside", "unread"})
      assertThat(count(page, "<span class=\"" + kind + "\" title=")).as(kind).isGreaterThan(3);
  }

  /** Every link leads to a place on the page, and no place has two names. */
  @Test
  void every_link_leads_somewhere_and_every_name_is_given_once() throws IOException {
    String page = Files.readString(view(Path.of("sample-specs/draft")));
    Matcher links = Pattern.compile("href=\"#([^\"]+)\"").matcher(page);
    int followed = 0;
    while (links.find()) {
      assertThat(count(page, " id=\"" + links.group(1) + "\"")).as(links.group(1)).isEqualTo(1);
      followed++;
    }
    assertThat(followed).isGreaterThan(200);
    assertThat(page).doesNotContainPattern("(?:href|src)=\"(?!#)");
  }

  @Test
  void texts_of_others_stay_texts() throws IOException {
    Path documents = Files.createDirectories(folder.resolve("documents"));
    Files.writeString(
        documents.resolve("schedule.csv"),
        "Tag,Material,Mortar,Remarks\n"
            + "GT-1,<script>document.title='gone'</script> glass mosaic,ANSI A118.4,"
            + "\"\"\" onmouseover=\"\"gone()\"\n"
            + "GT-2,<img src=x onerror=gone()> glass tile,TBD,javascript:gone()\n"
            + "GT-3,\u202Eelit ssalg\u202C glass tile,TBD,</style><style>*{display:none}\n"
            + "GT-4,${gone} @if(true) glass tile !{var x},TBD,<!-- \n");
    Files.writeString(
        documents.resolve("notes & <b>.txt"), "TILE NOTES\n\n1. </title><script>gone()</script>\n");
    String page = Files.readString(view(documents));
    assertThat(count(page, "<script")).isEqualTo(1);
    assertThat(count(page, "<style")).isEqualTo(1);
    assertThat(page)
        .contains("&lt;script&gt;document.title=")
        .contains("&lt;/style&gt;&lt;style&gt;")
        .contains("[U+202E]elit ssalg[U+202C]")
        .contains("${gone} @if(true)")
        .doesNotContain("<img", "\u202E", "</style><style>")
        .doesNotContainPattern("<[^>]* on\\w+=");
  }

  @Test
  void it_is_marked_as_ours_written_again_and_left_out_as_a_document() throws IOException {
    Path documents = Files.createDirectories(folder.resolve("documents"));
    Files.writeString(documents.resolve("schedule.csv"), "Tag,Material\nGT-1,Glass tile\n");
    Path page = view(documents);
    assertThat(OwnMark.of(page)).isEqualTo(new OwnOutput(OutputKind.VIEW, true));
    byte[] first = Files.readAllBytes(page);
    assertThat(view(documents)).hasBinaryContent(first);

    Files.copy(page, documents.resolve("page.html"));
    Files.writeString(
        documents.resolve("page-edited.html"), Files.readString(page).replace("GT-1", "GT-9"));
    assertThat(Shell.run("read", documents).out())
        .contains("page.html (html): ignored: own output, not read\n")
        .contains("page-edited.html (html): ignored: own output, not read: page of documents")
        .doesNotContain("GT-9");
  }

  @Test
  void with_a_cache_and_with_taught_words_it_is_the_same_page() throws IOException {
    Path documents = Files.createDirectories(folder.resolve("documents"));
    Files.writeString(
        documents.resolve("schedule.csv"),
        "Tag,Material,Zylk\nGT-1,Glass tile,open deck\nGT-2,Glass tile,dry\n");
    Path layer = folder.resolve("office.yaml");
    Files.writeString(
        layer,
        "layer: Office\nwords:\n  columns: {Zylk: location.exposure}\n"
            + "  terms: {open deck: location.exposure exterior}\n");
    String without = Files.readString(view(documents, "--rules", layer));
    Path cache = folder.resolve("cache");
    view(documents, "--rules", layer, "--cache", cache);
    assertThat(Files.readString(view(documents, "--rules", layer, "--cache", cache)))
        .isEqualTo(without);
    assertThat(without).contains("taught: " + layer + ", line 4");
  }
}
