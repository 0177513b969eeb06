package clearbed.read.text;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Paragraph;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where a paragraph of plain text ends. */
class TextBlocksTest {

  private static List<String> paragraphs(String text) {
    TextBlocks blocks = new TextBlocks("a.txt", false);
    blocks.add(text.lines().toList());
    return blocks.blocks().stream()
        .filter(Paragraph.class::isInstance)
        .map(b -> ((Paragraph) b).text())
        .toList();
  }

  @Test
  void lines_in_capitals_of_a_sheet_that_is_typed_in_capitals_are_no_headings() {
    assertThat(
            paragraphs(
                """
                TILE NOTES:
                1.   BEHIND TRANSLUCENT TILE: SKIM PATCH WHOLE WALL; FLATTEN
                     TROWEL RIDGES; NO VOIDS; 100 PERCENT
                     COVERAGE.
                2.   CUT GLASS WITH A WET SAW. WEAR EYE AND HAND
                     PROTECTION.
                3.   CLEAN GLASS TILE WITH NEUTRAL CLEANER. NO ACIDS OR
                     ABRASIVES.
                4.   KEEP SHOWERS DRY 14 DAYS AFTER GROUTING.
                5.   SEALANT AT TILE: ASTM C920, CLASS 25, USE NT.
                6.   GROUT NOT SOONER THAN 48 HOURS AFTER SETTING.
                """))
        .hasSize(7)
        .anySatisfy(p -> assertThat(p).contains("100 PERCENT COVERAGE."))
        .anySatisfy(p -> assertThat(p).contains("NO ACIDS OR ABRASIVES."));
  }

  @Test
  void a_heading_in_capitals_over_small_letters_stays_one() {
    assertThat(paragraphs("SETTING\n  Set tile by ANSI A108.5 and leave no\n  voids behind it."))
        .hasSize(2)
        .first()
        .isEqualTo("SETTING");
  }

  @Test
  void a_mark_in_the_margin_opens_a_paragraph_and_what_hangs_below_belongs_to_it() {
    assertThat(
            paragraphs(
                """
                WT2   Shower. Wet every day. Inside.
                WT6   Outside. Full western sun, rain, winter frosts.
                      Frost: passes the test. Sheets and dots:
                      water-resistant ones.
                """))
        .hasSize(2)
        .last()
        .satisfies(p -> assertThat(p).contains("winter frosts", "water-resistant"));
  }
}
