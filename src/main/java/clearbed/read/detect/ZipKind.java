package clearbed.read.detect;

import clearbed.mark.OwnOutput;
import clearbed.mark.PackageMark;
import clearbed.read.source.Source;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.Locale;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/** What a zip file is, by the parts that it lists. */
public enum ZipKind {
  EXCEL,
  EXCEL_BINARY,
  WORD,
  OPEN_SHEET,
  OPEN_TEXT,
  /** What this tool wrote, as it wrote it. */
  OWN,
  /** A findings workbook of this tool in which people are at work. */
  OWN_IN_WORK,
  /** A known document format that is not read, such as slides. */
  OTHER,
  ENCRYPTED,
  DAMAGED,
  PLAIN;

  /** Far more than any list of content types or properties needs. */
  private static final int LONGEST_PART = 4 << 20;

  public static ZipKind of(Path file) throws IOException {
    try (ZipFile zip = new ZipFile(file.toFile())) {
      ZipEntry types = entry(zip, "[Content_Types].xml");
      if (types != null) return ofPackage(zip, text(zip, types));
      ZipEntry mime = zip.getEntry("mimetype");
      return mime == null ? PLAIN : ofMimetype(text(zip, mime));
    } catch (ZipException e) {
      return String.valueOf(e.getMessage()).contains("encrypted") ? ENCRYPTED : DAMAGED;
    }
  }

  /** The entries of a plain archive, by what it says of itself; 1 for anything else. */
  public static int countIfPlain(Source source) {
    if (!source.extension().equals("zip")) return 1;
    try (ZipFile zip = new ZipFile(source.file().toFile())) {
      return Math.max(1, zip.size());
    } catch (IOException | RuntimeException e) {
      return 1;
    }
  }

  private static ZipKind ofPackage(ZipFile zip, String types) throws IOException {
    OwnOutput own = PackageMark.of(zip);
    if (own != null && own.untouched()) return OWN;
    if (PackageMark.holdsFindings(zip)) return OWN_IN_WORK;
    if (types.contains("sheet.binary.")) return EXCEL_BINARY;
    if (types.contains("wordprocessingml.document.main")
        || types.contains("wordprocessingml.template.main")
        || types.contains("ms-word.document.macroenabled.main")
        || types.contains("ms-word.template.macroenabledtemplate.main")) return WORD;
    if (types.contains("spreadsheetml.sheet.main")
        || types.contains("spreadsheetml.template.main")
        || types.contains("ms-excel.sheet.macroenabled.main")
        || types.contains("ms-excel.template.macroenabled.main")) return EXCEL;
    return OTHER;
  }

  private static ZipKind ofMimetype(String type) {
    if (type.contains("opendocument.spreadsheet")) return OPEN_SHEET;
    if (type.contains("opendocument.text")) return OPEN_TEXT;
    return OTHER;
  }

  private static ZipEntry entry(ZipFile zip, String name) {
    ZipEntry exact = zip.getEntry(name);
    if (exact != null) return exact;
    Enumeration<? extends ZipEntry> all = zip.entries();
    while (all.hasMoreElements()) {
      ZipEntry entry = all.nextElement();
      if (entry.getName().equalsIgnoreCase(name)) return entry;
    }
    return null;
  }

  private static String text(ZipFile zip, ZipEntry entry) throws IOException {
    try (InputStream in = zip.getInputStream(entry)) {
      byte[] bytes = in.readNBytes(LONGEST_PART);
      return new String(bytes, StandardCharsets.UTF_8).toLowerCase(Locale.ROOT);
    }
  }
}
