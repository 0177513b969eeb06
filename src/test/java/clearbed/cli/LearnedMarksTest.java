package clearbed.cli;

import static clearbed.cli.CheckedJson.values;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Marks of a form of their office's own are learned from the schedule of a set. */
class LearnedMarksTest {
  @TempDir Path folder;

  private JsonNode checked(String... notes) throws IOException {
    return CheckedJson.of(
        folder,
        Map.of(
            "schedule.csv",
            """
            Ref,Material,Size,Location
            Q-SKY,Cast glass tile,2 x 2 in,"Bar wall, dry"
            Q-FERN,Fused glass tile,2 x 4 in,"Lobby wall, dry"
            STO-GR,Granite,12 x 12 in,Lobby floor
            """,
            "notes.txt",
            String.join("\n", notes)));
  }

  @Test
  void other_documents_are_read_by_the_marks_of_the_schedule() throws IOException {
    JsonNode run =
        checked(
            "GLASS TILE NOTES",
            "",
            "1. Q-SKY: set in white mortar, ANSI A118.15.",
            "2. Q-FERN: set in gray mortar, ANSI A118.4.");
    assertThat(values(run, "Q-SKY", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(values(run, "Q-FERN", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(run.get("reading").get("taught").toString())
        .contains("Q-SKY", "the marks of the schedules");
  }
}
