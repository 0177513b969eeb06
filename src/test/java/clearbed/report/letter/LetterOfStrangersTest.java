package clearbed.report.letter;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.report.wording.SafeText;
import org.junit.jupiter.api.Test;

/** Words of documents stay words in what is sent on. */
class LetterOfStrangersTest {
  @Test
  void what_turns_the_reading_direction_is_shown_as_a_sign() {
    assertThat(SafeText.xml("GT-1 \u202eexe.xslx\u2069 \u200f\u001b[2J"))
        .isEqualTo("GT-1 \uFFFDexe.xslx\uFFFD \uFFFD\uFFFD[2J");
    assertThat(SafeText.xml("130 \u00b0F\n\ttab \ud83d\ude00"))
        .isEqualTo("130 \u00b0F\n\ttab \ud83d\ude00");
  }

  @Test
  void addresses_are_no_links_and_read_back_as_they_were() {
    String words = "see http://x.invalid, WWW.x.invalid, a@x.invalid; 1:50";
    String written = LetterMarkdown.plain(words);
    assertThat(written).contains("http\\://", "WWW\\.x", "a\\@x").contains("1:50");
    assertThat(LetterMarkdown.unmarked(written)).isEqualTo(words);
  }
}
