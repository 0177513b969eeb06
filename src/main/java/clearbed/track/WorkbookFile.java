package clearbed.track;

import clearbed.report.FindingsWorkbook;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.poifs.filesystem.FileMagic;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Opens a findings workbook of ours from its bytes, or says in one line why not. */
final class WorkbookFile {
  /**
   * Memory for a byte of sheet XML; 22 MB were carried in 512 MiB, 43 MB were not (measured on
   * workbooks of 5,000 and 10,000 findings).
   */
  private static final long MEMORY_PER_BYTE = 14;

  private WorkbookFile() {}

  static byte[] bytes(Path file) throws RefusedWorkbook {
    refuseOpenElsewhere(file);
    if (!Files.exists(file)) throw refused(file, "there is no such file");
    if (!Files.isRegularFile(file)) throw refused(file, "it is not a file");
    try {
      return Files.readAllBytes(file);
    } catch (IOException wrong) {
      throw new RefusedWorkbook(
          text(file, "it cannot be read (" + wrong.getMessage() + "); is it open elsewhere?"),
          wrong);
    }
  }

  static XSSFWorkbook open(Path file, byte[] bytes) throws RefusedWorkbook {
    refuseOtherFormats(file, bytes);
    refuseTooLarge(file, Runtime.getRuntime().maxMemory());
    XSSFWorkbook book = parse(file, bytes);
    String version = mark(book);
    if (version.isEmpty()) {
      throw refused(file, "it is a workbook, but not findings that clearbed wrote");
    }
    if (!version.equals(FindingsWorkbook.FORMAT)) {
      throw refused(file, "its layout is version " + version + "; use the clearbed that wrote it");
    }
    return book;
  }

  /**
   * A workbook that people work in is held in memory whole.
   *
   * @param memory bytes that the program may use
   */
  static void refuseTooLarge(Path file, long memory) throws RefusedWorkbook {
    long size = sheetBytes(file);
    if (size * MEMORY_PER_BYTE <= memory) return;
    long wanted = size * MEMORY_PER_BYTE / 1_000_000 + 100;
    throw refused(
        file,
        "it holds too much for the memory given; start with CLEARBED_JAVA_OPTS=-Xmx"
            + wanted
            + "m");
  }

  /** Unpacked size of the sheets; 0 for a file that is no zip, which is refused elsewhere. */
  private static long sheetBytes(Path file) {
    try (ZipFile zip = new ZipFile(file.toFile())) {
      return zip.stream()
          .filter(entry -> entry.getName().startsWith("xl/worksheets/"))
          .mapToLong(ZipEntry::getSize)
          .sum();
    } catch (IOException damaged) {
      return 0;
    }
  }

  private static XSSFWorkbook parse(Path file, byte[] bytes) throws RefusedWorkbook {
    try {
      return new XSSFWorkbook(new ByteArrayInputStream(bytes));
    } catch (IOException | RuntimeException damaged) {
      throw new RefusedWorkbook(
          text(file, "it is damaged; open it in a spreadsheet program, repair it and save it"),
          damaged);
    }
  }

  /** Spreadsheet programs leave a file of this kind beside one that they have open. */
  private static void refuseOpenElsewhere(Path file) throws RefusedWorkbook {
    String name = file.getFileName() == null ? "" : file.getFileName().toString();
    for (String lock : new String[] {"~$" + name, ".~lock." + name + "#"}) {
      if (Files.exists(file.resolveSibling(lock))) {
        throw refused(
            file, "it is open in another program (" + lock + "); save and close it there first");
      }
    }
  }

  private static void refuseOtherFormats(Path file, byte[] bytes) throws RefusedWorkbook {
    FileMagic magic = FileMagic.valueOf(bytes);
    if (magic == FileMagic.OLE2) {
      String why =
          isEncrypted(bytes)
              ? "it is locked with a password; save it without one"
              : "it is in the old .xls format; save it as .xlsx";
      throw refused(file, why);
    }
    if (magic != FileMagic.OOXML) throw refused(file, "it is not an .xlsx workbook, or damaged");
  }

  private static boolean isEncrypted(byte[] bytes) {
    try (POIFSFileSystem files = new POIFSFileSystem(new ByteArrayInputStream(bytes))) {
      return files.getRoot().hasEntryCaseInsensitive("EncryptedPackage");
    } catch (IOException | RuntimeException damaged) {
      return false;
    }
  }

  private static String mark(XSSFWorkbook book) {
    POIXMLProperties.CustomProperties custom = book.getProperties().getCustomProperties();
    if (!custom.contains(FindingsWorkbook.MARK)) return "";
    return custom.getProperty(FindingsWorkbook.MARK).getLpwstr();
  }

  static RefusedWorkbook refused(Path file, String why) {
    return new RefusedWorkbook(text(file, why));
  }

  private static String text(Path file, String why) {
    return "cannot carry on " + file + ": " + why;
  }
}
