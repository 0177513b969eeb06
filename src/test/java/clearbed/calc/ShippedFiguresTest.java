package clearbed.calc;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.base.config.PreparedTree;
import clearbed.base.config.StandardFiles;
import clearbed.calc.guideline.Expansions;
import clearbed.calc.guideline.MovementGuideline;
import java.io.IOException;
import org.junit.jupiter.api.Test;

/** Files of figures, read from what the build made of them and from their YAML. */
class ShippedFiguresTest {
  @Test
  void the_guideline_is_the_same_either_way() throws IOException {
    StandardFiles.FileSource source = StandardFiles.open("guidelines/ej171.yaml");
    assertThat(PreparedTree.of(source)).isNotNull();
    assertThat(MovementGuideline.standard())
        .usingRecursiveComparison()
        .isEqualTo(MovementGuideline.read(source.name(), source.bytes()));
  }

  @Test
  void the_table_of_expansions_is_the_same_either_way() throws IOException {
    StandardFiles.FileSource source = StandardFiles.open("guidelines/expansion.yaml");
    assertThat(PreparedTree.of(source)).isNotNull();
    assertThat(Expansions.standard())
        .usingRecursiveComparison()
        .isEqualTo(Expansions.read(source.name(), source.bytes()));
  }
}
