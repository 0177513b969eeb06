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

/** One figure in two columns, each in its unit, has to be the same figure. */
class TwoUnitsSideBySideTest {
  @TempDir Path folder;

  private List<List<String>> conflicts(String row) throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "ID,Product,SIZE,,SHEAR BOND,,Environment\n,,mm,in,MPa,psi,\n" + row + "\n");
    return Checked.of(folder).findings("conflict").stream().map(Finding::tags).toList();
  }

  @Test
  void columns_that_agree_are_one_value() throws IOException {
    assertThat(conflicts("V-1,Glass mosaic,25.4 x 25.4,1 x 1,3.1,450,wet")).isEmpty();
  }

  @Test
  void columns_that_do_not_are_a_contradiction() throws IOException {
    assertThat(conflicts("V-1,Glass mosaic,25.4 x 25.4,1 x 1,3.1,300,wet"))
        .containsExactly(List.of("V-1"));
  }
}
