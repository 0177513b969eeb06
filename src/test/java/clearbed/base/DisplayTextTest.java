package clearbed.base;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class DisplayTextTest {
  @Test
  void a_text_that_is_too_long_ends_in_three_points() {
    assertThat(DisplayText.shortened("  joint\n width  1/8 in ", 20))
        .isEqualTo("joint width 1/8 in");
    assertThat(DisplayText.shortened("joint width 1/8 in", 18)).isEqualTo("joint width 1/8 in");
    assertThat(DisplayText.shortened("joint width 1/8 in", 15)).isEqualTo("joint width...");
  }
}
