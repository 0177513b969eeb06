package clearbed.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.Iterator;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ParallelTest {
  private static final List<Integer> MANY = IntStream.range(0, 10_000).boxed().toList();

  @Test
  void results_come_in_the_order_of_the_items() {
    List<Integer> squares = MANY.stream().map(n -> n * n).toList();
    assertThat(Parallel.map(MANY, n -> n * n)).isEqualTo(squares);
    assertThat(Parallel.mapAhead(MANY, n -> n * n).toList()).isEqualTo(squares);
    assertThat(Parallel.mapAhead(List.of(), n -> n)).isEmpty();
  }

  @Test
  void no_more_than_some_results_are_computed_ahead() {
    AtomicInteger computed = new AtomicInteger();
    Iterator<Integer> results = Parallel.mapAhead(MANY, n -> computed.incrementAndGet()).iterator();
    results.next();
    assertThat(computed.get()).isBetween(1, MANY.size() / 2);
  }

  @Test
  void what_a_task_throws_is_thrown_on() {
    Runnable good = () -> {};
    Runnable bad =
        () -> {
          throw new IllegalStateException("no");
        };
    assertThatIllegalStateException()
        .isThrownBy(() -> Parallel.run(List.of(good, bad, good)))
        .withStackTraceContaining("no");
  }
}
