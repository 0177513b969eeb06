package clearbed.recognise.schedule.column;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sides of a size in columns of their own, and what stands under the heading of a group. */
class SidesApartTest {
  @TempDir Path folder;

  private Checked schedule(String... lines) {
    return Checked.ofFiles(folder, "tiles.csv", String.join("\n", lines) + "\n");
  }

  @Test
  void two_sides_below_the_heading_of_a_size_are_one_size() {
    Checked c =
        schedule(
            "Code,Tile,\"Size, mm\",,,Light",
            ",,L,W,T,",
            "GA-1,Cast glass mosaic,30,60,5,Opaque",
            "GA-2,Fused glass tile,120,240,8,Clear");
    assertThat(c.governing("GA-1", "tile.size")).containsExactly("30 mm x 60 mm");
    assertThat(c.governing("GA-2", "tile.size")).containsExactly("120 mm x 240 mm");
    assertThat(c.governing("GA-2", "tile.thickness")).containsExactly("8 mm");
  }

  @Test
  void sides_with_short_units_need_no_heading_over_them() {
    Checked c =
        schedule(
            "Code,Tile,Length (mm),Width (mm),Thickness (mm)",
            "GA-1,Cast glass mosaic,30,60,5",
            "GA-2,Fused glass tile,120,240,8");
    assertThat(c.governing("GA-1", "tile.size")).containsExactly("30 mm x 60 mm");
  }

  @Test
  void rooms_have_lengths_and_widths_too() {
    Checked c =
        schedule(
            "Code,Tile,Length (m),Width (m)",
            "GA-1,Cast glass mosaic,3,6",
            "GA-2,Fused glass tile,12,4");
    assertThat(c.governing("GA-1", "tile.size")).isEmpty();
  }

  @Test
  void the_unit_of_a_group_parts_no_heading() {
    Checked c =
        schedule(
            "Code,Tile,\"Joint, mm\",,Light",
            ",,Width,Largest less smallest tile,",
            "GA-1,Cast glass mosaic,3,0.5,Opaque",
            "GA-2,Fused glass tile,2,0.4,Clear");
    assertThat(c.governing("GA-1", "grout.width")).containsExactly("3 mm");
  }

  @Test
  void letters_that_count_the_rows_are_no_classes() {
    Checked c =
        schedule(
            "Line,Code,Tile,Joint (mm),Finish of face",
            "A,GA-1,Cast glass mosaic,3,smooth",
            "B,GA-2,Fused glass tile,2,smooth",
            "C,GA-3,Fused glass tile,2,smooth");
    assertThat(c.governing("GA-1", "tile.rampBarefoot")).isEmpty();
  }
}
