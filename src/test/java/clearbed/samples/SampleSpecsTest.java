package clearbed.samples;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.cli.Main;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.openxml4j.exceptions.InvalidFormatException;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFGraphicFrame;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sample projects, as a reader of the README meets them. */
class SampleSpecsTest {
  @TempDir Path folder;

  @Test
  void everyPlantedFaultIsFoundOnceAtItsPlaceAndNothingElseIsReported() throws IOException {
    List<JsonNode> findings = serious(check("draft"));
    List<JsonNode> unexplained = new ArrayList<>(findings);
    for (JsonNode label : labels()) {
      List<JsonNode> matching = findings.stream().filter(finding -> found(label, finding)).toList();
      assertThat(matching).as(label.toString()).hasSize(1);
      assertThat(place(matching.get(0)))
          .as(label.toString())
          .contains(label.get("document").asText());
      JsonNode cell = label.get("place").path("cell");
      if (!cell.isMissingNode()) {
        assertThat(place(matching.get(0))).contains("\"cell\":\"" + cell.asText() + "\"");
      }
      unexplained.removeAll(matching);
    }
    assertThat(unexplained).isEmpty();
  }

  @Test
  void anExteriorJointThatIsStatedAndStandardAndTooNarrowGetsItsRightWidth() throws IOException {
    List<JsonNode> joints =
        serious(check("draft")).stream()
            .filter(finding -> finding.get("check").asText().equals("movement-width"))
            .toList();

    // 3/8 in is the guideline's width at 8 ft; -10 to 150 °F are 160 °F, four steps over 100 °F.
    assertThat(joints).hasSize(1);
    assertThat(joints.get(0).get("tag").asText()).isEqualTo("GT-4");
    assertThat(joints.get(0).get("found").asText()).isEqualTo("3/8 in");
    assertThat(joints.get(0).get("expected").asText()).startsWith("5/8 in (16 mm)");
    assertThat(joints.get(0).get("steps").toString())
        .contains("160 °F (88.9 K), stated: -10 to 150 °F [A-651-tile-schedule.xlsx")
        .contains("assumed: soda-lime glass, EN 572-1");
  }

  @Test
  void everyMovementEntryHasItsCurveWithTheStatedPointOnIt() throws IOException {
    check("draft");
    try (XSSFWorkbook book = new XSSFWorkbook(folder.resolve("findings.xlsx").toFile())) {
      List<String> curves = new ArrayList<>();
      for (var shape : book.getSheet("Calculations").getDrawingPatriarch().getShapes()) {
        var frame = ((XSSFGraphicFrame) shape).getCTGraphicalObjectFrame();
        curves.add(frame.getNvGraphicFramePr().getCNvPr().getName());
      }
      assertThat(curves).hasSize(8).allMatch(n -> n.endsWith("against joint spacing"));
      assertThat(curves).anyMatch(name -> name.startsWith("GT-4: Required joint width"));
      int top = row(book.getSheet("Calculations"), "GT-4: Width of a movement joint");
      int table = row(book.getSheet("Calculations"), "Joint spacing, ft", top);
      Row point = book.getSheet("Calculations").getRow(table + 9);
      assertThat(point.getCell(0).getNumericCellValue()).isEqualTo(8);
      assertThat(point.getCell(1).getNumericCellValue()).isEqualTo(0.625);
      assertThat(point.getCell(2).getNumericCellValue()).isEqualTo(0.375);
    } catch (InvalidFormatException e) {
      throw new AssertionError(e);
    }
  }

  private static int row(Sheet sheet, String label) {
    return row(sheet, label, 0);
  }

  private static int row(Sheet sheet, String label, int from) {
    for (int at = from; at <= sheet.getLastRowNum(); at++) {
      Row row = sheet.getRow(at);
      if (row != null && row.getCell(0) != null && row.getCell(0).toString().equals(label))
        return at;
    }
    throw new AssertionError("no row " + label);
  }

  @Test
  void theIssuedSetIsSilent() throws IOException {
    JsonNode report = check("issued");
    assertThat(serious(report)).isEmpty();
    long glass = 0;
    for (JsonNode entry : report.get("entries")) if (entry.get("glass").asBoolean()) glass++;
    assertThat(glass).as("silence is not for want of entries").isEqualTo(8);
  }

  private static boolean found(JsonNode label, JsonNode finding) {
    if (!finding.get("check").asText().equals(label.get("check").asText())) return false;
    JsonNode origin = finding.get("origin");
    String heading = label.get("place").path("heading").asText("");
    boolean sameHeading = heading.isEmpty() || heading.startsWith(origin.path("heading").asText());
    return tags(label).equals(tags(finding)) && sameHeading;
  }

  private static List<String> tags(JsonNode node) {
    List<String> tags = new ArrayList<>();
    node.path("tags").forEach(tag -> tags.add(tag.asText()));
    if (tags.isEmpty() && node.hasNonNull("tag")) tags.add(node.get("tag").asText());
    return tags;
  }

  /** Both sides of a conflict are places of it. */
  private static String place(JsonNode finding) {
    return finding.get("origin") + " " + finding.path("places");
  }

  private static List<JsonNode> serious(JsonNode report) {
    List<JsonNode> out = new ArrayList<>();
    for (JsonNode finding : report.get("findings")) {
      if (!finding.get("level").asText().equals("note")) out.add(finding);
    }
    return out;
  }

  private JsonNode check(String set) throws IOException {
    Path json = folder.resolve("findings.json");
    String workbook = folder.resolve("findings.xlsx").toString();
    Main.run("check", "sample-specs/" + set, "-o", workbook, "--json", json.toString(), "--quiet");
    return new ObjectMapper().readTree(json.toFile());
  }

  private static JsonNode labels() throws IOException {
    try (InputStream in = SampleSpecsTest.class.getResourceAsStream("/samples/draft-labels.json")) {
      return new ObjectMapper().readTree(in);
    }
  }
}
