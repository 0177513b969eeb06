package clearbed.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.concurrent.TimeUnit;

/** LibreOffice, where it is installed: a program other than ours that opens workbooks. */
public final class OfficeProgram {
  private static final int PATIENCE_SECONDS = 240;

  private OfficeProgram() {}

  /**
   * Opens the workbook, computes what has no result, and saves it; false when there is no such
   * program.
   *
   * @throws IOException when the program is there and saves nothing
   */
  public static boolean openAndSave(Path workbook) throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory(workbook.getParent(), "office");
    Process process;
    try {
      process = start(workbook, folder);
    } catch (IOException notInstalled) {
      return false;
    }
    if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) process.destroyForcibly();
    Path saved = folder.resolve(workbook.getFileName());
    if (!Files.exists(saved)) {
      throw new IOException("saved nothing: " + Files.readString(folder.resolve("log")));
    }
    Files.move(saved, workbook, StandardCopyOption.REPLACE_EXISTING);
    return true;
  }

  private static Process start(Path workbook, Path folder) throws IOException {
    return new ProcessBuilder(
            "soffice",
            // A profile of its own: two runs of one profile wait for each other.
            "-env:UserInstallation=" + folder.resolve("profile").toUri(),
            "--headless",
            "--convert-to",
            "xlsx:Calc MS Excel 2007 XML",
            "--outdir",
            folder.toString(),
            workbook.toString())
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("log").toFile())
        .start();
  }
}
