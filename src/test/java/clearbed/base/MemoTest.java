package clearbed.base;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class MemoTest {
  private final AtomicInteger computed = new AtomicInteger();

  private int length(Memo<String, Integer> memo, String text) {
    return memo.get(
        text,
        () -> {
          computed.incrementAndGet();
          return text.length();
        });
  }

  @Test
  void a_result_is_computed_once() {
    Memo<String, Integer> memo = Memo.ofTexts();
    for (int i = 0; i < 3; i++) assertThat(length(memo, "white mortar")).isEqualTo(12);
    assertThat(computed).hasValue(1);
  }

  @Test
  void nothing_is_kept_of_a_long_text() {
    Memo<String, Integer> memo = Memo.ofTexts();
    String clause = "word ".repeat(200);
    for (int i = 0; i < 3; i++) assertThat(length(memo, clause)).isEqualTo(1_000);
    assertThat(computed).hasValue(3);
  }

  @Test
  void what_is_asked_for_all_the_time_outlives_what_is_asked_for_once() {
    Memo<String, Integer> memo = Memo.ofTexts();
    for (int i = 0; i < 20_000; i++) {
      length(memo, "text " + i);
      length(memo, "white mortar");
    }
    assertThat(computed).hasValue(20_001);
    length(memo, "text 0");
    assertThat(computed).hasValue(20_002);
  }

  @Test
  void a_result_may_ask_for_another() {
    Memo<String, Integer> memo = Memo.ofTexts();
    int nested = memo.get("outer", () -> length(memo, "inner") + length(memo, "inner"));
    assertThat(nested).isEqualTo(10);
    assertThat(computed).hasValue(1);
  }
}
