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

class UnitSlipFindingsTest {
  @TempDir Path folder;

  @Test
  void theConversionIsShownAndEitherFigureOffered() throws IOException {
    Finding finding = findings("Shear bond strength: 400 psi (4.0 MPa).").get(0);

    assertThat(finding.expected()).isEqualTo("400 psi (2.76 MPa) or 4 MPa (580 psi)");
    assertThat(finding.steps())
        .containsExactly("Conversion: 400 psi (2.76 MPa); stated is 4 MPa, 45 % off");
  }

  @Test
  void figuresThatAreOnlyRoundedAreNoSlip() throws IOException {
    assertThat(findings("Shear bond strength: 400 psi (2.76 MPa).")).isEmpty();
    assertThat(findings("Joints 1/4 in (6 mm) wide.")).isEmpty();
  }

  private List<Finding> findings(String words) throws IOException {
    Files.writeString(
        folder.resolve("spec.txt"),
        """
        SECTION 09 30 00
        TILING
        PART 2 - PRODUCTS
        2.1 GLASS TILE
        A. GT-1: glass tile, 4 by 4 in.
        2.2 MORTAR
        A. %s
        """
            .formatted(words));
    return Checked.of(folder).findings("unit-slip");
  }
}
