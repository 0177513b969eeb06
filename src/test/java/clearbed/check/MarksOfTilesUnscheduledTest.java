package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Finding;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A mark that no schedule has is a tile's where the words beside it, or its letters, say so. */
class MarksOfTilesUnscheduledTest {
  @TempDir Path folder;

  private List<Finding> of(String line) throws IOException {
    Files.writeString(
        folder.resolve("bill.csv"),
        "Code,What,Size\nPW-1,Cast glass tile,3 x 6 in\nPW-2,Fused glass mosaic,1 x 1 in\n"
            + "PW-3,Fused glass mosaic,1 x 1 in\nPW-7,Travertine coping,12 x 24 in\n");
    Files.writeString(folder.resolve("minutes.txt"), "Minutes of the meeting\n\n" + line + "\n");
    return Checked.of(folder).findings("unscheduled-tag");
  }

  @Test
  void a_tile_is_missed_though_others_share_its_letters() throws IOException {
    assertThat(of("1. Front of the bench: tile with PW-4, as the walls."))
        .extracting(Finding::tags)
        .containsExactly(List.of("PW-4"));
  }

  @Test
  void a_coping_with_the_letters_of_tiles_is_none() throws IOException {
    assertThat(of("1. Coping PW-8 is set before the walls.")).isEmpty();
  }
}
