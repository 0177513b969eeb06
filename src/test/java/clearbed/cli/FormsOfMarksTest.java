package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The share of glass tiles seen in small schedules by five writers (src/site/accuracy.md). */
class FormsOfMarksTest {
  private static final List<String> ZIPS =
      List.of("/unseen/marks-2026-11-29.zip", "/unseen/marks-2026-11-29-b.zip");

  @TempDir Path folder;

  /** What came of one writer's forty. */
  private record Seen(int glass, int of, int others) {}

  @Test
  void as_many_are_seen_as_are_published() throws IOException {
    for (String zip : ZIPS) unpack(zip);
    held("f1-", 94, 1);
    held("f2-", 76, 0);
    held("f3-", 79, 0);
    held("f4-", 71, 0);
    held("f5-", 52, 0);
  }

  private void held(String writer, int glass, int others) throws IOException {
    Seen seen = seen(writer);
    assertThat(seen.glass()).as(writer + " of " + seen.of()).isGreaterThanOrEqualTo(glass);
    assertThat(seen.others()).as(writer + " taken for glass").isLessThanOrEqualTo(others);
  }

  private void unpack(String name) throws IOException {
    try (InputStream in = getClass().getResourceAsStream(name);
        ZipInputStream zip = new ZipInputStream(in)) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        Path to = folder.resolve(entry.getName());
        if (entry.isDirectory()) continue;
        Files.createDirectories(to.getParent());
        Files.write(to, zip.readAllBytes());
      }
    }
  }

  private Seen seen(String writer) throws IOException {
    ObjectMapper mapper = new ObjectMapper();
    int glass = 0;
    int of = 0;
    int others = 0;
    try (Stream<Path> cases = Files.list(folder)) {
      for (Path each : cases.sorted().toList()) {
        if (!each.getFileName().toString().startsWith(writer)) continue;
        Path said = each.resolve("case.json");
        JsonNode wanted = mapper.readTree(said.toFile());
        Files.delete(said);
        Path json = folder.resolve("out.json");
        Path book = folder.resolve("out.xlsx");
        Shell.run(
            "check",
            each,
            "-o",
            book,
            "--json",
            json,
            "--overwrite",
            "--quiet",
            "--set",
            wanted.get("ruleSet").asText());
        Set<String> found = new HashSet<>();
        for (String tag : CheckedJson.glass(mapper.readTree(json.toFile()))) found.add(key(tag));
        of += wanted.get("glass").size();
        for (JsonNode tag : wanted.get("glass")) if (found.contains(key(tag.asText()))) glass++;
        for (JsonNode tag : wanted.get("notGlass")) if (found.contains(key(tag.asText()))) others++;
      }
    }
    return new Seen(glass, of, others);
  }

  /** Marks are the same however their parts are set apart. */
  private static String key(String tag) {
    return tag.replaceAll("[\\s\\-_.]+", "").toUpperCase(Locale.ROOT);
  }
}
