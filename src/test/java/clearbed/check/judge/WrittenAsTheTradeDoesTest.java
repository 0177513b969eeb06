package clearbed.check.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WrittenAsTheTradeDoesTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a joint of 0.125 in is stated|a joint of 1/8 in is stated",
        "0.0625 in against 0.375 in|1/16 in against 3/8 in",
        "1.5 in deep, 2.0 in wide|1 1/2 in deep, 2 in wide",
        "0.0156 in|1/64 in",
        "0.3 in|0.3 in",
        "0.125 inches, 0.25 mm, 10.125 in|0.125 inches, 0.25 mm, 10 1/8 in",
        "0.05 in|0.05 in",
      })
  void inches_are_fractions_where_a_tape_has_them(String before, String after) {
    assertThat(Inches.written(before)).isEqualTo(after);
  }

  @Test
  void tags_that_follow_each_other_are_a_range_and_none_goes_unnamed() {
    assertThat(TagWords.of(List.of("GT-1"))).isEqualTo("GT-1");
    assertThat(TagWords.of(List.of("GT-1", "GT-2"))).isEqualTo("GT-1 and GT-2");
    assertThat(TagWords.of(numbered(8))).isEqualTo("GT-1 to GT-8");
    assertThat(TagWords.of(List.of("GT-1", "GT-3", "GT-5", "GT-7", "GT-9", "GT-11", "GT-13")))
        .isEqualTo("GT-1, GT-3, GT-5, GT-7, GT-9, GT-11 and GT-13");
    assertThat(TagWords.of(List.of("GT-08", "GT-09", "GT-10", "GT-10A")))
        .isEqualTo("GT-08 to GT-10 and GT-10A");
  }

  @Test
  void of_very_many_the_sentence_says_how_many_there_are() {
    List<String> odd = IntStream.range(0, 40).mapToObj(i -> "GT-" + (2 * i + 1)).toList();
    assertThat(TagWords.of(odd)).endsWith("GT-21 and others, 40 in all");
  }

  private static List<String> numbered(int to) {
    return IntStream.rangeClosed(1, to).mapToObj(i -> "GT-" + i).toList();
  }
}
