package clearbed.track;

import clearbed.mark.OpenElsewhere;
import clearbed.read.source.Checksums;
import clearbed.read.source.Unreadable;
import clearbed.report.workbook.FindingsWorkbook;
import clearbed.report.workbook.layout.SheetLayout;
import clearbed.report.workbook.typed.EarlierWorkbook;
import clearbed.report.workbook.typed.Ledger;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.poifs.filesystem.FileMagic;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Opens a findings workbook of ours from its bytes, or says in one line why not. */
final class WorkbookFile {
  /**
   * Memory for a byte of rows that are open at a time; 22 MB were carried in 512 MiB, 24 MB were
   * not (measured on workbooks of 8,000 and 8,800 findings).
   */
  private static final long MEMORY_PER_BYTE = 23;

  /** Bytes of any part, unpacked. */
  private static final long LARGEST_PART = 1L << 30;

  /** Times that a part is in memory while it is opened. */
  private static final int COPIES_OF_PART = 6;

  private static final String DAMAGED =
      "it is damaged; open it in a spreadsheet program, repair it and save it";

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

  /** Any workbook, whoever wrote it. */
  static XSSFWorkbook openAny(Path file) throws RefusedWorkbook {
    byte[] bytes = bytes(file);
    refuseOtherFormats(file, bytes);
    refuseDamaged(file, bytes);
    refuseTooLarge(file, bytes, true, Runtime.getRuntime().maxMemory());
    return parse(file, bytes, all -> new XSSFWorkbook(new ByteArrayInputStream(all)));
  }

  /** The sheets that people work in, once {@link #openLedger} has found the file to be ours. */
  static XSSFWorkbook open(Path file, byte[] bytes) throws RefusedWorkbook {
    return parse(file, bytes, EarlierWorkbook::open);
  }

  static XSSFWorkbook openLedger(Path file, byte[] bytes) throws RefusedWorkbook {
    refuseOtherFormats(file, bytes);
    refuseDamaged(file, bytes);
    long memory = Runtime.getRuntime().maxMemory();
    refuseTooLarge(file, bytes, false, memory);
    XSSFWorkbook book = parse(file, bytes, EarlierWorkbook::openLedger);
    String version = version(file, bytes, book);
    if (version.isEmpty()) {
      throw refused(file, "it is a workbook, but not findings that clearbed wrote");
    }
    if (!version.equals(SheetLayout.FORMAT)) {
      throw refused(file, "its layout is version " + version + "; use the clearbed that wrote it");
    }
    if (!Ledger.hasSnapshots(book)) refuseTooLarge(file, bytes, true, memory);
    return book;
  }

  /** A part that is cut or changed would be carried on as what people typed. */
  private static void refuseDamaged(Path file, byte[] bytes) throws RefusedWorkbook {
    try {
      long most = Math.min(LARGEST_PART, Runtime.getRuntime().maxMemory() / COPIES_OF_PART);
      if (EarlierWorkbook.hasPartOver(most, bytes))
        throw refused(
            file,
            "a part of it unpacks to more than " + (most >> 20) + " MiB for the memory given");
      Checksums.require(file);
    } catch (IOException | Unreadable damaged) {
      throw new RefusedWorkbook(text(file, DAMAGED), damaged);
    }
  }

  /**
   * The sheets that people work in are held in memory whole.
   *
   * @param whole true when all sheets have to be opened
   * @param memory bytes that the program may use
   */
  static void refuseTooLarge(Path file, byte[] bytes, boolean whole, long memory)
      throws RefusedWorkbook {
    long size = rowBytes(bytes, whole);
    if (size * MEMORY_PER_BYTE <= memory) return;
    long wanted = size * MEMORY_PER_BYTE / 1_000_000 + 100;
    throw refused(
        file,
        "it holds too much for the memory given; start with CLEARBED_JAVA_OPTS=-Xmx"
            + wanted
            + "m");
  }

  /** 0 for a file that is no workbook, which is refused elsewhere. */
  private static long rowBytes(byte[] bytes, boolean whole) {
    try {
      return EarlierWorkbook.rowBytes(bytes, whole);
    } catch (IOException damaged) {
      return 0;
    }
  }

  private interface HowToOpen {
    XSSFWorkbook of(byte[] bytes) throws IOException;
  }

  private static XSSFWorkbook parse(Path file, byte[] bytes, HowToOpen opening)
      throws RefusedWorkbook {
    try {
      return opening.of(bytes);
    } catch (IOException | RuntimeException damaged) {
      throw new RefusedWorkbook(text(file, DAMAGED), damaged);
    } catch (OutOfMemoryError tooLarge) {
      throw new RefusedWorkbook(
          text(file, "it holds too much for the memory given; give Java more (-Xmx)"), tooLarge);
    }
  }

  /** Spreadsheet programs leave a file of this kind beside one that they have open. */
  private static void refuseOpenElsewhere(Path file) throws RefusedWorkbook {
    String lock = OpenElsewhere.lockFile(file);
    if (lock == null) return;
    throw refused(
        file, "it is open in another program (" + lock + "); save and close it there first");
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
    if (isWordFile(bytes)) throw refused(file, "it is a Word file; give the findings workbook");
  }

  private static boolean isWordFile(byte[] bytes) {
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        if (e.getName().equals("word/document.xml")) return true;
      }
      return false;
    } catch (IOException damaged) {
      return false;
    }
  }

  private static boolean isEncrypted(byte[] bytes) {
    try (POIFSFileSystem files = new POIFSFileSystem(new ByteArrayInputStream(bytes))) {
      return files.getRoot().hasEntryCaseInsensitive("EncryptedPackage");
    } catch (IOException | RuntimeException damaged) {
      return false;
    }
  }

  /**
   * Version of the layout, by the mark of ours, which some programs drop, by the hidden sheet,
   * which people take away, or by the headings.
   *
   * @return empty for a workbook that is not ours
   */
  private static String version(Path file, byte[] bytes, XSSFWorkbook ledger)
      throws RefusedWorkbook {
    String marked = mark(ledger);
    String noted = marked.isEmpty() ? Ledger.format(ledger) : marked;
    if (!noted.isEmpty()) return noted;
    try (XSSFWorkbook book = open(file, bytes)) {
      return SheetLayout.isOurs(book) ? SheetLayout.FORMAT : "";
    } catch (IOException closing) {
      throw refused(file, closing.getMessage());
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
