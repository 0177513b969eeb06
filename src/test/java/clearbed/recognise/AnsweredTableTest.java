package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Logs of questions, whatever else their headings say. */
class AnsweredTableTest {
  @TempDir Path folder;

  @BeforeEach
  void schedule() throws IOException {
    Files.writeString(
        folder.resolve("codes.csv"),
        "Code,What,\"Size, mm (length x width x thickness)\"\n"
            + "WA-1,Cast glass tile,75 x 150 x 8\nWA-2,Fused glass mosaic,20 x 20 x 4\n");
  }

  private Checked log(String asked, String answered) throws IOException {
    return Checked.ofFiles(
        folder,
        "log.md",
        "| No. | From | "
            + asked
            + " | "
            + answered
            + " | Answered |\n|---|---|---|---|---|\n"
            + "| Q1 | Bidder | Is WA-2 25 x 25 x 4 mm? | WA-2 is 23 x 23 x 4 mm. | 4 May |\n");
  }

  @Test
  void a_remark_in_brackets_leaves_the_heading_what_it_is() throws IOException {
    Checked c = log("Question [numbered]", "Answer (binds as the contract does)");
    assertThat(c.findings("conflict")).hasSize(1);
    assertThat(c.findings("conflict").get(0).message())
        .contains("20 mm x 20 mm x 4 mm")
        .contains("23 mm x 23 mm x 4 mm")
        .doesNotContain("25 mm");
  }

  @Test
  void who_asks_and_answers_may_stand_behind() throws IOException {
    Checked c = log("Question of the bidder", "Answer by the engineer");
    assertThat(c.findings("conflict")).hasSize(1);
  }
}
