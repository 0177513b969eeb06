package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tests of the tile in the terms of ISO and EN standards. */
class IsoEnTest {
  private static final String FROST = "Glass tile,Entrance,Wall,\"External, frost\"";
  private static final String STEAM = "Glass tile,Hammam,Wall,Steam";
  private static final String FLOOR = "Glass tile,Changing room,Floor,Wet";
  private static final String FOYER = "Glass tile,Foyer,Wall,Dry";

  @TempDir Path folder;

  private Checked set(String row, String clause) throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"), "Ref,Material,Room,Surface,Exposure\nGT1," + row + "\n");
    Files.writeString(
        folder.resolve("09 30 00 Tiling.txt"),
        "SECTION 09 30 00 - TILING\n\nPART 2 - PRODUCTS\n\n2.1 TILES\n\nA. " + clause + "\n");
    return Checked.by("iso-en", folder);
  }

  private static String row(String place) {
    return List.of(FROST, STEAM, FLOOR, FOYER)
        .get(List.of("frost", "steam", "floor", "foyer").indexOf(place));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "freeze-thaw | frost | GT1: cast glass tile.",
        "freeze-thaw | frost | GT1: thermal shock resistance to ISO 10545-9.",
        "thermal-shock | steam | GT1: cast glass tile.",
        "thermal-shock | steam | GT1: frost resistance to BS EN ISO 10545-12.",
        "floor-slip | floor | GT1: textured surface.",
      })
  void a_test_that_no_document_names_is_asked_for(String check, String place, String clause)
      throws IOException {
    assertThat(set(row(place), clause).findings(check)).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "freeze-thaw | frost | GT1: frost resistance to BS EN ISO 10545-12, no damage.",
        "freeze-thaw | frost | GT1: frost resistant to ISO 10545-12 after 100 cycles.",
        "freeze-thaw | frost | GT1: freeze-thaw to ASTM C1026, no damage.",
        "thermal-shock | steam | GT1: thermal shock resistance to EN ISO 10545-9.",
        "thermal-shock | steam | GT1: no damage in thermal shock by ASTM C484.",
        "floor-slip | floor | GT1: pendulum value (PTV) not less than 36 wet to BS EN 16165.",
        "floor-slip | floor | GT1: wet DCOF 0.42 or more, ANSI A326.3.",
        "freeze-thaw | foyer | GT1: cast glass tile.",
        "thermal-shock | foyer | GT1: cast glass tile.",
        "floor-slip | foyer | GT1: cast glass tile.",
      })
  void a_test_that_is_named_or_not_called_for_raises_nothing(
      String check, String place, String clause) throws IOException {
    assertThat(set(row(place), clause).findings(check)).isEmpty();
  }
}
