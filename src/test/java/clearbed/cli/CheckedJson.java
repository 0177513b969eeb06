package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The JSON that {@code check} writes for some documents, and what it says of entries. */
final class CheckedJson {
  private CheckedJson() {}

  /**
   * @param folder an empty one
   * @param files their words by their names
   */
  static JsonNode of(Path folder, Map<String, String> files) throws IOException {
    Path documents = Files.createDirectories(folder.resolve("documents"));
    for (var file : files.entrySet())
      Files.writeString(documents.resolve(file.getKey()), file.getValue());
    Path json = folder.resolve("out.json");
    Shell shell =
        Shell.run("check", documents, "-o", folder.resolve("out.xlsx"), "--json", json, "--quiet");
    assertThat(shell.code()).as(shell.err()).isLessThan(2);
    return new ObjectMapper().readTree(json.toFile());
  }

  /** The tags of glass tile. */
  static List<String> glass(JsonNode run) {
    List<String> out = new ArrayList<>();
    for (JsonNode entry : run.get("entries"))
      if (entry.get("glass").asBoolean()) out.add(entry.get("tag").asText());
    return out;
  }

  /** What an attribute of an entry is said to be. */
  static List<String> values(JsonNode run, String tag, String attribute) {
    List<String> out = new ArrayList<>();
    for (JsonNode entry : run.get("entries")) {
      if (!entry.get("tag").asText().equals(tag)) continue;
      for (JsonNode value : entry.get("values"))
        if (value.get("attribute").asText().equals(attribute)) out.add(value.get("value").asText());
    }
    return out;
  }
}
