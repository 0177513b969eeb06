package clearbed.recognise.schedule.cell;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.recognise.text.DecimalMark;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lengths that tell their units by being given twice. */
class BothSystemsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1/16 (1.6) | 1/16 in (1.6 mm)",
        "1/8 (3) | 1/8 in (3 mm)",
        "3/8 (10) | 3/8 in (10 mm)",
        "2 x 2 (51 x 51) | 2 x 2 in (51 x 51 mm)",
        // One side that is a slip leaves the units plain.
        "3 x 6 (76 x 125) | 3 x 6 in (76 x 125 mm)",
        "4 x 16 (102 x 406) / 3/8 | 4 x 16 x 3/8 in",
      })
  void are_told(String text, String told) {
    assertThat(BothSystems.told(text, DecimalMark.UNKNOWN)).isEqualTo(told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"1/8 (6)", "3 (4)", "2 x 2 (51)", "600 (2)", "1/16", "2 x 2 (51 x 51) / each"})
  void are_not_told_by_others(String text) {
    assertThat(BothSystems.told(text, DecimalMark.UNKNOWN)).isEqualTo(text);
  }
}
