package clearbed.read.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;

class SheetGridTest {

  @Test
  void the_thread_of_a_document_that_was_given_up_ends_at_the_next_row() {
    SheetGrid grid = new SheetGrid("endless.xlsx", "Sheet");
    grid.row(1, false);
    Thread.currentThread().interrupt();
    try {
      assertThatExceptionOfType(CancellationException.class).isThrownBy(() -> grid.row(2, false));
    } finally {
      assertThat(Thread.interrupted()).isTrue();
    }
  }
}
