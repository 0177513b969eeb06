package clearbed.recognise.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where sentences of the trade end; {@code |} marks an end. */
class SentencesTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Coverage 100 %.|Face-mounted sheets: A108.16.",
        "Joints every 3 m.|Joints 6 mm wide.",
        "Provide joints at 8 ft. o.c. in exterior work.|Width: 3/8 in. min.",
        "Flat within 1/4 in. in 10 ft. and 1/16 in. in 12 in.|Patch low spots.",
        "Bond strength approx. 450 psi.|Use white mortar.",
        "Sealant per ASTM C920, Type S, Grade NS, Class 25, Use I.|Color to match grout.",
        "See Sect. 07 92 00 for sealants.|Do not use acid.",
        "MFR. TO CONFIRM IN WRITING THAT TILE IS SUITED.|SUBMIT SAMPLES.",
        "SET IN WHITE MORTAR, ANSI A118.15.|95 PERCENT COVERAGE.",
        "Comply with EN 12004-1, e.g. C2TE S1.|Allow 24 h.|Then grout.",
        "Temp. 50 to 90 deg. F during setting.|Keep dry 14 d.",
        "Cure 7 days.|21 days before filling.",
        "Use A118.4 or A118.15.|A118.3 in pools.",
        "Shear strength 2.0 N/mm2.|Tensile adhesion 1,0 N/mm2.|Reaction resin R2T."
      })
  void sentences_end_where_a_reader_ends_them(String marked) {
    List<String> wanted = List.of(marked.split("\\|"));
    String text = String.join(" ", wanted);
    assertThat(Sentences.of(text)).extracting(Sentences.Sentence::text).isEqualTo(wanted);
  }

  @Test
  void lines_that_only_the_page_broke_are_one_sentence() {
    assertThat(Sentences.of("SHALL CONFIRM IN WRITING THAT EACH GLASS TILE\nIS SUITED TO ITS USE."))
        .hasSize(1);
    assertThat(Sentences.of("GT-1\nGT-2")).hasSize(2);
    assertThat(Sentences.of("Mortar for all glass tile of the pool hall:\n- white")).hasSize(2);
  }

  @Test
  void every_character_but_blanks_is_in_a_sentence() {
    String text = "One. Two 3 m. Four\n\nfive; six! Seven (8 in.) nine";
    List<String> pieces = new ArrayList<>();
    for (Sentences.Sentence s : Sentences.of(text)) {
      assertThat(text.substring(s.start(), s.end()).replace('\n', ' '))
          .isEqualTo(s.text().replace('\n', ' '));
      pieces.add(s.text());
    }
    assertThat(String.join("", pieces).replaceAll("\\s", "")).isEqualTo(text.replaceAll("\\s", ""));
  }
}
