package clearbed.recognise.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Unit;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers in words, as legal clauses write them. */
class SpelledNumbersTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "set out every sixteen feet | 16 | FOOT",
        "after twenty-eight days | 28 | DAY",
        "wait Forty Eight hours | 48 | HOUR",
        "five-sixteenths inch deep | 0.3125 | INCH",
        "three quarters of an inch | 0.75 | INCH",
        "half an inch wide | 0.5 | INCH",
        "one and one-half inches | 1.5 | INCH",
        "ninety-five percent of the back | 95 | PERCENT",
        "four hundred psi in shear | 400 | PSI",
        "thirty-six (36) hours | 36 | HOUR",
        "one-eighth (1/8) inch | 0.125 | INCH",
        "forty degrees Fahrenheit | 40 | FAHRENHEIT",
      })
  void reads_a_number_in_words_before_its_unit(String text, double number, Unit unit) {
    List<Quantities.Found> found = Quantities.find(text);
    assertThat(found).hasSize(1);
    Content.Amount amount = (Content.Amount) found.get(0).content();
    assertThat(amount.low().number()).isCloseTo(number, within(1e-9));
    assertThat(amount.low().unit()).isEqualTo(unit);
  }

  @ParameterizedTest
  @ValueSource(strings = {"one in four tiles", "two coats", "three in each room", "someone", ""})
  void takes_no_count_for_a_figure(String text) {
    assertThat(Quantities.find(text)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "in no case narrower than one-quarter inch | AT_LEAST",
        "shall not exceed twelve feet | AT_MOST",
        "one-quarter inch wide or wider | AT_LEAST",
        "ten feet apart or closer | AT_MOST",
      })
  void words_bound_them_as_they_bound_digits(String text, Bound bound) {
    Content.Amount amount = (Content.Amount) Quantities.find(text).get(0).content();
    assertThat(amount.bound()).isEqualTo(bound);
  }

  @ParameterizedTest
  @ValueSource(strings = {"at least twenty-five feet, or one hundred (100) hours", "no number"})
  void the_text_keeps_its_length(String text) {
    assertThat(SpelledNumbers.inDigits(text)).hasSameSizeAs(text);
  }
}
