package clearbed.track;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.cli.Main;
import clearbed.report.workbook.OfficeProgram;
import clearbed.report.workbook.layout.Headers;
import clearbed.samples.Clause;
import clearbed.samples.Schedule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Five issues of the documents of one project, and a person who works in the workbook after each.
 */
class FiveIssuesTest {
  private static final List<String> DATES =
      List.of("2026-03-02", "2026-04-06", "2026-05-04", "2026-06-01", "2026-07-06");

  /** Mended in the second issue, wrong again from the third on. */
  private static final String WANDERING = "coverage/section-09-30-00-at-least-80";

  /** Answered after the first issue; the documents never take it up. */
  private static final String PENDING = "vague/gl-1-as-approved";

  /** There in three issues, then settled for good. */
  private static final String SETTLED = "unresolved/gl-2/grout.colour";

  /** Comes in the third issue. */
  private static final String LATE = "unresolved/gl-4/grout.colour";

  private static final String ANSWER =
      "  Yes: C2TE \u2013 see \u201cletter 7\u201d,\nsecond page. ";

  @TempDir Path folder;
  private final Map<Path, String> digests = new LinkedHashMap<>();
  private boolean office;

  @Test
  void nothing_typed_is_lost_and_states_are_right_at_every_step() throws Exception {
    fiveIssues();
  }

  @Test
  void the_same_holds_when_another_spreadsheet_program_saves_the_workbook_after_each_issue()
      throws Exception {
    office = true;
    fiveIssues();
  }

  private void fiveIssues() throws Exception {
    issue(1);
    states(1, WANDERING, "new", PENDING, "new", SETTLED, "new");
    person(1, this::firstDay);

    issue(2);
    states(2, WANDERING, "resolved", PENDING, "answered", SETTLED, "open");
    line(2, WANDERING, "2026-03-02", "2026-03-02", "35", "2026-04-06");
    line(2, SETTLED, "2026-03-02", "2026-04-06", "35", "");
    summary(2, "issue of 2026-03-02", "resolved 1 ", "asked of nobody yet");
    person(
        2,
        book -> {
          Desk.type(book, Headers.QUESTIONS, SETTLED, Headers.ASKED_OF, "Interior designer");
          moveDown(book.getSheet(Headers.QUESTIONS), 1);
        });

    issue(3);
    states(3, WANDERING, "reopened", PENDING, "answered", SETTLED, "open", LATE, "new");
    line(3, WANDERING, "2026-03-02", "2026-05-04", "63", "");
    line(3, LATE, "2026-05-04", "2026-05-04", "0", "");
    summary(
        3,
        "issue of 2026-04-06",
        "reopened 1 ",
        "new 1 ",
        "with Architect 1 open",
        "with Interior designer 1 open");
    person(
        3,
        book -> {
          Desk.type(book, Headers.QUESTIONS, LATE, Headers.STATUS, "answered");
          Desk.type(book, Headers.QUESTIONS, LATE, Headers.ANSWER, "=blue");
        });

    issue(4);
    states(4, WANDERING, "open", PENDING, "answered", SETTLED, "resolved", LATE, "answered");
    line(4, SETTLED, "2026-03-02", "2026-05-04", "91", "2026-06-01");
    summary(4, "issue of 2026-05-04", "resolved 1 ", "reopened 0");
    person(4, book -> moveDown(book.getSheet(Headers.FINDINGS), 2));

    issue(5);
    states(5, WANDERING, "open", PENDING, "answered", SETTLED, "resolved", LATE, "answered");
    line(5, WANDERING, "2026-03-02", "2026-07-06", "126", "");
    line(5, SETTLED, "2026-03-02", "2026-05-04", "91", "2026-06-01");
    summary(5, "issue of 2026-06-01", "resolved 0 ", "new 0");
    everythingTypedIsThere(5);
    for (Map.Entry<Path, String> earlier : digests.entrySet()) {
      assertThat(digest(earlier.getKey()))
          .as(earlier.getKey().toString())
          .isEqualTo(earlier.getValue());
    }
  }

  /** What one does after the first issue. */
  private void firstDay(XSSFWorkbook book) {
    String questions = Headers.QUESTIONS;
    Desk.type(book, questions, PENDING, Headers.STATUS, "answered");
    Desk.type(book, questions, PENDING, Headers.ANSWER, ANSWER);
    Desk.type(book, questions, PENDING, Headers.NOTE, "=ring them @ 9");
    Desk.type(book, questions, WANDERING, Headers.ASKED_OF, "Architect");
    date(book, WANDERING, Headers.DATE_ASKED, "2026-03-05");
    date(book, WANDERING, Headers.DUE, "2026-03-19");
    Desk.addColumn(book, questions, "RFI");
    Desk.type(book, questions, WANDERING, "RFI", "RFI-0012");
    Desk.addColumn(book, Headers.FINDINGS, "Trade");
    Desk.type(book, Headers.FINDINGS, SETTLED, "Trade", "tiling, lot 7");
    emphasise(book);
    XSSFSheet sheet = book.getSheet(questions);
    var drawing = sheet.createDrawingPatriarch();
    var comment = drawing.createCellComment(drawing.createAnchor(0, 0, 0, 0, 2, 3, 5, 6));
    comment.setString(book.getCreationHelper().createRichTextString("ask Wren about this"));
    comment.setAddress(answerCell(book).getAddress());
    XSSFSheet own = book.createSheet("Site notes");
    own.createRow(0).createCell(0).setCellValue("Met on site, 3 March");
    own.getRow(0).createCell(1).setCellFormula("COUNTA(Findings!A2:A400)");
    moveDown(sheet, 1);
    moveDown(sheet, 3);
  }

  private static void emphasise(XSSFWorkbook book) {
    CellStyle style = book.createCellStyle();
    style.cloneStyleFrom(answerCell(book).getCellStyle());
    style.setFillForegroundColor(IndexedColors.LIGHT_GREEN.getIndex());
    style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
    answerCell(book).setCellStyle(style);
  }

  private static Cell answerCell(XSSFWorkbook book) {
    int column = Desk.layout(book, Headers.QUESTIONS).column(Headers.ANSWER);
    return Desk.row(book, Headers.QUESTIONS, PENDING).getCell(column);
  }

  private static void date(XSSFWorkbook book, String id, String header, String day) {
    int column = Desk.layout(book, Headers.QUESTIONS).column(header);
    Row row = Desk.row(book, Headers.QUESTIONS, id);
    row.getCell(column, Row.MissingCellPolicy.CREATE_NULL_AS_BLANK)
        .setCellValue(LocalDate.parse(day));
  }

  /** Takes a row out and puts it at the end. */
  private static void moveDown(XSSFSheet sheet, int row) {
    int last = sheet.getLastRowNum();
    sheet.shiftRows(row, row, last + 1 - row);
    sheet.shiftRows(row + 1, last + 1, -1);
  }

  private void everythingTypedIsThere(int issue) throws Exception {
    try (XSSFWorkbook book = Desk.open(file(issue))) {
      String questions = Headers.QUESTIONS;
      assertThat(Desk.text(book, questions, PENDING, Headers.STATUS)).isEqualTo("answered");
      assertThat(Desk.text(book, questions, PENDING, Headers.ANSWER)).isEqualTo(ANSWER);
      assertThat(Desk.text(book, questions, PENDING, Headers.NOTE)).isEqualTo("=ring them @ 9");
      assertThat(Desk.text(book, questions, LATE, Headers.ANSWER)).isEqualTo("=blue");
      assertThat(Desk.text(book, questions, WANDERING, Headers.ASKED_OF)).isEqualTo("Architect");
      assertThat(Desk.text(book, questions, WANDERING, Headers.DATE_ASKED)).isEqualTo("2026-03-05");
      assertThat(Desk.text(book, questions, WANDERING, Headers.DUE)).isEqualTo("2026-03-19");
      assertThat(Desk.text(book, questions, WANDERING, "RFI")).isEqualTo("RFI-0012");
      assertThat(Desk.text(book, Headers.FINDINGS, SETTLED, "Trade")).isEqualTo("tiling, lot 7");
      CellAddress answer = answerCell(book).getAddress();
      assertThat(book.getSheet(questions).getCellComment(answer).getString().getString())
          .isEqualTo("ask Wren about this");
      assertThat(answerCell(book).getCellStyle().getFillPattern())
          .isEqualTo(FillPatternType.SOLID_FOREGROUND);
      byte[] green =
          ((org.apache.poi.xssf.usermodel.XSSFColor)
                  answerCell(book).getCellStyle().getFillForegroundColorColor())
              .getRGB();
      assertThat(HexFormat.of().formatHex(green)).isEqualTo("ccffcc");
      XSSFSheet own = book.getSheet("Site notes");
      assertThat(own.getRow(0).getCell(0).getStringCellValue()).isEqualTo("Met on site, 3 March");
      assertThat(own.getRow(0).getCell(1).getStringCellValue()).contains("Findings!A2:A400");
      // The first question went to the end before anything was added.
      assertThat(Desk.row(book, questions, WANDERING).getRowNum()).isGreaterThan(1);
      // The formula of their own sheet, which is text now; nothing else.
      assertThat(book.getSheet("Set aside").getLastRowNum()).isEqualTo(1);
    }
  }

  private void states(int issue, String... idsAndStates) throws Exception {
    try (XSSFWorkbook book = Desk.open(file(issue))) {
      for (int i = 0; i < idsAndStates.length; i += 2) {
        String id = idsAndStates[i];
        for (String sheet : List.of(Headers.FINDINGS, Headers.QUESTIONS)) {
          assertThat(Desk.text(book, sheet, id, Headers.STATE))
              .as("%s on %s in issue %d", id, sheet, issue)
              .isEqualTo(idsAndStates[i + 1]);
        }
      }
    }
  }

  private void line(int issue, String id, String first, String last, String age, String gone)
      throws Exception {
    try (XSSFWorkbook book = Desk.open(file(issue))) {
      assertThat(
              List.of(
                  Desk.text(book, Headers.FINDINGS, id, Headers.FIRST_SEEN),
                  Desk.text(book, Headers.FINDINGS, id, Headers.LAST_SEEN),
                  Desk.text(book, Headers.FINDINGS, id, Headers.AGE),
                  Desk.text(book, Headers.FINDINGS, id, Headers.GONE_ON)))
          .as("%s in issue %d", id, issue)
          .containsExactly(first, last, age, gone);
    }
  }

  private void summary(int issue, String... words) throws Exception {
    try (XSSFWorkbook book = Desk.open(file(issue))) {
      StringBuilder summary = new StringBuilder();
      for (Row row : book.getSheet("Summary")) row.forEach(c -> summary.append(c).append(' '));
      assertThat(summary).contains(words);
      assertThat(summary).doesNotContain("Remark");
    }
  }

  private void issue(int number) throws Exception {
    Path documents = folder.resolve("issue-" + number);
    papers(number).write(documents);
    List<String> line = new ArrayList<>();
    line.addAll(List.of("check", documents.toString(), "--quiet"));
    line.addAll(List.of("-o", file(number).toString(), "--date", DATES.get(number - 1)));
    if (number > 1) line.addAll(List.of("--carry", file(number - 1).toString()));
    assertThat(Main.run(line.toArray(String[]::new))).isEqualTo(1);
    if (number > 1) assertThat(digest(file(number - 1))).isEqualTo(digests.get(file(number - 1)));
  }

  /** The person works in the workbook and saves; from then on it is what came back. */
  private void person(int issue, Consumer<XSSFWorkbook> work) throws Exception {
    Desk.edit(file(issue), work);
    if (office) {
      Assumptions.assumeTrue(
          OfficeProgram.openAndSave(file(issue)), "LibreOffice is not installed");
    }
    digests.put(file(issue), digest(file(issue)));
  }

  private Path file(int issue) {
    return folder.resolve("findings-" + issue + ".xlsx");
  }

  private static String digest(Path file) throws Exception {
    byte[] bytes = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
    return HexFormat.of().formatHex(bytes);
  }

  /** The documents of an issue: what the text above says, and the usual coming and going. */
  private static Papers papers(int issue) throws IOException {
    Papers papers = Papers.twins();
    Papers.Table schedule = (Papers.Table) papers.papers().get(0);
    if (issue >= 3) schedule = cell(schedule, "GL-4", "grout.colour", "TBD");
    if (issue >= 4) schedule = cell(schedule, "GL-2", "grout.colour", "Sea green");
    Papers.Prose tiling = (Papers.Prose) papers.papers().get(1);
    if (issue == 2) {
      List<Clause> clauses = new ArrayList<>(tiling.outline().clauses());
      clauses.removeIf(clause -> clause.text().startsWith("Mortar coverage: 80 percent"));
      tiling = new Papers.Prose(tiling.path(), tiling.outline().withClauses(clauses));
    }
    papers = papers.replaced(0, schedule).replaced(1, tiling);
    java.util.Random random = new java.util.Random(issue);
    if (issue == 3) papers = PaperEdit.SORT_ROWS.on(papers, random);
    if (issue == 4) papers = PaperEdit.INSERT_PARAGRAPH.on(papers, random);
    if (issue == 5) papers = PaperEdit.MOVE_FILE_TO_SUB_FOLDER.on(papers, random);
    return papers;
  }

  private static Papers.Table cell(Papers.Table table, String tag, String column, String text) {
    Schedule schedule = table.schedule();
    List<List<String>> rows = new ArrayList<>(schedule.rows());
    for (int i = 0; i < rows.size(); i++) {
      if (!rows.get(i).get(0).equals(tag)) continue;
      List<String> cells = new ArrayList<>(rows.get(i));
      cells.set(schedule.column(column), text);
      rows.set(i, cells);
    }
    return table.with(schedule.withRows(rows));
  }
}
