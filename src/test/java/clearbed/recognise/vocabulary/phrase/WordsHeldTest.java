package clearbed.recognise.vocabulary.phrase;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

public final class WordsHeldTest {
  private final Random random = new Random(7);

  /** Of few letters, so that words often stand in texts, in one another and over one another. */
  private String letters(int most) {
    StringBuilder out = new StringBuilder();
    for (int left = 1 + random.nextInt(most); left > 0; left--) {
      out.append("abcABC -é".charAt(random.nextInt(9)));
    }
    return out.toString();
  }

  @Test
  void a_text_holds_the_words_that_are_part_of_it_and_no_others() {
    WordsHeld words = new WordsHeld();
    List<String> known =
        IntStream.range(0, 300).mapToObj(i -> letters(6).toLowerCase(Locale.ROOT)).toList();
    int[] numbers = known.stream().mapToInt(words::number).toArray();
    for (int i = 0; i < 2_000; i++) {
      String text = letters(40);
      WordsHeld.Text held = words.in(text);
      for (int w = 0; w < numbers.length; w++) {
        boolean part = text.toLowerCase(Locale.ROOT).contains(known.get(w));
        assertThat(held.holds(numbers[w])).as("%s in %s", known.get(w), text).isEqualTo(part);
      }
    }
  }

  @Test
  void several_words_are_asked_for_at_once() {
    WordsHeld words = new WordsHeld();
    for (int i = 0; i < 100; i++) words.number("filler" + i);
    int grout = words.number("grout");
    int mortar = words.number("mortar");
    int pool = words.number("pool");
    WordsHeld.Text text = words.in("Grout of the POOL");
    assertThat(text.holdsAny(new WordsHeld.Some(IntStream.of(mortar, grout)))).isTrue();
    assertThat(text.holdsAny(new WordsHeld.Some(IntStream.of(mortar)))).isFalse();
    assertThat(text.holdsAny(new WordsHeld.Some(IntStream.of(pool)))).isTrue();
    assertThat(text.holdsAny(new WordsHeld.Some(IntStream.empty()))).isFalse();
  }

  @Test
  void a_word_has_one_number() {
    WordsHeld words = new WordsHeld();
    assertThat(words.number("tile")).isEqualTo(words.number("tile"));
    assertThat(words.number("tile")).isNotEqualTo(words.number("tiles"));
  }
}
