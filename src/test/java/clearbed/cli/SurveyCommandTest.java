package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Small archives of real projects, from the command line to what is written. */
class SurveyCommandTest {
  private static final String SCHEDULE = "Tag,Material,Exposure,Mortar,Bond strength\n";

  @TempDir Path folder;
  private Path archive;

  @BeforeEach
  void an_archive_of_two_offices() throws IOException {
    archive = folder.resolve("archive");
    SampleOutputs.copied(Path.of("sample-specs/draft"), archive.resolve("North/Bath house"));
    SampleOutputs.copied(Path.of("sample-specs/issued"), archive.resolve("South/Bath house"));
    project("North/Quay", "GT-1,Glass tile,wet,ANSI A118.15,300 psi\n");
    zip("South/Weir.zip", "GT-2,Glass tile,wet,ANSI A118.1,450 psi\n");
  }

  private void project(String name, String rows) throws IOException {
    Path place = Files.createDirectories(archive.resolve(name));
    Files.writeString(place.resolve("schedule.csv"), SCHEDULE + rows);
  }

  private void zip(String name, String rows) throws IOException {
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(archive.resolve(name)))) {
      zip.putNextEntry(new ZipEntry("schedule.csv"));
      zip.write((SCHEDULE + rows).getBytes(StandardCharsets.UTF_8));
    }
  }

  private Shell survey(Object... more) {
    List<Object> words = new ArrayList<>(List.of("survey", archive, "-o", workbook()));
    words.addAll(List.of("--csv", folder.resolve("tables")));
    words.addAll(List.of(more));
    return Shell.run(words.toArray());
  }

  private Path workbook() {
    return folder.resolve("survey.xlsx");
  }

  private List<CSVRecord> table(String name) throws IOException {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    Path file = folder.resolve("tables").resolve(name);
    try (CSVParser rows = CSVParser.parse(file, StandardCharsets.UTF_8, format)) {
      return rows.getRecords();
    }
  }

  @Test
  void each_project_has_the_findings_that_check_gives_it_by_itself() throws Exception {
    Shell shell = survey();
    assertThat(shell.code()).as(shell.err()).isZero();
    Map<String, List<String>> found = new TreeMap<>();
    for (CSVRecord row : table("findings.csv"))
      found
          .computeIfAbsent(row.get("project"), project -> new ArrayList<>())
          .add(row.get("id") + " " + row.get("what_is_wrong"));
    assertThat(found.keySet())
        .containsExactly("North/Bath house", "North/Quay", "South/Bath house", "South/Weir.zip");
    for (String project : found.keySet()) {
      Path json = folder.resolve("one.json");
      Shell.run(
          "check",
          archive.resolve(project),
          "-o",
          folder.resolve("one.xlsx"),
          "--overwrite",
          "--quiet",
          "--json",
          json);
      List<String> alone = new ArrayList<>();
      for (JsonNode finding : new ObjectMapper().readTree(json.toFile()).get("findings"))
        alone.add(finding.get("id").asText() + " " + finding.get("message").asText());
      assertThat(found.get(project)).isEqualTo(alone);
    }
  }

  @Test
  void who_misses_a_bond_strength_is_a_click_away_from_the_number() throws Exception {
    survey();
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(workbook()))) {
      Row check = row(book.getSheet("Checks"), 0, "bond-strength");
      Cell number = check.getCell(3);
      List<Row> rows = behind(book, number);
      assertThat(rows).hasSize((int) number.getNumericCellValue()).isNotEmpty();
      assertThat(rows).allSatisfy(row -> assertThat(text(row, 0)).isEqualTo("bond-strength"));
      assertThat(rows).extracting(row -> text(row, 2)).contains("North/Bath house", "North/Quay");
      for (Row row : rows) {
        List<Row> findings = behind(book, row.getCell(6));
        assertThat(findings).hasSize((int) row.getCell(6).getNumericCellValue());
        assertThat(findings)
            .allSatisfy(
                finding -> {
                  assertThat(text(finding, 0)).isEqualTo(text(row, 2));
                  assertThat(text(finding, 2)).isEqualTo("bond-strength");
                });
      }
    }
  }

  @Test
  void every_number_of_the_projects_leads_to_as_many_rows_of_that_project() throws Exception {
    survey();
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(workbook()))) {
      int followed = 0;
      for (Row row : book.getSheet("Projects")) {
        if (row.getRowNum() == 0) continue;
        for (int column : new int[] {2, 3, 4, 5}) {
          Cell cell = row.getCell(column);
          if (cell.getNumericCellValue() == 0) continue;
          List<Row> rows = behind(book, cell);
          assertThat(rows).hasSize((int) cell.getNumericCellValue());
          assertThat(rows).allSatisfy(r -> assertThat(text(r, 0)).isEqualTo(text(row, 0)));
          followed++;
        }
      }
      assertThat(followed).isGreaterThan(8);
    }
  }

  @Test
  void a_broken_project_costs_its_own_line() throws Exception {
    Files.write(
        archive.resolve("South/Lost.zip"), "PK\3\4 no more of it".getBytes(StandardCharsets.UTF_8));
    Files.createDirectories(archive.resolve("South/Empty"));
    Shell shell = survey();
    assertThat(shell.code()).isEqualTo(3);
    assertThat(shell.err()).contains("South/Lost.zip").doesNotContain("Exception");
    Map<String, String> status = new TreeMap<>();
    for (CSVRecord row : table("projects.csv")) status.put(row.get("project"), row.get("status"));
    assertThat(status)
        .containsEntry("North/Quay", "checked")
        .containsEntry("South/Empty", "nothing to read")
        .hasSize(6);
    assertThat(table("projects.csv"))
        .filteredOn(row -> row.get("project").equals("South/Lost.zip"))
        .allSatisfy(row -> assertThat(row.get("documents_unreadable")).isEqualTo("1"));
  }

  @Test
  void the_same_projects_give_the_same_bytes_whatever_is_read_side_by_side_or_kept()
      throws Exception {
    survey("--jobs", 1);
    Map<String, String> first = written();
    survey("--jobs", 4, "--cache", folder.resolve("cache"));
    assertThat(written()).isEqualTo(first);
    Shell kept = survey("--jobs", 4, "--cache", folder.resolve("cache"));
    assertThat(written()).isEqualTo(first);
    assertThat(kept.out()).contains("4 projects as in an earlier run");
  }

  private Map<String, String> written() throws IOException {
    Map<String, String> all = Tree.of(folder.resolve("tables"));
    all.put("workbook", java.util.HexFormat.of().formatHex(Files.readAllBytes(workbook())));
    return all;
  }

  @Test
  void only_what_has_changed_is_checked_again() throws Exception {
    Path cache = folder.resolve("cache");
    survey("--cache", cache);
    project("North/Quay", "GT-1,Glass tile,wet,ANSI A118.15,460 psi\n");
    Shell changed = survey("--cache", cache);
    assertThat(changed.out()).contains("3 projects as in an earlier run");
    assertThat(table("findings.csv"))
        .noneMatch(
            row ->
                row.get("project").equals("North/Quay")
                    && row.get("check").equals("bond-strength"));
    Path layer =
        Files.writeString(
            folder.resolve("office.yaml"), "layer: ours\nchecks:\n  - {id: backing, off: true}\n");
    Shell ruled = survey("--cache", cache, "--rules", layer);
    assertThat(ruled.code()).as(ruled.err()).isZero();
    assertThat(ruled.out()).doesNotContain("as in an earlier run");
    assertThat(table("findings.csv")).noneMatch(row -> row.get("check").equals("backing"));
  }

  @Test
  void hostile_names_and_words_stay_texts_and_nothing_leaves_its_folder() throws Exception {
    project("North/=HYPERLINK(\"x\")", "=1+1,Glass tile,wet,+cmd,@x\n");
    project("North/..%2f..%2fout", "GT-1,Glass tile,wet,ANSI A118.15,300 psi\n");
    project("North/\u202Egnp", "GT-1,Glass tile,wet,ANSI A118.15,300 psi\n");
    Map<String, String> before = Tree.of(archive);
    Shell shell = survey();
    assertThat(shell.code()).as(shell.err()).isZero();
    assertThat(shell.out()).doesNotContain("\u202E");
    assertThat(Tree.of(archive)).isEqualTo(before);
    assertThat(Tree.of(folder.resolve("tables")).keySet())
        .containsExactlyInAnyOrder(
            "",
            "about-these-tables.txt",
            "projects.csv",
            "findings.csv",
            "entries.csv",
            "readings.csv");
    for (String name : List.of("projects.csv", "findings.csv", "entries.csv", "readings.csv"))
      for (CSVRecord row : table(name))
        assertThat(row)
            .allSatisfy(
                cell ->
                    assertThat(cell)
                        .doesNotStartWith("=")
                        .doesNotStartWith("+")
                        .doesNotStartWith("-")
                        .doesNotStartWith("@"));
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(workbook()))) {
      for (Sheet sheet : book)
        for (Row row : sheet)
          for (Cell cell : row) {
            assertThat(cell.getCellType()).isNotEqualTo(CellType.FORMULA);
            if (cell.getHyperlink() != null)
              assertThat(cell.getHyperlink().getAddress())
                  .satisfiesAnyOf(
                      to -> assertThat(to).startsWith("'"),
                      to -> assertThat(to).startsWith("archive/"));
          }
    }
  }

  @Test
  void what_it_wrote_is_known_again_and_what_others_changed_is_not_replaced() throws Exception {
    survey();
    assertThat(survey().code()).isZero();
    Path table = folder.resolve("tables/findings.csv");
    Files.writeString(table, Files.readString(table) + "mine,,,,,,,,,,,,,,\n");
    Shell shell = survey();
    assertThat(shell.code()).isEqualTo(2);
    assertThat(shell.err().lines()).hasSize(1);
    assertThat(shell.err()).contains("findings.csv").contains("--overwrite");
    assertThat(Files.readString(table)).endsWith("mine,,,,,,,,,,,,,,\n");
    assertThat(survey("--overwrite").code()).isZero();

    Path issue = Files.createDirectories(folder.resolve("issue"));
    Files.copy(archive.resolve("North/Quay/schedule.csv"), issue.resolve("schedule.csv"));
    Files.copy(workbook(), issue.resolve("s.xlsx"));
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(workbook()))) {
      book.getSheet("Summary").createRow(90).createCell(0).setCellValue("my note");
      SampleOutputs.save(book, issue.resolve("typed.xlsx"));
    }
    for (String name : List.of("projects.csv", "findings.csv", "entries.csv", "readings.csv"))
      Files.copy(folder.resolve("tables").resolve(name), issue.resolve(name));
    for (String name :
        List.of(
            "s.xlsx", "typed.xlsx", "projects.csv", "findings.csv", "entries.csv", "readings.csv"))
      SampleOutputs.assertOwn(SampleOutputs.read(issue, name));
  }

  @Test
  void cautions_and_who_decides_stand_in_the_workbook_and_beside_the_tables() throws Exception {
    survey();
    assertThat(Files.readString(folder.resolve("tables/about-these-tables.txt")))
        .contains("licensed professional", "Silica dust", "Falling tile");
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(workbook()))) {
      StringBuilder all = new StringBuilder();
      for (Row row : book.getSheet("Summary")) for (Cell cell : row) all.append(cell).append('\n');
      assertThat(all).contains("licensed professional", "Silica dust", "Falling tile");
    }
  }

  @Test
  void levels_that_the_user_names_are_the_groups() throws Exception {
    survey("--levels", "office");
    assertThat(table("projects.csv"))
        .extracting(row -> row.get("groups"))
        .containsExactly("office=North", "office=North", "office=South", "office=South");
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(workbook()))) {
      Row north = row(book.getSheet("Groups"), 1, "North");
      assertThat(north.getCell(2).getNumericCellValue()).isEqualTo(2);
      assertThat(behind(book, north.getCell(2)))
          .extracting(row -> text(row, 2))
          .containsExactly("North/Bath house", "North/Quay");
    }
  }

  @Test
  void what_makes_no_sense_is_refused_with_one_line() {
    for (Object[] words :
        List.of(
            new Object[] {"survey", folder.resolve("gone")},
            new Object[] {"survey", archive, "--depth", 0},
            new Object[] {"survey", archive.resolve("North"), "--depth", 7},
            new Object[] {"survey", archive, "--csv", archive.resolve("tables")},
            new Object[] {"survey", archive, "-o", folder.resolve("survey.csv")},
            new Object[] {"survey", archive.resolve("North/Quay/schedule.csv")})) {
      Shell shell = Shell.run(words);
      assertThat(shell.code()).as(shell.err()).isEqualTo(2);
      assertThat(shell.err().lines()).hasSize(1);
      assertThat(shell.out()).isEmpty();
    }
  }

  private static Row row(Sheet sheet, int column, String words) {
    for (Row row : sheet) if (text(row, column).equals(words)) return row;
    throw new AssertionError(words + " is not on " + sheet.getSheetName());
  }

  private static String text(Row row, int column) {
    return row.getCell(column).getStringCellValue();
  }

  /** The rows that the link of a cell leads to. */
  private static List<Row> behind(XSSFWorkbook book, Cell cell) {
    assertThat(cell.getHyperlink()).as("link at " + cell.getAddress()).isNotNull();
    String[] parts = cell.getHyperlink().getAddress().split("!");
    Sheet sheet = book.getSheet(parts[0].replace("'", ""));
    CellRangeAddress range = CellRangeAddress.valueOf(parts[1]);
    List<Row> rows = new ArrayList<>();
    for (int i = range.getFirstRow(); i <= range.getLastRow(); i++) rows.add(sheet.getRow(i));
    return rows;
  }
}
