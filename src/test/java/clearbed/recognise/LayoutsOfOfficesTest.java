package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Small schedules by four writers who had seen neither rules, vocabulary nor code, each drawn as
 * another office draws them, with what a careful reader finds in each (src/site/accuracy.md). Every
 * second is measured, to spare time.
 */
class LayoutsOfOfficesTest {
  private static final int EVERY = 2;

  /** The attributes, or the beginnings of their names, under which a fact may be held. */
  private static final Map<String, String> HELD =
      Map.ofEntries(
          Map.entry("size", "tile.size"),
          Map.entry("thickness", "tile.thickness"),
          Map.entry("clarity", "tile.translucency"),
          Map.entry("backing", "tile.backing"),
          Map.entry("mounting", "tile.mounting"),
          Map.entry("surface", "location.surface"),
          Map.entry("room", "location.room"),
          Map.entry("exposure", "location.exposure"),
          Map.entry("substrate", "substrate."),
          Map.entry("membrane", "membrane."),
          Map.entry("mortar", "mortar."),
          Map.entry("mortar colour", "mortar.colour"),
          Map.entry("grout", "grout."),
          Map.entry("grout colour", "grout.colour"),
          Map.entry("joint", "grout.width"),
          Map.entry("sealant", "sealant."),
          Map.entry("movement spacing", "movement.spacing"),
          Map.entry("movement width", "movement.width"));

  private static final Map<String, byte[]> FILES = new LinkedHashMap<>();

  @TempDir Path folder;

  @BeforeAll
  static void unpack() throws IOException {
    for (String name : List.of("layouts-2026-12-01.zip", "layouts-2026-12-01-b.zip"))
      try (InputStream in = LayoutsOfOfficesTest.class.getResourceAsStream("/unseen/" + name);
          ZipInputStream zip = new ZipInputStream(in)) {
        for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry())
          FILES.put(entry.getName(), zip.readAllBytes());
      }
  }

  @ParameterizedTest
  @CsvSource({"LA1, 90, 1", "LA2, 75, 1", "LB1, 79, 1", "LB2, 76, 5", "LC1, 61, 4", "LC2, 63, 1"})
  void as_many_facts_are_read_as_are_published(String writer, int percent, int traps)
      throws IOException {
    JsonNode truth = new ObjectMapper().readTree(FILES.get(writer + "/truth.json"));
    List<JsonNode> layouts = new ArrayList<>();
    truth.forEach(layouts::add);
    int facts = 0;
    int right = 0;
    int wrong = 0;
    int taken = 0;
    for (int i = 0; i < layouts.size(); i += EVERY) {
      JsonNode layout = layouts.get(i);
      Checked checked = read(writer, layout);
      for (JsonNode entry : layout.get("entries")) {
        List<Entry> found = found(checked, entry.get("tag").asText());
        boolean glass = found.stream().anyMatch(Entry::glass);
        if (!entry.get("glass").asBoolean() && glass) taken++;
        if (!entry.has("facts")) continue;
        for (Map.Entry<String, JsonNode> fact : entry.get("facts").properties()) {
          for (JsonNode words : fact.getValue()) {
            if (!HELD.containsKey(fact.getKey())) continue;
            facts++;
            if (says(found, fact.getKey(), words.asText())) right++;
          }
        }
      }
      for (JsonNode trap : layout.path("mustNot")) {
        String name = trap.get("name").asText();
        List<Entry> found = found(checked, trap.get("tag").asText());
        if (HELD.containsKey(name) && falls(found, name, trap.get("text").asText())) wrong++;
      }
    }
    assertThat(100 * right / facts).as(writer + ": facts read, %").isGreaterThanOrEqualTo(percent);
    assertThat(wrong).as(writer + ": facts of other tiles").isLessThanOrEqualTo(traps);
    assertThat(taken).as(writer + ": others taken for glass tile").isLessThanOrEqualTo(1);
  }

  private Checked read(String writer, JsonNode layout) throws IOException {
    String file = layout.get("file").asText();
    Path own = Files.createDirectories(folder.resolve(file.replace('.', '-')));
    Files.write(own.resolve(file), FILES.get(writer + "/" + file));
    return Checked.taught(own);
  }

  private static List<Entry> found(Checked checked, String tag) {
    return checked.project().entries().stream()
        .filter(e -> words(e.tag()).equals(words(tag)))
        .toList();
  }

  private static boolean says(List<Entry> entries, String name, String fact) {
    return entries.stream()
        .flatMap(e -> e.values().stream())
        .filter(v -> v.attribute().startsWith(HELD.get(name)))
        .anyMatch(v -> near(fact, v.asWritten()) || near(fact, v.origin().text()));
  }

  private static boolean falls(List<Entry> entries, String name, String text) {
    return entries.stream()
        .flatMap(e -> e.values().stream())
        .filter(v -> v.attribute().startsWith(HELD.get(name)) && !v.excluded())
        .map(Value::asWritten)
        .anyMatch(w -> words(w).contains(words(text)) || words(text).contains(words(w)));
  }

  /** The words of one stand in the other, or most of them do. */
  private static boolean near(String fact, String written) {
    String a = words(fact);
    String b = words(written == null ? "" : written);
    if (a.isEmpty() || b.isEmpty()) return false;
    if (a.contains(b) || b.contains(a)) return true;
    List<String> of = Arrays.asList(a.split(" "));
    List<String> in = Arrays.asList(b.split(" "));
    return of.stream().distinct().filter(in::contains).count() * 5 >= of.size() * 3L;
  }

  private static String words(String text) {
    return text.toLowerCase(Locale.ROOT)
        .replace('\u00d7', 'x')
        .replaceAll("[^a-z0-9./]+", " ")
        .strip();
  }
}
