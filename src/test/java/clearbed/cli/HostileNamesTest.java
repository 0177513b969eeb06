package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import clearbed.base.DisplayText;
import clearbed.cli.terminal.ExitCode;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names and words that would deceive a reader, a terminal or a spreadsheet program. */
class HostileNamesTest {
  private static final String ROW = "Tag,Material,Mortar\nGT-%d,Glass tile,ANSI A118.1\n";

  /** Colours and the title of a terminal, a forged second line, letters that run backwards. */
  private static final List<String> NAMES =
      List.of(
          "red\u001b[31m\u001b]0;owned\u0007.csv",
          "two\nclearbed: nothing to find.csv",
          "back\r.csv",
          "vsc\u202evsc.csv",
          "iso\u2067late\u2069.csv",
          "c1\u009b31m.csv",
          "line\u2028end.csv",
          "del\u007f.csv",
          "=cmd|calc.csv",
          "+1.csv",
          "quote\"'&<b>.csv",
          "x".repeat(250) + ".csv");

  @TempDir Path folder;
  private String printed = "";

  @Test
  void namesOfFilesAreShownSafely() throws Exception {
    assumeTrue(File.separatorChar == '/', "other systems take no such names");
    Path documents = Files.createDirectory(folder.resolve("documents"));
    int number = 0;
    for (String name : NAMES) {
      Files.writeString(documents.resolve(name), ROW.formatted(++number));
      Files.writeString(documents.resolve(name.replace(".csv", ".pdf")), "no PDF at all");
    }

    assertThat(check(documents)).isEqualTo(ExitCode.FAULT);

    assertSafe(NAMES);
  }

  @Test
  void namesInAnArchiveAreShownSafely() throws Exception {
    List<String> names = new ArrayList<>(NAMES);
    names.add("y".repeat(60_000) + ".csv");
    names.add("folder/".repeat(8_000) + "deep.csv");
    names.add("../\u001b[2Jup.csv");
    Path archive = folder.resolve("bundle.zip");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(archive))) {
      int number = 0;
      for (String name : names) {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(ROW.formatted(++number).getBytes(StandardCharsets.UTF_8));
        zip.putNextEntry(new ZipEntry(name.replace(".csv", ".pdf")));
        zip.write("no PDF at all".getBytes(StandardCharsets.UTF_8));
      }
    }

    assertThat(check(archive)).isEqualTo(ExitCode.FAULT);

    names.subList(NAMES.size(), names.size()).clear();
    assertSafe(names.stream().map(n -> "bundle.zip!/" + n).toList());
  }

  @Test
  void wordsThatLookLikeFormulasArriveAsWords() throws Exception {
    Path file = folder.resolve("schedule.csv");
    Files.writeString(
        file,
        """
        Tag,Material,Mortar,Size,Remarks
        GT-1,Glass tile,=cmd|' /C calc'!A0,"=HYPERLINK(""http://127.0.0.1"",""4 in"")",@SUM(1+1)
        =GT-2,+Glass tile,-1+2,"=1+1","\t=1"
        """);

    check(file);

    List<String> formulas = new ArrayList<>();
    List<String> words = new ArrayList<>();
    try (Workbook workbook = WorkbookFactory.create(folder.resolve("findings.xlsx").toFile())) {
      for (Sheet sheet : workbook) {
        for (Row row : sheet) {
          for (Cell cell : row) {
            if (cell.getCellType() == CellType.FORMULA) formulas.add(cell.getCellFormula());
            if (cell.getCellType() == CellType.STRING) {
              String text = cell.getStringCellValue();
              words.add(text);
              if (text.matches("(?s)[=+@-].*"))
                assertThat(cell.getCellStyle().getQuotePrefixed()).as(text).isTrue();
            }
          }
        }
      }
    }
    assertThat(words).anyMatch(w -> w.contains("cmd|' /C calc'!A0"));
    assertThat(formulas).noneMatch(f -> f.matches("(?i).*(cmd|HYPERLINK\\(\"http|calc).*"));
  }

  private void assertSafe(List<String> paths) throws IOException {
    assertPlain(printed);
    assertThat(printed.lines()).noneMatch(line -> line.startsWith("clearbed: nothing to find"));
    assertThat(printed.lines()).allMatch(line -> line.length() < 600);
    try (Workbook workbook = WorkbookFactory.create(folder.resolve("findings.xlsx").toFile())) {
      for (Sheet sheet : workbook) {
        // What the next run reads back, as it was.
        int index = workbook.getSheetIndex(sheet);
        if (workbook.isSheetHidden(index) || workbook.isSheetVeryHidden(index)) continue;
        for (Row row : sheet) {
          for (Cell cell : row) {
            if (cell.getCellType() == CellType.STRING) assertPlain(cell.getStringCellValue());
          }
        }
      }
    }
    for (String file : List.of("findings.json", "findings.sarif")) {
      assertPlain(Files.readString(folder.resolve(file)));
    }
    JsonNode json = new ObjectMapper().readTree(folder.resolve("findings.json").toFile());
    List<String> told = json.get("documents").findValuesAsText("path");
    assertThat(told).containsAll(paths);
  }

  private static void assertPlain(String text) {
    int at = 0;
    while (at < text.length() && !DisplayText.isUnsafe(text.codePointAt(at))) {
      at += Character.charCount(text.codePointAt(at));
    }
    String near = text.substring(Math.max(0, at - 100), at);
    assertThat(at).as(near).isEqualTo(text.length());
  }

  private int check(Path input) {
    PrintStream oldOut = System.out;
    PrintStream oldErr = System.err;
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PrintStream both = new PrintStream(bytes, true, StandardCharsets.UTF_8);
    System.setOut(both);
    System.setErr(both);
    try {
      return Main.run(
          "check",
          input.toString(),
          "--output=" + folder.resolve("findings.xlsx"),
          "--json=" + folder.resolve("findings.json"),
          "--sarif=" + folder.resolve("findings.sarif"));
    } finally {
      System.setOut(oldOut);
      System.setErr(oldErr);
      printed = bytes.toString(StandardCharsets.UTF_8);
    }
  }
}
