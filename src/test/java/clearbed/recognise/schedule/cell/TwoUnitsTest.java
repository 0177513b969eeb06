package clearbed.recognise.schedule.cell;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Unit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Headings with two units, and figures in both below them. */
class TwoUnitsTest {
  @TempDir Path folder;

  @Test
  void a_heading_has_two_units_of_one_kind() {
    assertThat(TwoUnits.of("Joint, in. (mm)")).isEqualTo(new TwoUnits(Unit.INCH, Unit.MILLIMETRE));
    assertThat(TwoUnits.of("Field, max. m [ft]")).isEqualTo(new TwoUnits(Unit.METRE, Unit.FOOT));
    assertThat(TwoUnits.of("Joint, mm")).isNull();
    assertThat(TwoUnits.of("Bond (psi)")).isNull();
    assertThat(TwoUnits.of("Made in (country)")).isNull();
  }

  @Test
  void each_figure_gets_its_own() {
    TwoUnits pair = TwoUnits.of("Joint, in. (mm)");
    assertThat(pair.spelt("1/8 (3)")).isEqualTo("1/8 in (3 mm)");
    assertThat(pair.spelt("2 x 4 (51 x 102)")).isEqualTo("2 x 4 in (51 x 102 mm)");
    assertThat(pair.spelt("see note (3)")).isEqualTo("see note (3)");
    assertThat(pair.spelt("3/16")).isEqualTo("3/16");
  }

  @Test
  void columns_of_them_are_told_and_read() throws IOException {
    Files.writeString(
        folder.resolve("tiles.csv"),
        "Tag,Glass tile,\"Grout joint, in. (mm)\",\"Movement joints, max. ft (m)\",\"Movement joint width, in. (mm)\"\n"
            + "NB-1,Cast glass mosaic,1/8 (3),12 (3.7),3/8 (10)\n"
            + "NB-2,Fused glass mosaic,1/16 (1.6),20 (6.1),1/4 (6)\n"
            + "NB-3,Fused glass mosaic,1/16,8 (2.4),1/4 (6)\n");
    Checked c = Checked.of(folder);
    assertThat(c.governing("NB-1", "grout.width")).contains("0.125 in");
    assertThat(c.governing("NB-3", "grout.width")).containsExactly("0.0625 in");
    assertThat(c.governing("NB-2", "movement.spacing")).contains("20 ft");
    assertThat(c.governing("NB-1", "movement.width")).contains("0.375 in");
  }
}
