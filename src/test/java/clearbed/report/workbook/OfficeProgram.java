package clearbed.report.workbook;

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
    return save(workbook, "xlsx:Calc MS Excel 2007 XML", workbook);
  }

  /** Opens a Word file and saves it; false when there is no such program. */
  public static boolean openAndSaveWord(Path word) throws IOException, InterruptedException {
    return save(word, "docx:MS Word 2007 XML", word);
  }

  /** Saves a document beside it in another format, given by its extension. */
  public static void convert(Path file, String format) throws IOException, InterruptedException {
    String name = file.getFileName().toString();
    String saved = name.substring(0, name.lastIndexOf('.') + 1) + format;
    save(file, format, file.resolveSibling(saved));
  }

  private static boolean save(Path file, String format, Path target)
      throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("office");
    Process process;
    try {
      process = start(file, format, folder);
    } catch (IOException notInstalled) {
      return false;
    }
    if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) process.destroyForcibly();
    Path saved = folder.resolve(target.getFileName());
    if (!Files.exists(saved)) {
      throw new IOException("saved nothing: " + Files.readString(folder.resolve("log")));
    }
    Files.move(saved, target, StandardCopyOption.REPLACE_EXISTING);
    return true;
  }

  private static Process start(Path file, String format, Path folder) throws IOException {
    return new ProcessBuilder(
            "soffice",
            // A profile of its own: two runs of one profile wait for each other.
            "-env:UserInstallation=" + folder.resolve("profile").toUri(),
            "--headless",
            "--convert-to",
            format,
            "--outdir",
            folder.toString(),
            file.toString())
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("log").toFile())
        .start();
  }
}
