package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What logs of questions and tables of sealants say of tiles that others schedule. */
class LogsAndTablesOfPartsTest {
  @TempDir Path folder;

  @BeforeEach
  void schedule() throws IOException {
    Files.writeString(
        folder.resolve("tiles.csv"),
        "Tag,Glass tile,Place,Sealant\nNB-1,Cast glass mosaic,Bar front,SL-1\n"
            + "NB-2,Fused glass mosaic,Spa shower floor,SL-2\n");
  }

  private Checked with(String name, String text) throws IOException {
    return Checked.ofFiles(folder, name, text);
  }

  @Test
  void an_answer_that_names_glass_tile_nobody_schedules_makes_an_entry() throws IOException {
    Checked c =
        with(
            "log.csv",
            "No.,Question,Answer\n1,Which tile has the bench?,\"No. Benches are glass tile NB-9.\"\n"
                + "2,Is NB-7 dropped?,There is no such mark.\n"
                + "3,Is the ledge porcelain?,\"Yes, porcelain NB-30.\"\n");
    assertThat(c.project().glass())
        .extracting(Entry::tag)
        .containsExactlyInAnyOrder("NB-1", "NB-2", "NB-9");
  }

  @Test
  void class_and_use_beside_a_mark_of_sealant_are_of_the_sealant() throws IOException {
    Checked c =
        with(
            "07 92 00.md",
            "# SECTION 07 92 00 JOINT SEALANTS\n\n## 2.01 SEALANTS FOR TILE WORK\n\n"
                + "| Sealant | For | Grade | Class | Uses |\n|---|---|---|---|---|\n"
                + "| SL-1 | Tile walls inside | S / NS | 25 | NT, G |\n"
                + "| SL-2 | Tile floors, shower floors; urethane | M / P | 50 | T, G |\n");
    assertThat(c.governing("NB-2", "sealant.use")).contains("T");
    assertThat(c.governing("NB-2", "sealant.class")).contains("50");
    assertThat(c.governing("NB-1", "sealant.class")).contains("25");
  }

  @Test
  void instructions_may_be_of_several_works() throws IOException {
    Checked c =
        with(
            "09 30 20.md",
            "# SECTION 09 30 20 GLASS TILING\n\n## 1.03 SUBMITTALS\n\n"
                + "A. The tile manufacturer's printed setting, cutting and care instructions.\n");
    assertThat(c.findings("instructions")).isEmpty();
  }

  @Test
  void what_a_table_measures_stands_over_the_names_of_its_rows() throws IOException {
    Checked c =
        with(
            "09 30 20.md",
            "# SECTION 09 30 20 GLASS TILING\n\n## 3.05 PROTECTION\n\n"
                + "| Waiting time | Cement mortar | Epoxy mortar |\n|---|---|---|\n"
                + "| setting to grouting | 48 h | 24 h |\n"
                + "| setting to light foot traffic | 72 h | 48 h |\n");
    assertThat(c.governing("NB-1", "process.cureBeforeGrout")).isNotEmpty();
  }

  @Test
  void marks_of_rooms_are_no_tiles() throws IOException {
    Files.writeString(
        folder.resolve("rooms.csv"),
        "Code,Tile,Size,Room\nNB-21,Cast glass tile,3 x 6 in,\"K.03, K.04 changing\"\n"
            + "NB-22,Fused glass mosaic,1 x 1 in,K.05 bar\n");
    Checked c =
        with(
            "notes.md",
            "# SECTION 09 30 20 GLASS TILING\n\n## 2.04 NICHES\n\n"
                + "A. Niches in K.04 get glass mosaic as the wall.\n");
    assertThat(c.project().glass()).extracting(Entry::tag).doesNotContain("K.04", "K-04");
    assertThat(c.findings("unscheduled-tag")).isEmpty();
  }
}
