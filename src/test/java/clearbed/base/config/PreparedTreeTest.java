package clearbed.base.config;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.recognise.vocabulary.Vocabulary;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the build makes of the files that ship with the tool. */
class PreparedTreeTest {
  @Test
  void every_shipped_file_has_the_tree_that_its_yaml_gives() throws IOException {
    List<String> files = new ArrayList<>(Vocabulary.FILES);
    files.addAll(List.of("north-america.yaml", "iso-en.yaml"));
    for (String file : files) {
      StandardFiles.FileSource source = StandardFiles.open(file);
      assertThat(PreparedTree.of(source))
          .as(file)
          .isEqualTo(new ObjectMapper(new YAMLFactory()).readTree(source.bytes()));
    }
  }

  @Test
  void an_edited_file_has_none() throws IOException {
    StandardFiles.FileSource shipped = StandardFiles.open("iso-en.yaml");
    assertThat(PreparedTree.of(new StandardFiles.FileSource(shipped.name(), shipped.bytes(), true)))
        .isNull();
  }

  @Test
  void a_tree_of_another_text_is_not_used() throws IOException {
    byte[] other = "ruleSet: iso-en\n".getBytes(StandardCharsets.UTF_8);
    assertThat(PreparedTree.of(new StandardFiles.FileSource("rulesets/iso-en.yaml", other, false)))
        .isNull();
  }
}
