package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A requirement that somebody is still to make satisfies nothing, and is said to be open. */
class UndecidedTest {
  @TempDir Path folder;

  private Checked set(String clauses) {
    return Checked.ofFiles(
        folder,
        "schedule.csv",
        "Tag,Material,Mounting,Room,Exposure\nKW-1,Cast glass mosaic,Mesh-backed,Spa wall,Wet\n",
        "09 30 20.md",
        "# SECTION 09 30 20 GLASS TILING\n\n## 2.03 MORTAR\n\nA. " + clauses + "\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Whether the mesh glue suits the mortar will be determined on site.",
        "The tiler judges whether the glue of the mesh is compatible with the mortar.",
        "Confirmation that mesh and mortar are compatible is still pending.",
        "Compatibility of mesh and mortar is left to the contractor.",
      })
  void is_no_requirement_that_is_met(String clause) {
    Checked c = set(clause);
    assertThat(c.governing("KW-1", "tile.mountingMortar")).isEmpty();
    assertThat(c.findings("unresolved")).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "If mesh is used, the mortar maker confirms that its glue is compatible with the mortar.",
        "No sheet is set where it has not been confirmed that mesh and mortar are compatible.",
        "The maker states whether the glue of the mesh is compatible with the mortar.",
      })
  void is_none_where_somebody_has_to_say_so(String clause) {
    Checked c = set(clause);
    assertThat(c.governing("KW-1", "tile.mountingMortar")).isNotEmpty();
    assertThat(c.findings("unresolved")).isEmpty();
  }

  @Test
  void does_not_open_what_is_required_beside_it() {
    Checked c =
        set(
            "Build a mock-up of KW-1 before the work begins. Whether the mock-up may remain will"
                + " be decided by the architect.");
    assertThat(c.governing("KW-1", "process.mockup")).isNotEmpty();
    assertThat(c.findings("unresolved")).isEmpty();
  }
}
