package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A row that says there is no membrane is not answered by an article on membranes at large. */
class NoneOfItTest {
  @TempDir Path folder;

  @BeforeEach
  void section() throws IOException {
    Files.writeString(
        folder.resolve("09 30 20.md"),
        "# SECTION 09 30 20 GLASS TILING\n\n## 2.03 MEMBRANES\n\n"
            + "A. Waterproof membrane: ANSI A118.10, where the schedule calls for one.\n");
  }

  private List<String> membrane(String... cells) throws IOException {
    StringBuilder rows = new StringBuilder("Tag,Glass tile,Place,Membrane\n");
    for (int i = 0; i < cells.length; i++)
      rows.append("KW-").append(i + 1).append(",Cast glass tile,").append(cells[i]).append('\n');
    Files.writeString(folder.resolve("schedule.csv"), rows.toString());
    return Checked.of(folder).findings("membrane").stream()
        .flatMap(finding -> finding.tags().stream())
        .toList();
  }

  @Test
  void none_in_a_wet_place_is_found() throws IOException {
    assertThat(membrane("Steam room,none", "Steam room,ANSI A118.10")).containsExactly("KW-1");
    assertThat(membrane("Shower wall,\"Not required, tile is dense\"", "Shower wall,"))
        .containsExactly("KW-1");
  }

  @Test
  void none_in_a_dry_place_is_as_it_should_be() throws IOException {
    assertThat(membrane("Dry lobby wall,\"none, dry\"", "Steam room,ANSI A118.10")).isEmpty();
  }

  @Test
  void what_is_behind_a_name_that_is_not_known_is_kept_as_words() throws IOException {
    assertThat(membrane("Steam room,Brushed black coat")).isEmpty();
  }
}
