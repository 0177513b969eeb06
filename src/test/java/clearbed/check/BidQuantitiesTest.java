package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.base.config.ConfigException;
import clearbed.model.report.Calculation;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a bidder prices, tile by tile and for all together. */
class BidQuantitiesTest {
  private static final String SCHEDULE =
      """
      Tag,Material,Size,Area,Grout Joint,Mortar,Mortar Color,Thickness
      GT-1,Glass mosaic tile,1 x 1 in,100 sq ft,1/8 in,ANSI A118.15,White,1/4 in
      GT-2,Glass mosaic tile,2 x 2 in,50 sq ft,1/8 in,ANSI A118.15,White,1/4 in
      GT-3,Glass tile,4 x 8 in,80 sq ft,1/8 in,ANSI A118.3,Gray,1/4 in
      GT-4,Glass tile,,,1/8 in,ANSI A118.15,White,1/4 in
      """;

  @TempDir Path folder;
  private Path documents;

  @BeforeEach
  void a_schedule() throws IOException {
    documents = Files.createDirectory(folder.resolve("documents"));
    Files.writeString(documents.resolve("schedule.csv"), SCHEDULE);
  }

  private Path layer(String yields) throws IOException {
    return Files.writeString(folder.resolve("office.yaml"), "layer: office\nyields:\n" + yields);
  }

  private static Calculation calculation(Checked checked, String id) {
    return checked.outcome().calculations().stream()
        .filter(one -> one.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new AssertionError(id));
  }

  private static double step(Calculation calculation, String name) {
    return calculation.steps().stream()
        .filter(one -> one.name().equals(name))
        .findFirst()
        .orElseThrow()
        .result()
        .number();
  }

  @Test
  void a_tile_without_area_or_size_is_named_in_a_row() throws IOException {
    Calculation waiting = calculation(Checked.of(documents), "quantities:GT-4");
    assertThat(waiting.steps()).isEmpty();
    assertThat(waiting.lacks()).isEqualTo("not stated: area, tile size");
  }

  @Test
  void where_nobody_states_an_area_nothing_is_taken_off() throws IOException {
    Files.writeString(documents.resolve("schedule.csv"), SCHEDULE.replaceAll("\\d+ sq ft", ""));
    assertThat(Checked.of(documents).outcome().calculations())
        .noneMatch(one -> one.check().equals("quantities"));
  }

  /**
   * By hand: 100 sq ft are 9.290 m², at 1/16 in (1.5875 mm) 14.748 l; with 10 % waste 16.223 l, at
   * 1.4 kg a litre 22.712 kg. Half of it for 50 sq ft: 34.068 kg, two bags of 50 lb (22.680 kg).
   */
  @Test
  void all_that_is_set_in_one_mortar_is_bought_together() throws IOException {
    Checked checked = Checked.of(documents);
    Calculation total = calculation(checked, "quantities:all tiles: mortar, ANSI A118.15, white");
    assertThat(total.inputs()).extracting(Calculation.Input::label).startsWith("GT-1", "GT-2");
    assertThat(step(total, "all")).isCloseTo(34.068, Assertions.within(0.01));
    assertThat(step(total, "packages")).isEqualTo(2);
    int apart =
        (int)
            (step(calculation(checked, "quantities:GT-1"), "mortar_bags")
                + step(calculation(checked, "quantities:GT-2"), "mortar_bags"));
    assertThat(apart).isEqualTo(3);
    calculation(checked, "quantities:all tiles: mortar, ANSI A118.3, grey");
  }

  @Test
  void an_office_has_its_own_yields_and_waste() throws IOException {
    Checked checked =
        Checked.of(
            documents, layer("  tileWaste: 20 %\n  mortarBag: 40 lb\n  mortarDensity: '1.2'\n"));
    Calculation one = calculation(checked, "quantities:GT-1");
    assertThat(one.inputs())
        .filteredOn(input -> input.name().equals("tile_waste"))
        .extracting(input -> input.quantity().toString(), Calculation.Input::basis)
        .containsExactly(
            Assertions.tuple("20 %", "as " + folder.resolve("office.yaml") + " gives it"));
    assertThat(step(one, "mortar_mass")).isCloseTo(22.712 * 1.2 / 1.4, Assertions.within(0.01));
    assertThat(step(one, "mortar_bags")).isEqualTo(2);
  }

  @Test
  void a_yield_that_is_none_is_refused() {
    for (String yields :
        List.of("  groutBag: heavy\n", "  mortarBag: 0 kg\n", "  cartridge: 3 kg\n"))
      Assertions.assertThatThrownBy(
              () ->
                  Checker.ruleSets(Checked.vocabulary())
                      .load("north-america", List.of(layer(yields))))
          .isInstanceOf(ConfigException.class)
          .hasMessageContaining("office.yaml:3: ")
          .hasMessageContaining("is no figure for");
  }
}
