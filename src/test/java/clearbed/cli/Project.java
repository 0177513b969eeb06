package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * A small project with all that a check reads, and a log that people typed into.
 *
 * @param log as it was written
 * @param typed the same with an answer in it
 */
record Project(
    Path folder, Path documents, Path schedule, Path archive, Path rules, Path log, Path typed) {
  static final String ANSWER = "Yes, by letter of 3 March";

  /** The bytes of a log. */
  static byte[] log(Path folder) throws IOException {
    Path schedule = schedule(folder.resolve("schedule.xlsx"));
    Path log = folder.resolve("log.xlsx");
    assertThat(Shell.run("check", schedule, "-o", log, "--quiet").code()).isEqualTo(1);
    return Files.readAllBytes(log);
  }

  static Project in(Path folder, byte[] log) throws IOException {
    Path documents = Files.createDirectory(folder.resolve("documents"));
    Project project =
        new Project(
            folder,
            documents,
            schedule(documents.resolve("schedule.xlsx")),
            archive(folder.resolve("bundle.zip")),
            Files.writeString(folder.resolve("office.yaml"), "layer: ours\n"),
            Files.write(folder.resolve("log.xlsx"), log),
            Files.write(folder.resolve("typed.xlsx"), log));
    type(project.typed);
    return project;
  }

  private static Path schedule(Path file) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook();
        OutputStream out = Files.newOutputStream(file)) {
      Sheet sheet = book.createSheet("Tile");
      String[][] rows = {
        {"Tag", "Material", "Size", "Mortar"},
        {"GT-1", "Glass tile, translucent", "4 x 4 in", "ANSI A118.1"}
      };
      for (int r = 0; r < rows.length; r++) {
        Row row = sheet.createRow(r);
        for (int c = 0; c < rows[r].length; c++) row.createCell(c).setCellValue(rows[r][c]);
      }
      book.write(out);
    }
    return file;
  }

  private static Path archive(Path file) throws IOException {
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      zip.putNextEntry(new ZipEntry("rooms.csv"));
      zip.write("Tag,Room\nGT-1,Pool\n".getBytes(java.nio.charset.StandardCharsets.UTF_8));
    }
    return file;
  }

  static void type(Path workbook) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(workbook))) {
      book.getSheet("Questions").getRow(1).getCell(7).setCellValue(ANSWER);
      try (OutputStream out = Files.newOutputStream(workbook)) {
        book.write(out);
      }
    }
  }

  /** Puts it there. */
  Path place(Obstacle obstacle) throws IOException, InterruptedException {
    Path free = folder.resolve("there.xlsx");
    return switch (obstacle) {
      case DOCUMENT -> schedule;
      case DOCUMENT_SPELT_OTHERWISE -> documents.resolve("../documents/./schedule.xlsx");
      case DOCUMENT_IN_OTHER_CAPITALS -> otherCapitals();
      case DOCUMENT_THROUGH_A_LINK -> Files.createSymbolicLink(free, schedule);
      case DOCUMENT_BY_A_HARD_LINK -> Files.createLink(free, schedule);
      case DOCUMENT_IN_A_LINKED_FOLDER ->
          Files.createSymbolicLink(folder.resolve("linked"), documents).resolve("schedule.xlsx");
      case ARCHIVE -> archive;
      case RULE_FILE -> rules;
      case CARRIED_WORKBOOK -> typed;
      case CARRIED_WORKBOOK_BY_A_HARD_LINK -> Files.createLink(free, typed);
      case THE_LOG_ITSELF -> log;
      case TYPED_INTO -> Files.copy(typed, free);
      case TYPED_INTO_THROUGH_A_LINK ->
          Files.createSymbolicLink(free, Files.copy(typed, folder.resolve("far.xlsx")));
      case TYPED_INTO_WITHOUT_PROPERTIES -> withoutProperties(Files.copy(typed, free));
      case WORKBOOK_OF_OTHERS -> schedule(free);
      case TEXT_OF_OTHERS -> Files.writeString(free, "minutes of the meeting");
      case EMPTY_FILE -> Files.createFile(free);
      case LETTER_THAT_WAS_CHANGED -> changedLetter(free);
      case OPEN_IN_EXCEL -> locked(Files.copy(log, free), "~$there.xlsx");
      case OPEN_IN_LIBREOFFICE -> locked(Files.copy(log, free), ".~lock.there.xlsx#");
      case OPEN_ELSEWHERE_THROUGH_A_LINK ->
          Files.createSymbolicLink(free, locked(Files.copy(log, far("f.xlsx")), "~$f.xlsx"));
      case WRITE_PROTECTED -> protectedFile(Files.copy(log, free));
      case DEVICE -> device(free);
      case FOLDER -> Files.createDirectory(free);
      case DEAD_LINK -> Files.createSymbolicLink(free, folder.resolve("gone"));
    };
  }

  private Path far(String name) throws IOException {
    return Files.createDirectory(folder.resolve("far")).resolve(name);
  }

  private Path otherCapitals() {
    Path other = documents.resolve("SCHEDULE.XLSX");
    assumeTrue(Files.exists(other), "capitals count on this file system");
    return other;
  }

  private static Path withoutProperties(Path workbook) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(workbook))) {
      var all = book.getProperties().getCustomProperties().getUnderlyingProperties();
      all.getPropertyList().clear();
      try (OutputStream out = Files.newOutputStream(workbook)) {
        book.write(out);
      }
    }
    return workbook;
  }

  private Path changedLetter(Path file) throws IOException {
    assertThat(Shell.run("questions", log, "--format=md", "-o", file).code()).isZero();
    return Files.writeString(
        file, Files.readString(file).replace("### Question 1", "Answer: yes\n\n### Question 1"));
  }

  private static Path locked(Path file, String lock) throws IOException {
    Files.writeString(file.resolveSibling(lock), "somebody");
    return file;
  }

  private static Path protectedFile(Path file) throws IOException {
    assumeTrue(file.getFileSystem().supportedFileAttributeViews().contains("posix"));
    return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
  }

  private static Path device(Path file) throws IOException, InterruptedException {
    assumeTrue(Files.exists(Path.of("/dev/null")), "no devices among the files of this system");
    String path = file.toString();
    boolean made = new ProcessBuilder("mknod", path, "c", "1", "3").start().waitFor() == 0;
    assumeTrue(made || new ProcessBuilder("mkfifo", path).start().waitFor() == 0);
    return file;
  }
}
