package clearbed.recognise.vocabulary.phrase;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

public class PhrasesTest {
  private static Phrases of(String... written) {
    return new Phrases(List.of(written), new WordsHeld());
  }

  @Test
  void a_text_may_begin_a_phrase_if_something_behind_it_makes_it_one() {
    Phrases phrases = of("class 50", "/use ?(?:NT|T)/", "/^grade$/");

    assertThat(List.of("class ", "Class 5", "class 50", "use", "USE N", "gra", ""))
        .allMatch(phrases::mayBegin);
    assertThat(List.of("type ", "classy ", "a class ", "class 51", "use X", "upgrade"))
        .noneMatch(phrases::mayBegin);
  }

  @Test
  void a_text_without_the_words_of_any_phrase_holds_none() {
    Phrases phrases = of("glass mosaic tile", "/glass (?:brick|block)/");

    assertThat(phrases.mayBeIn("Mosaic of marble")).isTrue();
    assertThat(phrases.mayBeIn("glass door")).isTrue();
    assertThat(phrases.mayBeIn("porcelain tile")).isFalse();
    // Part of a text that holds one.
    assertThat(phrases.mayBeIn("mosaic tile")).isTrue();
  }

  @Test
  void a_dash_is_a_phrase_of_its_own() {
    Phrases phrases = of("-", "--", "n/a");

    assertThat(List.of("-", "--", "n/a")).allMatch(phrases::matches);
    assertThat(List.of("", "-5", "a-b", "3")).noneMatch(phrases::matches);
  }
}
