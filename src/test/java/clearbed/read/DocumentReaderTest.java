package clearbed.read;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.model.document.Paragraph;
import clearbed.read.source.ArchiveLimits;
import clearbed.read.source.ReadOptions;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DocumentReaderTest {
  @TempDir Path folder;

  @Test
  void documentsComeInArgumentOrderThenPathOrderForEveryNumberOfJobs() throws IOException {
    for (int i = 0; i < 40; i++) write("b/" + (i % 7) + "/note" + i + ".txt", "Note " + i);
    write("a/last.txt", "Last");
    Path[] paths = {folder.resolve("b"), folder.resolve("a")};

    List<Document> one = ReadAll.by(ReadOptions.defaults().withJobs(1), paths);
    List<Document> four = ReadAll.by(ReadOptions.defaults().withJobs(4), paths);

    assertThat(four).isEqualTo(one).hasSize(41);
    assertThat(one.subList(0, 40)).extracting(Document::path).isSorted();
    assertThat(one.get(40).path()).isEqualTo("last.txt");
  }

  @Test
  void namesakesUnderTwoArgumentsAreToldApartByTheirFolder() throws IOException {
    write("east/schedule.txt", "East");
    write("west/schedule.txt", "West");
    write("west/other.txt", "Other");

    List<Document> documents = read(folder.resolve("east"), folder.resolve("west"));

    assertThat(documents)
        .extracting(Document::path)
        .containsExactly("east/schedule.txt", "other.txt", "west/schedule.txt");
    assertThat(((Paragraph) documents.get(0).blocks().get(0)).text()).isEqualTo("East");
  }

  @Test
  void aFileReachedTwiceIsReadOnce() throws IOException {
    Path file = write("set/note.txt", "Note");

    assertThat(read(folder.resolve("set"), file))
        .extracting(Document::path)
        .containsExactly("note.txt");
  }

  @Test
  void whatIsPassedOverIsNamedWithTheReason() throws IOException {
    write("~$schedule.docx", "lock");
    write(".~lock.schedule.ods#", "lock");
    write("Thumbs.db", "x");
    write(".hidden/deep.txt", "x");
    write("plan.dwg", "AC1032 binary");
    write("notes.txt", "Read me");
    write("findings.txt", "mine");
    Files.createSymbolicLink(folder.resolve("loop"), folder);
    ReadOptions options =
        ReadOptions.defaults().withOwnOutputs(Set.of(folder.resolve("findings.txt")));

    List<Document> documents = ReadAll.by(options, folder);

    assertThat(documents)
        .extracting(Document::path, Document::status, Document::reason)
        .containsExactly(
            tuple(".hidden", Status.IGNORED, "hidden folder"),
            tuple(".~lock.schedule.ods#", Status.IGNORED, "lock file of an open document"),
            tuple("Thumbs.db", Status.IGNORED, "file of the operating system"),
            tuple("findings.txt", Status.IGNORED, "written by this run"),
            tuple("loop", Status.IGNORED, "a link back to a folder above it"),
            tuple("notes.txt", Status.READ, ""),
            tuple("plan.dwg", Status.IGNORED, "not a format that is read (.dwg)"),
            tuple("~$schedule.docx", Status.IGNORED, "lock file of an open document"));
  }

  @Test
  void aWorkbookWithTheToolsHiddenSheetIsNotInputAndItsPropertyAloneTellsNothing()
      throws IOException {
    try (XSSFWorkbook workbook = new XSSFWorkbook()) {
      workbook.createSheet("Findings").createRow(0).createCell(0).setCellValue("GT-1");
      workbook.getProperties().getCustomProperties().addProperty("ClearbedFindings", "1");
      save("theirs.xlsx", workbook::write);
      workbook.createSheet("Ledger");
      workbook.setSheetVisibility(1, SheetVisibility.HIDDEN);
      save("old-findings.xlsx", workbook::write);
    }

    assertThat(one("theirs.xlsx").status()).isEqualTo(Status.READ);
    assertThat(one("old-findings.xlsx").status()).isEqualTo(Status.IGNORED);
    assertThat(one("old-findings.xlsx").reason()).startsWith("own output, not read");
  }

  @Test
  void brokenFilesEachGiveOneReasonAndTheRestIsRead() throws IOException {
    byte[] noise = new byte[5000];
    new Random(7).nextBytes(noise);
    Files.write(folder.resolve("noise.docx"), noise);
    Files.write(folder.resolve("noise.pdf"), noise);
    Files.write(folder.resolve("noise.csv"), noise);
    Files.write(folder.resolve("empty.xlsx"), new byte[0]);
    byte[] whole = wordFile();
    Files.write(folder.resolve("cut.docx"), java.util.Arrays.copyOf(whole, whole.length / 2));
    Files.write(folder.resolve("locked.xlsx"), encryptedWorkbook());
    write("good.txt", "Good");

    List<Document> documents = read(folder, folder.resolve("missing.pdf"));

    assertThat(documents).extracting(Document::status).containsOnly(Status.UNREADABLE, Status.READ);
    assertThat(documents)
        .extracting(d -> d.path() + ": " + d.reason())
        .satisfiesExactly(
            d -> assertThat(d).startsWith("cut.docx: damaged or truncated"),
            d -> assertThat(d).isEqualTo("empty.xlsx: empty file"),
            d -> assertThat(d).isEqualTo("good.txt: "),
            d -> assertThat(d).startsWith("locked.xlsx: password-protected; save a copy without"),
            d -> assertThat(d).startsWith("noise.csv: not a delimited text file"),
            d ->
                assertThat(d)
                    .startsWith("noise.docx: not a Word document")
                    .contains("save it again"),
            d -> assertThat(d).startsWith("noise.pdf: not a PDF file"),
            d -> assertThat(d).isEqualTo("missing.pdf: no such file or folder"));
  }

  @Test
  void contentCountsForMoreThanTheName() throws IOException {
    Files.write(folder.resolve("report.doc"), wordFile());
    write(
        "export.xls",
        "<html><body><table><tr><td>Tag</td><td>Mortar</td></tr></table></body></html>");
    write("list.xls", "Tag\tMortar\nGT-1\tA118.15\n");

    assertThat(read(folder))
        .extracting(Document::path, Document::format, Document::status)
        .containsExactly(
            tuple("export.xls", "html", Status.READ),
            tuple("list.xls", "csv", Status.READ),
            tuple("report.doc", "docx", Status.READ));
  }

  @Test
  void aPartThatExpandsWithoutEndOrDeclaresEntitiesIsRefused() throws IOException {
    String bomb =
        "<!DOCTYPE w [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;\">]>"
            + "<w:document xmlns:w=\"http://schemas.openxmlformats.org/wordprocessingml/2006/main\">"
            + "<w:body><w:p><w:r><w:t>&b;</w:t></w:r></w:p></w:body></w:document>";
    Files.write(folder.resolve("entities.docx"), replaced(wordFile(), "word/document.xml", bomb));
    String huge = bomb.replaceFirst("^<!DOCTYPE.*?]>", "").replace("&b;", " ".repeat(40 << 20));
    Files.write(folder.resolve("huge.docx"), replaced(wordFile(), "word/document.xml", huge));

    assertThat(read(folder))
        .allSatisfy(d -> assertThat(d.status()).isEqualTo(Status.UNREADABLE))
        .extracting(Document::reason)
        .allSatisfy(reason -> assertThat(reason).contains("not read for safety"));
  }

  @Test
  void anArchiveIsReadInPlaceTwoDeepAndItsUnsafeNamesAreRefused() throws IOException {
    byte[] note = "Inner note".getBytes(UTF_8);
    byte[] third = zip(List.of("deep.txt"), List.of(note));
    byte[] second = zip(List.of("in.txt", "third.zip"), List.of(note, third));
    byte[] first =
        zip(
            List.of("spec/tile.txt", "../../escape.txt", "second.zip", "photo.jpg"),
            List.of(note, note, second, note));
    Files.write(folder.resolve("bundle.zip"), first);

    List<Document> documents = read(folder);

    assertThat(documents)
        .extracting(Document::path, Document::status)
        .containsExactly(
            tuple("bundle.zip!/_/_/escape.txt", Status.UNREADABLE),
            tuple("bundle.zip!/photo.jpg", Status.IGNORED),
            tuple("bundle.zip!/second.zip!/in.txt", Status.READ),
            tuple("bundle.zip!/second.zip!/third.zip", Status.UNREADABLE),
            tuple("bundle.zip!/spec/tile.txt", Status.READ));
    assertThat(documents.get(0).reason()).contains("unsafe name");
    assertThat(documents.get(4).blocks().get(0).origin().document())
        .isEqualTo("bundle.zip!/spec/tile.txt");
    assertThat(Files.exists(folder.resolve("../escape.txt"))).isFalse();
  }

  @Test
  void archivesBeyondTheLimitsAreNotUnpacked() throws IOException {
    byte[] blank = new byte[12 << 20];
    Files.write(folder.resolve("bomb.zip"), zip(List.of("zeros.txt"), List.of(blank)));
    Files.write(
        folder.resolve("many.zip"),
        zip(
            List.of("1.txt", "2.txt", "3.txt"),
            List.of(new byte[] {65}, new byte[] {65}, new byte[] {65})));
    ArchiveLimits limits = new ArchiveLimits(2, 2, 100 << 20, 100 << 20, 100);

    List<Document> documents =
        ReadAll.by(
            new DocumentReader(
                List.of(folder), ReadOptions.defaults(), limits, DocumentReader.STANDARD),
            2);

    assertThat(documents)
        .extracting(d -> d.path() + ": " + d.reason())
        .containsExactly(
            "bomb.zip!/zeros.txt: expands out of all proportion; not read for safety",
            "many.zip!/1.txt: ",
            "many.zip!/2.txt: ",
            "many.zip: more than 2 files; unpack it");
  }

  private interface Writer {
    void to(OutputStream out) throws IOException;
  }

  private void save(String name, Writer writer) throws IOException {
    try (OutputStream out = Files.newOutputStream(folder.resolve(name))) {
      writer.to(out);
    }
  }

  private static byte[] wordFile() throws IOException {
    try (XWPFDocument document = new XWPFDocument()) {
      document.createParagraph().createRun().setText("Mortar: ANSI A118.15.");
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      document.write(out);
      return out.toByteArray();
    }
  }

  private static byte[] encryptedWorkbook() throws IOException {
    try (POIFSFileSystem files = new POIFSFileSystem();
        XSSFWorkbook workbook = new XSSFWorkbook()) {
      Encryptor encryptor = new EncryptionInfo(EncryptionMode.standard).getEncryptor();
      encryptor.confirmPassword("secret");
      try (OutputStream out = encryptor.getDataStream(files)) {
        workbook.createSheet("Tile");
        workbook.write(out);
      } catch (java.security.GeneralSecurityException e) {
        throw new IOException(e);
      }
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      files.writeFilesystem(out);
      return out.toByteArray();
    }
  }

  private static byte[] replaced(byte[] zip, String name, String content) throws IOException {
    List<String> names = new ArrayList<>();
    List<byte[]> contents = new ArrayList<>();
    try (var in = new java.util.zip.ZipInputStream(new java.io.ByteArrayInputStream(zip))) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
        names.add(e.getName());
        contents.add(e.getName().equals(name) ? content.getBytes(UTF_8) : in.readAllBytes());
      }
    }
    return zip(names, contents);
  }

  private static byte[] zip(List<String> names, List<byte[]> contents) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (int i = 0; i < names.size(); i++) {
        out.putNextEntry(new ZipEntry(names.get(i)));
        out.write(contents.get(i));
      }
    }
    return bytes.toByteArray();
  }

  private Path write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.writeString(file, text);
  }

  private Document one(String name) {
    return read(folder.resolve(name)).get(0);
  }

  private static List<Document> read(Path... paths) {
    return ReadAll.of(paths);
  }
}
