package clearbed.strangers;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.strangers.Verdict.End;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A few of what {@link Attempts} and {@link Doubling} try by the hundred. */
class StrangersTest {
  /** The kinds whose every input takes its time. */
  private static final List<String> SLOW =
      List.of("very long text", "tables wide and long", "large logs", "large rule files");

  @TempDir Path folder;

  @Test
  void every_kind_of_input_has_an_answer_and_its_neighbours_are_read_as_ever() throws IOException {
    Trial trial = new Trial(folder);
    List<Attempt> all = Attempts.all(trial.log(), trial.letters());
    assertThat(all).hasSizeGreaterThan(2_000);
    Map<String, Integer> tried = new LinkedHashMap<>();
    List<String> failed = new ArrayList<>();
    for (Attempt attempt : all) {
      if (SLOW.contains(attempt.kind()) || tried.merge(attempt.kind(), 1, Integer::sum) > 2)
        continue;
      Verdict verdict = trial.of(attempt);
      if (verdict.end() == End.FAILED)
        failed.add(attempt.kind() + ", " + attempt.name() + ": " + verdict.detail());
    }
    assertThat(failed).isEmpty();
  }

  @Test
  void words_said_twice_as_often_take_twice_the_time() throws IOException {
    Doubling doubling = new Doubling();
    List<String> pieces = Doubling.pieces(200);
    for (int i = 0; i < pieces.size(); i += 20)
      assertThat(doubling.times(pieces.get(i))).as(pieces.get(i)).isLessThan(Doubling.TWICE);
  }
}
