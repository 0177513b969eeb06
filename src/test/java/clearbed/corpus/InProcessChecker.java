package clearbed.corpus;

import clearbed.cli.Main;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Runs the command line in this process: a thousand checks without a thousand Java starts.
 *
 * @param layers rule files laid over the set
 */
record InProcessChecker(List<Path> layers) implements Checker {
  @Override
  public JsonNode check(Path folder, String rules) throws IOException {
    Path work = Files.createTempDirectory("clearbed-run");
    try {
      Path json = work.resolve("findings.json");
      List<String> arguments =
          new ArrayList<>(List.of("check", folder.toString(), "--set", rules, "--quiet"));
      arguments.addAll(List.of("--fail-on", "never", "--jobs", "1"));
      arguments.addAll(List.of("--output", work.resolve("findings.xlsx").toString()));
      arguments.addAll(List.of("--json", json.toString()));
      for (Path layer : layers) arguments.addAll(List.of("--rules", layer.toString()));
      int code = Main.run(arguments.toArray(String[]::new));
      if (code != 0) throw new IOException("exit code " + code + " for " + folder);
      return new ObjectMapper().readTree(json.toFile());
    } finally {
      Folders.delete(work);
    }
  }
}
