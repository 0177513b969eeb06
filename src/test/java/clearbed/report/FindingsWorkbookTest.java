package clearbed.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FindingsWorkbookTest {
  @TempDir Path folder;

  @Test
  void the_same_report_gives_the_same_bytes() throws Exception {
    Path one = folder.resolve("one.xlsx");
    Path two = folder.resolve("two.xlsx");
    FindingsWorkbook.write(DemoReport.report(), one);
    Thread.sleep(1100);
    FindingsWorkbook.write(DemoReport.report(), two);
    assertThat(two).hasSameBinaryContentAs(one);
    Files.createDirectories(Path.of("target/demo"));
    Files.copy(
        one,
        Path.of("target/demo/findings.xlsx"),
        java.nio.file.StandardCopyOption.REPLACE_EXISTING);
  }
}
