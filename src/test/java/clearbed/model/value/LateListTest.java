package clearbed.model.value;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.ThinList;
import clearbed.model.report.Calculation;
import clearbed.model.report.Calculations;
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
  }

  @Test
  void of_the_first_entries_all_that_has_steps_is_taken_and_nothing_else_is_made() {
    Calculations all = new Calculations();
    all.add("GT-1", 1, () -> List.of(named("without steps")));
    all.add("GT-2", 1, () -> List.of(worked("GT-2", "c")));
    all.add(
        "GT-3",
        1,
        () -> {
          throw new IllegalStateException("nobody asked");
        });
    all.add("GT-2", 2, () -> List.of(worked("GT-2", "d"), named("without steps")));
    assertThat(Calculations.ofTheFirst(1, all))
        .extracting(Calculation::title)
        .containsExactly("c", "d");
    List<Calculation> plain =
        List.of(worked("GT-2", "c"), worked("GT-3", "e"), worked("GT-2", "d"));
    assertThat(Calculations.ofTheFirst(1, plain))
        .extracting(Calculation::title)
        .containsExactly("c", "d");
  }

  @Test
  void what_waits_for_a_figure_is_shown_with_what_has_steps() {
    Calculation lacking = Calculation.lacking("id", "check", "GT-1", "b", "area not understood");
    assertThat(Calculations.ofTheFirst(2, List.of(named("a"), lacking, worked("GT-2", "c"))))
        .extracting(Calculation::title)
        .containsExactly("b", "c");
  }

  private static Calculation worked(String tag, String title) {
    Quantity one = Quantity.of(1, Unit.MILLIMETRE);
    List<Calculation.Step> steps = List.of(new Calculation.Step("s", "S", "1", "1", one));
    return new Calculation("id", "check", tag, title, List.of(), steps);
  }

  private static Calculation named(String title) {
    return new Calculation("id", "check", "GT-1", title, List.of(), List.of());
  }
}
