package clearbed.recognise.statement;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.recognise.statement.limit.TermReader;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How wet, hot or cold a place is, and what its description only names. */
class ExposureTermsTest {
  private static final TermReader TERMS = new TermReader(Checked.vocabulary());

  private static Set<String> exposures(String text) {
    return TERMS.in("location.exposure", text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Rest room beside the sauna; interior, dry",
        "Reading nook overlooking the pool; dry",
        "Tea bar next to the steam room, interior, dry",
      })
  void what_a_dry_place_stands_beside_does_not_wet_it(String place) {
    assertThat(exposures(place)).containsExactly("dry");
  }

  @Test
  void what_does_not_say_that_it_is_dry_is_as_wet_as_what_it_stands_beside() {
    assertThat(exposures("Bench beside the sauna")).contains("steam");
    assertThat(exposures("Wall of the sauna; the floor stays dry")).contains("steam");
  }

  @Test
  void frost_that_does_not_occur_is_none() {
    assertThat(exposures("Frost does not occur at this site.")).doesNotContain("exterior-freeze");
    assertThat(exposures("Frost is not expected here.")).doesNotContain("exterior-freeze");
    assertThat(exposures("Frost occurs at this site.")).contains("exterior-freeze");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Pool kiosk, serving front | pool",
        "Pool entrance | pool",
        "Ground floor library | floor",
        "2nd floor landing walls | floor",
      })
  void a_storey_is_no_floor_and_a_room_by_the_pool_no_pool(String place, String surface) {
    assertThat(TERMS.in("location.surface", place)).doesNotContain(surface);
    assertThat(exposures(place)).doesNotContain("submerged");
  }

  @Test
  void floors_and_pools_are_such_whatever_stands_beside_them() {
    assertThat(TERMS.in("location.surface", "Ground floor lobby, floor")).contains("floor");
    assertThat(TERMS.in("location.surface", "Pool walls and floor")).contains("pool", "floor");
    assertThat(TERMS.in("location.surface", "Front of the ticket counter")).contains("wall");
    assertThat(exposures("Pool concourse")).contains("wet");
  }
}
