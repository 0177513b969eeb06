package clearbed.strangers;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A few of what {@link Kills} does by the hundred. */
class KilledRunTest {
  @TempDir Path folder;

  @Test
  void a_killed_run_leaves_whole_outputs_and_the_next_run_clears_up_after_it() throws Exception {
    assertThat(Kills.run(folder.resolve("kills"), 2))
        .startsWith("2 runs killed")
        .doesNotContain("FAULT");
  }
}
