package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sizes that minutes, memos and notes give of a tile, which the schedule may give otherwise. */
class SizesInPassingTest {
  @TempDir Path folder;

  private boolean conflicts(String note) throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Mark,Material,Size,Room\nGT-6,Glass mosaic,2 in x 2 in,Lobby wall\n");
    Files.writeString(folder.resolve("minutes.md"), "# MINUTES\n\n" + note + "\n");
    return Checked.of(folder).findings("conflict").stream()
        .anyMatch(f -> f.attribute().equals("tile.size"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "GT-6 is 3 x 3 in. as on the sample.",
        "Sheets of GT-6 are made of 1 x 1 in. pieces.",
        "GT-6 came on Monday. The sheets hold 1 x 1 in. mosaic.",
        "Lobby wall (GT-6). Size 1 in x 3 in.",
        "Nominal size of GT-6 is confirmed as 3 by 3 inches.",
      })
  void another_size_of_the_same_tile_is_found(String note) throws IOException {
    assertThat(conflicts(note)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "GT-6 is 2 x 2 in. as on the sample.",
        "GT-6 comes in 12 x 12 in. sheets.",
        "The opening in GT-6 is 6 x 9 in.",
        "Build a mock-up of GT-6, 4 ft x 4 ft.",
        "Drains in the floor of GT-6 are 6 x 6 in. with square grates.",
      })
  void what_is_of_something_else_is_none(String note) throws IOException {
    assertThat(conflicts(note)).isFalse();
  }
}
