package clearbed.recognise.statement.code;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Document;
import clearbed.model.value.Entry;
import clearbed.recognise.text.PlainText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tags in lists and ranges, in the cells of schedules and in clauses. */
class TagListTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      value = {
        "GT-5 thru GT-8 = GT-5 GT-6 GT-7 GT-8",
        "GT-5 through GT-8 = GT-5 GT-6 GT-7 GT-8",
        "GT-5 to 8 = GT-5 GT-6 GT-7 GT-8",
        "GT-5 \u2013 GT-8 = GT-5 GT-6 GT-7 GT-8",
        "GT-5\u2013GT-8 = GT-5 GT-6 GT-7 GT-8",
        "GT-5\u20138 = GT-5 GT-6 GT-7 GT-8",
        "GT-5 - GT-8 = GT-5 GT-6 GT-7 GT-8",
        "GT-5...8 = GT-5 GT-6 GT-7 GT-8",
        "GT-5 \u2026 GT-8 = GT-5 GT-6 GT-7 GT-8",
        "GT5 thru GT8 = GT5 GT6 GT7 GT8",
        "GT-09 to GT-11 = GT-09 GT-10 GT-11",
        "GT-5/6/7 = GT-5 GT-6 GT-7",
        "'GT-5, 6 & 7' = GT-5 GT-6 GT-7",
        "'GT-5, 6, and 7' = GT-5 GT-6 GT-7",
        "'GT-05, -07, -12' = GT-05 GT-07 GT-12",
        "GT-5A-C = GT-5A GT-5B GT-5C",
        "GT-5A thru GT-5C = GT-5A GT-5B GT-5C",
        "GT-5A/B/D = GT-5A GT-5B GT-5D",
        "GL-W1 to 3 = GL-W1 GL-W2 GL-W3",
        "GT-A to GT-C = GT-A GT-B GT-C",
        "'GT-1, GT-3 thru GT-5; CT-2' = GT-1 GT-3 GT-4 GT-5 CT-2",
        "GT-1 and GT-2 = GT-1 GT-2",
        "GT-5-1 = GT-5-1",
        "GT-1.2 = GT-1.2",
        "'LH.G1, LH.G2' = LH.G1 LH.G2",
        "V.01 = V.01",
      })
  void the_tags_of_a_cell_are_spelt_out(String cell, String tags) throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Tag,Material,Mortar\n\"%s\",Glass tile,ANSI A118.15\n".formatted(cell));

    Checked checked = Checked.of(folder);

    assertThat(checked.project().glass())
        .extracting(Entry::tag)
        .containsExactlyInAnyOrder(tags.split(" "));
    for (String tag : tags.split(" ")) {
      assertThat(checked.governing(tag, "mortar.standard")).containsExactly("ANSI A118.15");
    }
    assertThat(checked.documents().get(0).gaps()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      value = {
        "Set GT-5 thru GT-8 in epoxy. = GT-5 GT-6 GT-7 GT-8",
        "Tiles GT-5 to 8 shall be set level. = GT-5 GT-6 GT-7 GT-8",
        "GT-5-8: white mortar = GT-5 GT-6 GT-7 GT-8",
        "GT-5...8: white mortar = GT-5 GT-6 GT-7 GT-8",
        "'Tiles GT-5, 6 & 7 shall be set level.' = GT-5 GT-6 GT-7",
        "'Set GT-5/6/7.' = GT-5 GT-6 GT-7",
        "'Set GT-05, -07 and -08 with white mortar.' = GT-05 GT-07 GT-08",
        "'Lay GT-5/-6/-7.' = GT-5 GT-6 GT-7",
        "'Keep GT-05, -10 to 60 °C.' = GT-05",
        "'GT-5A-C, on walls' = GT-5A GT-5B GT-5C",
        "'GT-1, 2 coats of primer' = GT-1",
        "'GT-1, 3 mm joints' = GT-1",
        "'GT-1 and 2 in. mosaics' = GT-1",
        "'GT-1, 4 by 4 in' = GT-1",
        "'GT-1, 1/2 in' = GT-1",
        "'GT-1 - 3 coats' = GT-1",
        "'GT-1, 2 to 4 mm' = GT-1",
        "'Seal GT-1 to 3 in. above the floor' = GT-1",
        "'GT-1, GT-2 and CT-4' = CT-4 GT-1 GT-2",
        "'GT-4, 3 and 2 are void' = GT-4",
        "'GT-2 50 to 130 F; GT-5 -10 to 140 F' = GT-2 GT-5",
        "'Set GT-1\n2. Grout' = GT-1",
        "'LH.G1 and LH.G2 get white mortar' = LH.G1 LH.G2",
        "'GT-1 to a DCOF 0,36 wet' = GT-1",
        "'Seal behind GT-1 for W2-I' = GT-1",
      })
  void figures_behind_a_tag_are_tags_only_where_they_count_nothing(String text, String tags) {
    assertThat(TagFinder.tags(PlainText.of(text.replace("\\n", "\n"))))
        .containsExactly(tags.split(" "));
  }

  @Test
  void a_clause_on_a_range_speaks_for_each_of_its_tags() throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Tag,Material\nGT-5 thru GT-7,Glass tile\nGT-9,Glass tile\n");
    Files.writeString(
        folder.resolve("093013.txt"),
        """
        SECTION 09 30 13 - GLASS TILING
        PART 2 - PRODUCTS
        2.1 MORTAR
        A. GT-5 thru GT-7: mortar ANSI A118.15.
        B. GT-9: mortar ANSI A118.4.
        """);

    Checked checked = Checked.of(folder);

    for (String tag : List.of("GT-5", "GT-6", "GT-7")) {
      assertThat(checked.governing(tag, "mortar.standard")).containsExactly("ANSI A118.15");
    }
    assertThat(checked.governing("GT-9", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(TagFinder.firstTags("GT-5 thru GT-7: cast glass tile").tags()).contains("GT-6");
  }

  @Test
  void absurd_ranges_are_read_by_their_ends_and_said() throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"), "Tag,Material\nGT-1 thru GT-500,Glass tile\n");
    Files.writeString(
        folder.resolve("093013.txt"),
        "SECTION 09 30 13 - GLASS TILING\n2.1 MORTAR\nA. GT-1 to GT-500: ANSI A118.15.\n");

    Checked checked = Checked.of(folder);

    assertThat(checked.project().glass()).extracting(Entry::tag).containsExactly("GT-1", "GT-500");
    assertThat(checked.project().facts().stream().flatMap(f -> f.gaps().stream()))
        .filteredOn(Document.Gap::isUnread)
        .extracting(Document.Gap::reason)
        .hasSize(2)
        .allMatch(reason -> reason.contains("is not spelt out: it has more than 60 tags"));
  }

  @Test
  void very_long_lists_take_no_more_than_their_length() {
    StringBuilder text = new StringBuilder("Set GT-1");
    for (int i = 2; i < 20_000; i++) text.append(", ").append(i % 9_000);
    StringBuilder full = new StringBuilder("Set");
    for (int i = 2; i < 20_000; i++) full.append(" GT-").append(i % 900).append(',');

    Assertions.assertTimeoutPreemptively(
        Duration.ofSeconds(20),
        () -> {
          TagFinder.tags(text.toString());
          TagFinder.tags(full.toString());
          TagList.inCell(text.substring(4));
        });
  }
}
