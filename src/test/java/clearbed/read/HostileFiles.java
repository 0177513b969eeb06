package clearbed.read;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.security.GeneralSecurityException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.poi.hssf.record.crypto.Biff8EncryptionKey;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** Files made to do harm: bombs, entities, absurd dimensions, and files under lock. */
public final class HostileFiles {
  public static final String WORD =
      "<w:document xmlns:w=\"http://schemas.openxmlformats.org/wordprocessingml/2006/main\">"
          + "<w:body>%s</w:body></w:document>";
  public static final String SHEET =
      "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">"
          + "%s</worksheet>";
  public static final String ODF =
      "<office:document-content"
          + " xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\""
          + " xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\""
          + " xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\"><office:body>"
          + "%s</office:body></office:document-content>";

  private HostileFiles() {}

  /** Every one of them by its name; none may be read as if nothing were amiss. */
  public static Map<String, byte[]> all() throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    Map<String, byte[]> sound = FaultCorpus.sound();
    addEntities(files, sound, "entities", laughs());
    addEntities(files, sound, "outside", external("file:///etc/hostname"));
    addEntities(files, sound, "parameter", "<!DOCTYPE d SYSTEM \"file:///etc/hostname\">");
    addBombs(files, sound);
    addLocked(files);
    byte[] noise = new byte[20_000];
    new Random(11).nextBytes(noise);
    for (String format : sound.keySet()) {
      if (!format.equals("zip")) files.put("noise." + format, noise);
      files.put("empty." + format, new byte[0]);
    }
    files.put("nested.rtf", ("{\\rtf1 " + "{".repeat(200_000)).getBytes(UTF_8));
    files.put("loop.pdf", loopingPdf());
    return files;
  }

  public static String laughs() {
    StringBuilder declared = new StringBuilder("<!DOCTYPE d [<!ENTITY e0 \"haha\">");
    for (int i = 1; i < 30; i++) {
      String before = "&e" + (i - 1) + ";";
      declared.append("<!ENTITY e").append(i).append(" \"").append(before.repeat(10)).append("\">");
    }
    return declared.append("]>").toString();
  }

  static String external(String address) {
    return "<!DOCTYPE d [<!ENTITY e29 SYSTEM \"" + address + "\">]>";
  }

  /** The same attack in every part that is XML. */
  static void addEntities(
      Map<String, byte[]> files, Map<String, byte[]> sound, String name, String declaration)
      throws IOException {
    String paragraph = "<w:p><w:r><w:t>&e29;</w:t></w:r></w:p>";
    String cell = "<sheetData><row r=\"1\"><c t=\"inlineStr\"><is><t>&e29;</t></is></c></row>";
    String open = "<office:text><text:p>&e29;</text:p></office:text>";
    String table =
        "<office:spreadsheet><table:table table:name=\"t\"><table:table-row><table:table-cell>"
            + "<text:p>&e29;</text:p></table:table-cell></table:table-row></table:table>"
            + "</office:spreadsheet>";
    files.put(
        name + ".docx",
        part(sound.get("docx"), "word/document.xml", x -> declaration + WORD.formatted(paragraph)));
    files.put(
        name + "-types.docx",
        part(sound.get("docx"), "[Content_Types].xml", x -> afterProlog(x, declaration)));
    files.put(
        name + "-rels.docx",
        part(sound.get("docx"), "_rels/.rels", x -> afterProlog(x, declaration)));
    files.put(
        name + "-styles.docx",
        part(sound.get("docx"), "word/styles.xml", x -> afterProlog(x, declaration)));
    files.put(
        name + ".xlsx",
        part(
            sound.get("xlsx"),
            "xl/worksheets/sheet1.xml",
            x -> declaration + SHEET.formatted(cell + "</sheetData>")));
    files.put(
        name + "-styles.xlsx",
        part(sound.get("xlsx"), "xl/styles.xml", x -> afterProlog(x, declaration)));
    files.put(
        name + ".odt",
        part(sound.get("odt"), "content.xml", x -> declaration + ODF.formatted(open)));
    files.put(
        name + ".ods",
        part(sound.get("ods"), "content.xml", x -> declaration + ODF.formatted(table)));
    files.put(
        name + "-2003.xml",
        ("<?xml version=\"1.0\"?>"
                + declaration
                + "<Workbook xmlns=\"urn:schemas-microsoft-com:office:spreadsheet\""
                + " xmlns:ss=\"urn:schemas-microsoft-com:office:spreadsheet\">"
                + "<Worksheet ss:Name=\"a\"><Table><Row><Cell><Data ss:Type=\"String\">&e29;"
                + "</Data></Cell></Row></Table></Worksheet></Workbook>")
            .getBytes(UTF_8));
  }

  private static String afterProlog(String xml, String declaration) {
    return declaration + xml.replaceFirst("^\uFEFF?<\\?xml[^>]*\\?>\\s*", "");
  }

  private static void addBombs(Map<String, byte[]> files, Map<String, byte[]> sound)
      throws IOException {
    String blank = " ".repeat(60 << 20);
    files.put("bomb.docx", part(sound.get("docx"), "word/document.xml", x -> x + blank));
    files.put("bomb.xlsx", part(sound.get("xlsx"), "xl/worksheets/sheet1.xml", x -> x + blank));
    files.put("bomb.odt", part(sound.get("odt"), "content.xml", x -> x + blank));
    files.put("bomb.zip", zip("blank.txt", blank.getBytes(UTF_8)));
    byte[] zip = zip("note.txt", "Lay pipe to falls.".getBytes(UTF_8));
    for (int i = 0; i < 6; i++) zip = zip("inner.zip", zip);
    files.put("nested.zip", zip);
    files.put("escape.zip", zip("../../../../tmp/escaped.txt", "out".getBytes(UTF_8)));
    files.put("absolute.zip", zip("/etc/escaped.txt", "out".getBytes(UTF_8)));
    files.put("drive.zip", zip("C:\\escaped.txt", "out".getBytes(UTF_8)));
    String deep = "<w:tbl><w:tr><w:tc>".repeat(6_000) + "</w:tc></w:tr></w:tbl>".repeat(6_000);
    files.put("deep.docx", part(sound.get("docx"), "word/document.xml", x -> WORD.formatted(deep)));
  }

  private static void addLocked(Map<String, byte[]> files) throws IOException {
    files.put("locked.xlsx", lockedPackage(FaultCorpus.sound().get("xlsx")));
    files.put("locked.docx", lockedPackage(FaultCorpus.sound().get("docx")));
    files.put("locked.xls", lockedXls());
    files.put("locked.pdf", lockedPdf());
  }

  private static byte[] lockedPackage(byte[] plain) throws IOException {
    try (POIFSFileSystem files = new POIFSFileSystem()) {
      Encryptor encryptor = new EncryptionInfo(EncryptionMode.agile).getEncryptor();
      encryptor.confirmPassword("secret");
      try (OutputStream out = encryptor.getDataStream(files)) {
        out.write(plain);
      } catch (GeneralSecurityException e) {
        throw new IOException(e);
      }
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      files.writeFilesystem(out);
      return out.toByteArray();
    }
  }

  private static byte[] lockedXls() throws IOException {
    try (HSSFWorkbook workbook = new HSSFWorkbook()) {
      workbook.createSheet("Drains").createRow(0).createCell(0).setCellValue("D-1");
      Biff8EncryptionKey.setCurrentUserPassword("secret");
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      workbook.write(out);
      return out.toByteArray();
    } finally {
      Biff8EncryptionKey.setCurrentUserPassword(null);
    }
  }

  private static byte[] lockedPdf() throws IOException {
    try (PDDocument document = new PDDocument()) {
      document.addPage(new PDPage());
      document.protect(new StandardProtectionPolicy("owner", "secret", new AccessPermission()));
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      document.save(out);
      return out.toByteArray();
    }
  }

  /** A tree of pages that holds itself. */
  private static byte[] loopingPdf() {
    return ("%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n"
            + "2 0 obj<</Type/Pages/Count 1/Kids[2 0 R]>>endobj\n"
            + "trailer<</Root 1 0 R/Size 3>>\n%%EOF\n")
        .getBytes(ISO_8859_1);
  }

  public static byte[] doc(String text) throws IOException {
    try (InputStream in =
        HostileFiles.class.getResourceAsStream("/corpus/frozen/mossbridge-library/09300.doc")) {
      return FaultCorpus.changed(in.readAllBytes(), text);
    }
  }

  public static byte[] zip(String name, byte[] content) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      out.putNextEntry(new ZipEntry(name));
      out.write(content);
    }
    return bytes.toByteArray();
  }

  /** The archive with one part changed, or added when it is not there. */
  public static byte[] part(byte[] zip, String name, UnaryOperator<String> change)
      throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip));
        ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
        out.putNextEntry(new ZipEntry(e.getName()));
        byte[] content = in.readAllBytes();
        out.write(
            e.getName().equals(name)
                ? change.apply(new String(content, UTF_8)).getBytes(UTF_8)
                : content);
      }
    }
    return bytes.toByteArray();
  }
}
