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
    return run(documents, folder);
  }

  /**
   * The same of documents that are there.
   *
   * @param folder for what is written
   * @param more of the command line
   */
  static JsonNode run(Path documents, Path folder, Object... more) throws IOException {
    Path json = folder.resolve("out.json");
    List<Object> words = new ArrayList<>(List.of("check", documents, "--json", json, "--quiet"));
    words.addAll(List.of("-o", folder.resolve("out.xlsx")));
    words.addAll(List.of(more));
    Shell shell = Shell.run(words.toArray());
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
