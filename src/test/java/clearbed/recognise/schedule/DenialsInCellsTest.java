package clearbed.recognise.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A word right behind "not" is not what a cell says. */
class DenialsInCellsTest {
  @TempDir Path folder;

  @Test
  void floors_that_are_not_walked_on_have_no_sealant_for_traffic() throws IOException {
    Files.writeString(
        folder.resolve("tiles.csv"),
        "Code,What,Size,Underfoot\n"
            + "WA-1,Cast glass tile,3 x 6 in,Not walked on\n"
            + "WA-2,Fused glass mosaic,1 x 1 in,Never walked on\n"
            + "WA-3,Fused glass mosaic,1 x 1 in,Not trafficked\n");
    Checked c = Checked.of(folder);
    assertThat(c.governing("WA-1", "sealant.use")).isEmpty();
    assertThat(c.governing("WA-2", "sealant.use")).isEmpty();
    assertThat(c.governing("WA-3", "sealant.use")).isEmpty();
  }

  @Test
  void what_is_not_epoxy_is_no_epoxy() throws IOException {
    Files.writeString(
        folder.resolve("tiles.csv"),
        "Code,What,Size,Grout type\n"
            + "WA-1,Cast glass tile,3 x 6 in,epoxy\n"
            + "WA-2,Fused glass mosaic,1 x 1 in,\"cement, not epoxy\"\n");
    Checked c = Checked.of(folder);
    assertThat(c.governing("WA-1", "grout.type")).containsExactly("epoxy");
    assertThat(c.governing("WA-2", "grout.type")).containsExactly("cement");
  }
}
