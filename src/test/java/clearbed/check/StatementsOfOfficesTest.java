package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Statements of four writers who had seen neither rules, vocabulary nor code, each put into one
 * section in place of what it says on a check: a good one must bring no finding of that check, a
 * bad one must (src/site/accuracy.md). Every third is measured, to spare time.
 */
class StatementsOfOfficesTest {
  private static final int EVERY = 3;

  /** Which say that something stands open or against something else. */
  private static final Set<String> OF_ANY = Set.of("unresolved", "vague", "conflict");

  private static final Map<String, JsonNode> FILES = new HashMap<>();

  @TempDir Path folder;

  @BeforeAll
  static void unpack() throws IOException {
    ObjectMapper mapper = new ObjectMapper();
    String name = "/unseen/statements-2026-11-30.zip";
    try (InputStream in = StatementsOfOfficesTest.class.getResourceAsStream(name);
        ZipInputStream zip = new ZipInputStream(in)) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry())
        FILES.put(entry.getName(), mapper.readTree(zip.readAllBytes()));
    }
  }

  @ParameterizedTest
  @CsvSource({"A1, 2, 5", "A2, 3, 9", "B1, 1, 4", "B2, 6, 9"})
  void as_few_are_misread_as_are_published(String writer, int alarms, int missed)
      throws IOException {
    int falseAlarms = 0;
    int misses = 0;
    JsonNode all = FILES.get(writer + ".json");
    for (int i = 0; i < all.size(); i += EVERY) {
      JsonNode each = all.get(i);
      Checked checked = section(each);
      String check = each.get("check").asText();
      boolean found = checked.outcome().findings().stream().anyMatch(f -> isOf(f, check));
      boolean any =
          checked.outcome().findings().stream()
              .anyMatch(f -> OF_ANY.stream().anyMatch(open -> isOf(f, open)));
      if (each.get("verdict").asText().equals("good")) falseAlarms += found ? 1 : 0;
      else misses += found || any ? 0 : 1;
    }
    assertThat(falseAlarms).as(writer + ": false findings").isLessThanOrEqualTo(alarms);
    assertThat(misses).as(writer + ": missed").isLessThanOrEqualTo(missed);
  }

  private static boolean isOf(Finding f, String check) {
    return f.check().equals(check)
        && f.kind() != FindingKind.UNREAD
        && f.level().compareTo(Level.WARNING) <= 0
        && f.suppressed().isEmpty();
  }

  private Checked section(JsonNode statement) throws IOException {
    JsonNode section = FILES.get("section.json");
    StringBuilder rows = new StringBuilder();
    for (JsonNode row : section.get("rows")) {
      for (JsonNode cell : row)
        rows.append('"').append(cell.asText().replace("\"", "\"\"")).append("\",");
      rows.append('\n');
    }
    Files.writeString(folder.resolve("Tile schedule.csv"), rows.toString());
    String check = statement.get("check").asText();
    String heading = statement.get("heading").asText();
    String text = statement.get("text").asText().replace("\n", "\n\n") + "\n\n";
    boolean placed = false;
    StringBuilder out = new StringBuilder("SECTION 09 30 23 - GLASS TILING\n\n");
    for (JsonNode article : section.get("articles")) {
      out.append(article.get("heading").asText()).append("\n\n");
      for (JsonNode paragraph : article.get("paragraphs")) {
        boolean replaced = paragraph.get("checks").toString().contains('"' + check + '"');
        if (!replaced) out.append(paragraph.get("text").asText()).append("\n\n");
        else if (!placed && heading.isEmpty()) {
          out.append(text);
          placed = true;
        }
      }
    }
    String title = heading.isEmpty() ? "3.9 FURTHER REQUIREMENTS" : heading;
    if (!placed) out.append(title).append("\n\n").append(text);
    return Checked.ofFiles(folder, "093023.txt", out + "END OF SECTION\n");
  }
}
