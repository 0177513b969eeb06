package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.cli.terminal.ExitCode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SameInputSameBytesTest {
  @TempDir Path folder;

  @Test
  void everyNumberOfJobsAndEveryRunWritesTheSameBytes() throws IOException {
    Path input = Files.createDirectories(folder.resolve("input"));
    for (String set : new String[] {"draft", "issued"}) {
      try (Stream<Path> files = Files.list(Path.of("sample-specs", set))) {
        for (Path file : files.toList()) {
          Path into = Files.createDirectories(input.resolve(set));
          Files.copy(file, into.resolve(file.getFileName()));
          byte[] bytes = Files.readAllBytes(file);
          byte[] half = Arrays.copyOf(bytes, bytes.length / 2);
          Files.write(into.resolve("half of " + file.getFileName()), half);
        }
      }
    }
    Path first = run(input, 1);
    for (int jobs : new int[] {1, 2, 4, 8}) {
      Path again = run(input, jobs);
      assertThat(again.resolve("f.xlsx"))
          .as("workbook")
          .hasSameBinaryContentAs(first.resolve("f.xlsx"));
      assertThat(findings(again)).isEqualTo(findings(first));
      assertThat(again.resolve("f.sarif"))
          .as("SARIF")
          .hasSameBinaryContentAs(first.resolve("f.sarif"));
    }
  }

  /** All that is in the file but the part on the run itself, which has the time. */
  private static String findings(Path out) throws IOException {
    String text = Files.readString(out.resolve("f.json"));
    ObjectNode json = (ObjectNode) new ObjectMapper().readTree(text);
    ObjectNode run = (ObjectNode) json.get("run");
    return text.replace(run.get("startedAt").asText(), "");
  }

  private Path run(Path input, int jobs) throws IOException {
    Path out = Files.createTempDirectory(folder, "out");
    int code =
        Main.run(
            "check",
            input.toString(),
            "--jobs=" + jobs,
            "--date=2026-01-01",
            "--quiet",
            "--output=" + out.resolve("f.xlsx"),
            "--json=" + out.resolve("f.json"),
            "--sarif=" + out.resolve("f.sarif"));
    assertThat(code).isEqualTo(ExitCode.FAULT);
    return out;
  }
}
