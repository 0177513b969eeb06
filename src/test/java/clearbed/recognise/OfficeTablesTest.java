package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Forty tables in the habits of forty offices: no step back from what is reached. */
class OfficeTablesTest {
  private static final double RIGHT = 0.88;
  private static final double WRONG = 0.01;

  private static OfficeTables.Result result;

  @BeforeAll
  static void measure() throws IOException {
    result = OfficeTables.of(Path.of("src/test/resources/tables/offices"));
  }

  @Test
  void most_columns_are_given_a_meaning_that_their_writer_would_give_them() {
    assertThat(result.all().share(result.all().right()))
        .as(String.join("\n", result.lines()))
        .isGreaterThanOrEqualTo(RIGHT);
  }

  @Test
  void next_to_none_is_given_another() {
    assertThat(result.all().share(result.all().wrong()))
        .as(String.join("\n", result.lines()))
        .isLessThanOrEqualTo(WRONG);
  }

  @Test
  void none_is_dropped_in_silence() {
    assertThat(result.all().dropped()).as(String.join("\n", result.lines())).isZero();
  }

  @Test
  void the_columns_of_nothing_that_is_asked_for_are_left_alone() {
    assertThat(result.all().leftAlone()).isGreaterThanOrEqualTo(55);
  }
}
