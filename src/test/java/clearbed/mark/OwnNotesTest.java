package clearbed.mark;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OwnNotesTest {
  private static final String NOTE =
      "ERROR mortar-class (GT-1, GT-2), reopened\nThe mortar will not do.\nQuestion: Which then?";

  private static String without(String comment, String author) {
    return OwnNotes.without(OwnNotes.signed(comment, author));
  }

  @Test
  void notes_of_ours_go_and_what_others_wrote_around_them_stays() {
    assertThat(without(NOTE, "Clearbed")).isEmpty();
    assertThat(without(NOTE + "\n\nWARNING mockup\nNo mock-up.\nSee also: 2.3", "Clearbed"))
        .isEmpty();
    assertThat(without(NOTE + "\nGrey is agreed.", "Clearbed")).isEqualTo("Grey is agreed.");
    assertThat(without(NOTE + "\nGrey is agreed.", " ")).isEqualTo("Grey is agreed.");
    assertThat(without("Checked, AB\n\nClearbed:\n" + NOTE, "AB")).isEqualTo("Checked, AB");
  }

  /** A person may begin a comment as we do. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "NOTE epoxy\nUse ANSI A118.3 for GT-1.",
        "WARNING heavy",
        "ERROR mortar-class (GT-1)\nis what the program says; use ANSI A118.15",
        "Clearbed:\nsays that the mortar will not do",
        ""
      })
  void comments_of_others_stay_as_they_are(String comment) {
    assertThat(without(comment, "AB")).isEqualTo(comment);
    assertThat(without(comment, null)).isEqualTo(comment);
  }

  @Test
  void what_somebody_of_our_name_wrote_without_a_note_stays() {
    assertThat(without("Use white mortar.", "Clearbed")).isEqualTo("Use white mortar.");
  }
}
