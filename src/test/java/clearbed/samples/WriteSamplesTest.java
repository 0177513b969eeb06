package clearbed.samples;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.apache.poi.ss.util.CellReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class WriteSamplesTest {
  private static final Path FOLDER = Path.of("sample-specs");
  private static final Map<String, byte[]> SAMPLES = Samples.all();

  static Stream<String> files() {
    return SAMPLES.keySet().stream();
  }

  @ParameterizedTest
  @MethodSource("files")
  void theCommittedFileIsWhatTheGeneratorWrites(String name) throws IOException {
    byte[] committed = Files.readAllBytes(FOLDER.resolve(name));
    // A boolean, because a difference of bytes is no help to a reader.
    assertThat(Arrays.equals(committed, SAMPLES.get(name)))
        .as("run clearbed.samples.WriteSamples after editing a sample")
        .isTrue();
  }

  // Written by hand.
  private static final Set<String> BESIDE =
      Set.of("README.md", ".gitattributes", "office-layer.yaml");

  @Test
  void nothingElseIsCommittedBesideTheSamples() throws IOException {
    try (Stream<Path> found = Files.walk(FOLDER)) {
      Set<String> names =
          found
              .filter(Files::isRegularFile)
              .map(path -> FOLDER.relativize(path).toString().replace('\\', '/'))
              .filter(name -> !BESIDE.contains(name))
              .collect(Collectors.toCollection(TreeSet::new));
      assertThat(names).isEqualTo(new TreeSet<>(SAMPLES.keySet()));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "P14,A118.1",
    "Q12,300",
    "R8,Gray",
    "E12,''",
    "F15,Metallic",
    "V11,3/8",
    "T9,TBD",
    "U14,1/16"
  })
  void aLabelPointsAtTheCellThatHoldsTheFault(String address, String text) throws IOException {
    assertThat(labelledCells()).contains(address);
    byte[] bytes = SAMPLES.get("draft/A-651-tile-schedule.xlsx");
    try (Workbook book = WorkbookFactory.create(new ByteArrayInputStream(bytes))) {
      CellReference place = new CellReference(address);
      var cell = book.getSheetAt(0).getRow(place.getRow()).getCell(place.getCol());
      assertThat(new DataFormatter().formatCellValue(cell)).isEqualTo(text);
    }
  }

  @Test
  void everyLabelNamesASampleFile() throws IOException {
    for (JsonNode label : labels()) {
      assertThat(SAMPLES).containsKey("draft/" + label.path("document").asText());
      assertThat(label.path("what").asText()).isNotBlank();
    }
  }

  private static Set<String> labelledCells() throws IOException {
    Set<String> cells = new TreeSet<>();
    for (JsonNode label : labels()) {
      cells.add(label.path("place").path("cell").asText());
      for (JsonNode also : label.path("also")) cells.add(also.path("place").path("cell").asText());
    }
    return cells;
  }

  private static JsonNode labels() throws IOException {
    try (InputStream in =
        WriteSamplesTest.class.getResourceAsStream("/samples/draft-labels.json")) {
      return new ObjectMapper().readTree(in);
    }
  }
}
