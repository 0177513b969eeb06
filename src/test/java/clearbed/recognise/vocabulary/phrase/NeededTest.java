package clearbed.recognise.vocabulary.phrase;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

public class NeededTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      value = {
        "\\bmosaics?\\b ~ mosaic",
        "mount\\w*[^.;]{0,80}(?:water|wet) ~ mount",
        "(?:manufacturer|maker|supplier)[^.;]{0,160}mortar ~ mortar",
        "(?:trowel|plaster|coat)\\w* ~ trowel,plaster,coat",
        "\\bA118\\.(?:1|4)\\b ~ a118.",
        "(?<![A-Za-z0-9])ABC(?!ware) ~ abc",
        "(?:full )?bed+ing ~ bed",
        "one|(?:two|three) ~ one,two,three",
        "(?<old>.{2,80}?) replaced by (?<now>.+) ~ ' replaced by '"
      })
  void one_of_the_words_is_in_every_text_that_is_found(String regex, String words) {
    assertThat(Needed.by(regex)).containsExactly(words.split(","));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      value = {
        "\\bC1[A-Z]{0,3}\\b ~ c1",
        "\\bR ?-?9\\b ~ 'r 9,r-9,r9,r -9'",
        "^5[57]$ ~ 55,57",
        "\\bRG\\b|CG ?2 ~ rg,cg 2,cg2",
        "(?:class )?(?-i:V) ?4\\b ~ v4,v 4",
        "\\bL\\s*/\\s*\\d ~ /",
        "_{3,} ~ _",
        "\\d+ ?° ~ °",
        "(?:4586|slip\\w*)\\b.{0,60}?(?-i:P) ?-?0 ~ 4586,slip"
      })
  void one_of_the_codes_is_in_every_text_that_is_found(String regex, String words) {
    assertThat(Needed.by(regex)).containsExactlyInAnyOrder(words.split(","));
  }

  @Test
  void a_short_code_names_nothing() {
    assertThat(Needed.of("\\bCG ?2\\b").named()).isEmpty();
    assertThat(Needed.of("\\bgrout\\w* CG ?2\\b").named()).containsExactly("grout");
  }

  @Test
  void no_form_of_an_amendment_is_looked_for_in_every_text() {
    assertThat(Checked.vocabulary().amendments())
        .isNotEmpty()
        .allSatisfy(form -> assertThat(Needed.by(form.pattern())).isNotEmpty());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      value = {
        "\\bL\\s*\\d",
        "^(?-i:A)$",
        "a|word",
        "(?:word)?",
        "(?:word){0,2}x",
        "(?i)word",
        "[a-z&&[^b]]word",
        "(word",
        "word)",
        "(?=word)",
        "\\Qword\\E",
        "[]a]word",
        "größer"
      })
  void what_is_not_plain_needs_nothing(String regex) {
    assertThat(Needed.by(regex)).isEmpty();
  }

  @Test
  void phrases_find_with_the_shortcut_what_they_find_without() {
    Phrases phrases =
        new Phrases(
            java.util.List.of("/(?:no|not) (?:local )?patch(?:es)?\\b/", "joint width"),
            new WordsHeld());
    assertThat(phrases.in("There shall be NOT Local Patches here")).isTrue();
    assertThat(phrases.in("Joints' widths: joint  WIDTHS")).isTrue();
    assertThat(phrases.in("no patching of joints")).isFalse();
  }
}
