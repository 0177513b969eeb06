package clearbed.check.computed.entry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import clearbed.Checked;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Slopes as shares of the length; 1/4 in on 12 in is 1/48. */
class SlopeCheckTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Slope floors to drain, 1/4 in. per foot | 0.0208333",
        "Slope floors to drain 1/8\" per ft | 0.0104167",
        "falls of 1:80 to the gully | 0.0125",
        "falls of 1 in 60 to the gully | 0.0166667",
        "fall 2 % to the drain | 0.02",
        "sloped 15 mm per metre | 0.015",
        "between 1 percent and 1/4 in per foot | 0.01"
      })
  void reads_the_slope(String text, double share) {
    assertThat(SlopeCheck.slope(text, Checked.vocabulary()).orElseThrow())
        .isCloseTo(share, within(1e-6));
  }

  @ParameterizedTest
  @ValueSource(strings = {"Slope floors to drain", "membrane 1.5 mm thick below the drain"})
  void without_a_figure_nothing_is_judged(String text) {
    assertThat(SlopeCheck.slope(text, Checked.vocabulary())).isEmpty();
  }
}
