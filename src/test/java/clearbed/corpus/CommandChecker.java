package clearbed.corpus;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Runs the command as a process of its own.
 *
 * @param command the program, such as {@code target/clearbed/bin/clearbed}
 * @param layers rule files laid over the set
 */
record CommandChecker(Path command, List<Path> layers) implements Checker {
  @Override
  public JsonNode check(Path folder, String rules) throws IOException {
    Path work = Files.createTempDirectory("clearbed-run");
    try {
      Path json = work.resolve("findings.json");
      run(arguments(folder, rules, work.resolve("findings.xlsx"), json), work.resolve("log.txt"));
      return new ObjectMapper().readTree(json.toFile());
    } finally {
      Folders.delete(work);
    }
  }

  private List<String> arguments(Path folder, String rules, Path workbook, Path json) {
    List<String> arguments = new ArrayList<>();
    arguments.add(command.toAbsolutePath().toString());
    arguments.addAll(List.of("check", folder.toString(), "--set", rules, "--quiet"));
    arguments.addAll(List.of("--fail-on", "never", "--output", workbook.toString()));
    arguments.addAll(List.of("--json", json.toString()));
    for (Path layer : layers) arguments.addAll(List.of("--rules", layer.toString()));
    return arguments;
  }

  private static void run(List<String> arguments, Path log) throws IOException {
    File output = log.toFile();
    Process process =
        new ProcessBuilder(arguments).redirectErrorStream(true).redirectOutput(output).start();
    try {
      int code = process.waitFor();
      if (code != 0) throw new IOException("exit code " + code + ": " + Files.readString(log));
    } catch (InterruptedException stop) {
      process.destroy();
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", stop);
    }
  }
}
