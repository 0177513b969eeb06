package clearbed.recognise.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which letters a text explains as glass tile. */
class LegendsTest {
  private static Set<String> in(String text) {
    Set<String> out = new TreeSet<>();
    new Legends(Checked.vocabulary()).into(text, out);
    return out;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "GLS = glass tile | GLS",
        "V stands for vitreous glass mosaic | V",
        "'Glass mosaic' here and below means every tile VM | VM",
        "GT: glass tile, all colours | GT",
        "CT = ceramic tile GV = glass mosaic tile PF = paint | GV",
        "Kind: EP emulsion paint; GLS glass tile; PCL porcelain tile | GLS"
      })
  void a_legend_explains(String text, String name) {
    assertThat(in(text)).containsExactly(name);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "WALLS: glass tile",
        "'Glass mosaic' has the meaning of clause VM",
        "'Glass mosaic' means the tiles marked VM-01 and VM-02",
        "MATERIAL: GLASS TILE",
        "PT = porcelain tile beside glass tile",
        "GT = grout for glass tile",
        "Glass tile of the bar, GT:         ",
        "EP emulsion paint beside glass tile"
      })
  void other_words_explain_nothing(String text) {
    assertThat(in(text)).isEmpty();
  }
}
