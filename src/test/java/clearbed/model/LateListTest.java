package clearbed.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

final class LateListTest {
  @Test
  void a_late_list_is_made_once_and_only_when_it_is_asked() {
    AtomicInteger made = new AtomicInteger();
    List<String> late =
        ThinList.late(
            () -> {
              made.incrementAndGet();
              return List.of("a", "b");
            });
    assertThat(ThinList.copyOf(late)).isSameAs(late);
    assertThat(made).hasValue(0);
    assertThat(late).containsExactly("a", "b");
    assertThat(late).hasSize(2);
    assertThat(made).hasValue(1);
  }

  @Test
  void calculations_that_are_joined_stand_behind_one_another_however_they_are_asked_for() {
    Calculations all = new Calculations();
    all.add("GT-1", 2, () -> List.of(named("a"), named("b")));
    Calculations more = new Calculations();
    more.add("GT-2", 1, () -> List.of(named("c")));
    more.add("GT-3", 2, () -> List.of(named("d"), named("e")));
    all.addAll(more);
    assertThat(all).hasSize(5);
    assertThat(all).extracting(Calculation::title).containsExactly("a", "b", "c", "d", "e");
    assertThat(all.get(3).title()).isEqualTo("d");
    assertThat(Calculations.of(java.util.Set.of("GT-3"), all))
        .extracting(Calculation::title)
        .containsExactly("d", "e");
  }

  private static Calculation named(String title) {
    return new Calculation("id", "check", "GT-1", title, List.of(), List.of());
  }
}
