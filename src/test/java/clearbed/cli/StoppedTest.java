package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class StoppedTest {
  private static final Path BOOK = Path.of("findings.xlsx");
  private static final Path JSON = Path.of("findings.json");

  @Test
  void who_stops_a_run_is_told_what_was_and_what_was_not_written() {
    try (Stopped stopped = new Stopped(new PrintWriter(new StringWriter()), BOOK, null, JSON)) {
      assertThat(stopped.words())
          .isEqualTo("stopped; nothing was written: findings.xlsx, findings.json as before");
      stopped.written(BOOK);
      assertThat(stopped.words())
          .isEqualTo("stopped; written: findings.xlsx; not written: findings.json");
      stopped.written(JSON);
      assertThat(stopped.words()).isEqualTo("stopped; written: findings.xlsx, findings.json");
    }
  }
}
