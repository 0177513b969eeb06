package clearbed.report.workbook.typed;

import clearbed.mark.FindingsSheets;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Opens an earlier findings workbook in two parts, one after the other: an open sheet takes many
 * times the memory of its file, and most rows are those of sheets that each issue writes anew.
 */
public final class EarlierWorkbook {
  private static final Pattern SHEET = Pattern.compile("<(?:\\w+:)?sheet\\s[^>]*>");
  private static final Pattern LINK = Pattern.compile("<(?:\\w+:)?Relationship\\s[^>]*>");
  private static final Pattern ROWS_START = Pattern.compile("<(?:\\w+:)?sheetData\\s*>");
  private static final Pattern ROWS_END = Pattern.compile("</(?:\\w+:)?sheetData\\s*>");

  private EarlierWorkbook() {}

  /**
   * The workbook without the rows of the sheets that are written anew.
   *
   * @throws IOException when it cannot be opened
   */
  public static XSSFWorkbook open(byte[] bytes) throws IOException {
    return open(bytes, Set.of());
  }

  /**
   * The workbook without the rows of the sheets that are written anew, but for some.
   *
   * @param whole names of those that keep their rows
   */
  public static XSSFWorkbook open(byte[] bytes, Set<String> whole) throws IOException {
    return open(
        bytes,
        sheet -> {
          String renewed = BookSheets.renewed(sheet);
          return renewed == null ? !sheet.equals(Ledger.SHEET) : whole.contains(renewed);
        });
  }

  /**
   * The workbook with the rows of the hidden sheet alone, for {@link Ledger}.
   *
   * @throws IOException when it cannot be opened
   */
  public static XSSFWorkbook openLedger(byte[] bytes) throws IOException {
    return open(bytes, Ledger.SHEET::equals);
  }

  /**
   * The workbook with all its rows, without what leads out of it.
   *
   * @throws IOException when it cannot be opened
   */
  public static XSSFWorkbook openWhole(byte[] bytes) throws IOException {
    return open(bytes, sheet -> true);
  }

  /**
   * True when a part of it unpacks to more bytes than that.
   *
   * @throws IOException when it is damaged
   */
  public static boolean hasPartOver(long most, byte[] bytes) throws IOException {
    byte[] buffer = new byte[1 << 16];
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        long size = 0;
        for (int n = zip.read(buffer); n >= 0; n = zip.read(buffer)) {
          size += n;
          if (size > most) return true;
        }
      }
    }
    return false;
  }

  /**
   * The greatest number of bytes of rows, unpacked, that either part has; 0 for no workbook.
   *
   * @param whole true when the sheets that are written anew have to be opened, too, as it is not
   *     known what of them was typed
   */
  public static long rowBytes(byte[] bytes, boolean whole) throws IOException {
    Set<String> others = parts(bytes, sheet -> !whole && isRenewed(sheet));
    Set<String> ledger = parts(bytes, Ledger.SHEET::equals);
    long worked = 0;
    long hidden = 0;
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        if (!e.getName().startsWith("xl/worksheets/")) continue;
        long size = zip.transferTo(OutputStream.nullOutputStream());
        if (ledger.contains(e.getName())) hidden += size;
        else if (!others.contains(e.getName())) worked += size;
      }
    }
    return Math.max(worked, hidden);
  }

  private static boolean isRenewed(String sheet) {
    return sheet.equals(Ledger.SHEET) || BookSheets.renewed(sheet) != null;
  }

  private static XSSFWorkbook open(byte[] bytes, Predicate<String> wanted) throws IOException {
    Set<String> emptied = parts(bytes, wanted.negate());
    ByteArrayOutputStream lean = new ByteArrayOutputStream(bytes.length);
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(bytes));
        ZipOutputStream out = new ZipOutputStream(lean)) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
        if (LinksOut.isPart(e.getName())) continue;
        out.putNextEntry(new ZipEntry(e.getName()));
        if (emptied.contains(e.getName()))
          out.write(LinksOut.cut(e.getName(), withoutRows(in.readAllBytes())));
        else if (e.getName().endsWith(".xml") || e.getName().endsWith(".rels"))
          out.write(LinksOut.cut(e.getName(), in.readAllBytes()));
        else in.transferTo(out);
      }
    }
    XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(lean.toByteArray()));
    int former = book.getSheetIndex(FindingsSheets.FORMER_LEDGER);
    if (former >= 0 && book.getSheet(Ledger.SHEET) == null) book.setSheetName(former, Ledger.SHEET);
    LinksOut.requireNone(book);
    return book;
  }

  /** A sheet that is written in an unforeseen way stays as it is. */
  private static byte[] withoutRows(byte[] sheet) {
    String xml = new String(sheet, StandardCharsets.ISO_8859_1);
    Matcher start = ROWS_START.matcher(xml);
    Matcher end = ROWS_END.matcher(xml);
    if (!start.find() || !end.find(start.end())) return sheet;
    return (xml.substring(0, start.end()) + xml.substring(end.start()))
        .getBytes(StandardCharsets.ISO_8859_1);
  }

  /** The parts of the sheets whose name is asked for; the hidden sheet by its name of today. */
  private static Set<String> parts(byte[] bytes, Predicate<String> named) throws IOException {
    String book = "";
    String links = "";
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        if (e.getName().equals("xl/workbook.xml")) book = text(zip);
        if (e.getName().equals("xl/_rels/workbook.xml.rels")) links = text(zip);
      }
    }
    Map<String, String> idsByName = new LinkedHashMap<>();
    Matcher sheet = SHEET.matcher(book);
    while (sheet.find())
      idsByName.put(attribute(sheet.group(), "name"), attribute(sheet.group(), "\\w+:id"));
    // Beside a sheet of today's name, one of the former name is somebody's own.
    if (!idsByName.containsKey(Ledger.SHEET) && idsByName.containsKey(FindingsSheets.FORMER_LEDGER))
      idsByName.put(Ledger.SHEET, idsByName.remove(FindingsSheets.FORMER_LEDGER));
    Set<String> ids = new TreeSet<>();
    idsByName.forEach(
        (name, id) -> {
          if (named.test(name)) ids.add(id);
        });
    Set<String> parts = new TreeSet<>();
    Matcher link = LINK.matcher(links);
    while (link.find()) {
      String target = attribute(link.group(), "Target");
      String part = target.startsWith("/") ? target.substring(1) : "xl/" + target;
      if (ids.contains(attribute(link.group(), "Id"))) parts.add(part);
    }
    return parts;
  }

  private static String text(InputStream in) throws IOException {
    return new String(in.readAllBytes(), StandardCharsets.UTF_8);
  }

  private static String attribute(String element, String name) {
    Matcher found = Pattern.compile("\\s" + name + "\\s*=\\s*[\"']([^\"']*)").matcher(element);
    return found.find() ? found.group(1) : "";
  }
}
