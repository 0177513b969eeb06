package clearbed.track;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.cli.Main;
import clearbed.report.workbook.OfficeProgram;
import clearbed.report.workbook.layout.Headers;
import clearbed.samples.Clause;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.apache.poi.xwpf.usermodel.IBodyElement;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.apache.poi.xwpf.usermodel.XWPFTableCell;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Letters that come back with answers, from issue to issue. */
class RepliesTest {
  private static final String WANDERING = "coverage/section-09-30-00-at-least-80";
  private static final String PENDING = "vague/gl-1-as-approved";
  private static final String SETTLED = "unresolved/gl-2/grout.colour";

  @TempDir Path folder;
  private boolean office;

  @Test
  void answers_come_back_by_letter_through_three_issues_and_none_is_lost() throws Exception {
    threeIssues();
  }

  @Test
  void the_same_holds_when_office_programs_save_letters_and_workbooks_on_the_way()
      throws Exception {
    office = true;
    threeIssues();
  }

  private void threeIssues() throws Exception {
    Path first = check(1, null);
    Path letter = folder.resolve("letter-1.docx");
    run(0, "questions", first, "-o", letter, "--date", "2026-03-03");
    saved(letter);
    type(
        letter,
        Map.of(
            number(first, WANDERING), List.of("95 %,", "see letter 7"),
            number(first, PENDING), List.of("Half of it: a sample comes")));
    note(letter, "Dear all, please see below.");
    saved(letter);
    Path answered = folder.resolve("answered-1.xlsx");
    String told = run(0, "questions", first, "--replies", letter, "-o", answered);
    assertThat(told)
        .contains("Answers taken: " + numbers(first, WANDERING, PENDING))
        .contains("1 text could not be placed", "Dear all, please see below.");
    saved(answered);
    assertThat(text(answered, WANDERING, Headers.ANSWER)).isEqualTo("95 %,\nsee letter 7");
    assertThat(kept(answered)).contains("Dear all, please see below.");

    Path second = check(2, answered);
    assertThat(text(second, WANDERING, Headers.STATE)).isEqualTo("resolved");
    assertThat(text(second, PENDING, Headers.ANSWER)).isEqualTo("Half of it: a sample comes");
    Path mail = folder.resolve("letter-2.md");
    run(0, "questions", second, "-o", mail);
    answerInMail(mail, number(second, PENDING), "Approved is the sample of 4 April.");
    Path again = folder.resolve("answered-2.xlsx");
    assertThat(run(0, "questions", second, "--replies", mail, "-o", again))
        .contains("Answers taken: " + numbers(second, PENDING))
        .doesNotContain("placed");
    saved(again);
    assertThat(text(again, PENDING, Headers.ANSWER))
        .isEqualTo("Approved is the sample of 4 April.");
    assertThat(text(again, PENDING, Headers.EARLIER))
        .isEqualTo("2026-03-02: Half of it: a sample comes");

    Path third = check(3, again);
    Path copy = Files.copy(third, folder.resolve("copy.xlsx"));
    Desk.edit(
        copy,
        book -> {
          Desk.type(book, Headers.QUESTIONS, SETTLED, Headers.ANSWER, "Sea green");
          Desk.type(book, Headers.QUESTIONS, SETTLED, Headers.STATUS, "answered");
          Desk.addColumn(book, Headers.QUESTIONS, "Drawing");
          Desk.type(book, Headers.QUESTIONS, SETTLED, "Drawing", "A-651 revised");
        });
    saved(copy);
    Path last = folder.resolve("answered-3.xlsx");
    assertThat(run(0, "questions", third, "--replies", copy, "-o", last))
        .contains("Answers taken: " + numbers(third, SETTLED), "A-651 revised");
    saved(last);
    Path fourth = check(4, last);
    assertThat(text(fourth, SETTLED, Headers.STATE)).isEqualTo("answered");
    assertThat(text(fourth, SETTLED, Headers.EARLIER)).isEqualTo("2026-05-04: Sea green");
    assertThat(text(fourth, WANDERING, Headers.ANSWER)).isEqualTo("95 %,\nsee letter 7");
    assertThat(text(fourth, PENDING, Headers.EARLIER))
        .contains("2026-03-02: Half of it: a sample comes", "Approved is the sample of 4 April.");
    assertThat(kept(fourth)).contains("Dear all, please see below.", "A-651 revised");
  }

  @Test
  void a_mail_that_answers_by_numbers_alone_is_understood() throws Exception {
    Path first = check(1, null);
    int number = number(first, SETTLED);
    Path mail = folder.resolve("mail.txt");
    Files.writeString(mail, "Hello\n" + number + ". Sea green\nas sample 3\n99: none\n");
    Path out = folder.resolve("out.xlsx");
    String told = run(0, "questions", first, "--replies", mail, "-o", out);
    assertThat(text(out, SETTLED, Headers.ANSWER)).isEqualTo("Sea green\nas sample 3");
    assertThat(told).contains("2 texts could not be placed", "\"Hello\"", "\"none\"");
  }

  @Test
  void a_mail_that_quotes_without_end_is_answered_in_short_lines() throws Exception {
    Path first = check(1, null);
    int number = number(first, SETTLED);
    Path mail = folder.resolve("mail.txt");
    Files.writeString(
        mail, "x ".repeat(2_000) + "\n" + ">".repeat(100_000) + number + ". Sea <!--a--> green\n");
    Path out = folder.resolve("out.xlsx");
    String told = run(0, "questions", first, "--replies", mail, "-o", out);
    assertThat(text(out, SETTLED, Headers.ANSWER)).isEqualTo("Sea green");
    assertThat(told.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThan(400));
  }

  @Test
  void words_of_ours_that_somebody_changed_are_told_and_taken_for_no_answer() throws Exception {
    Path first = check(1, null);
    Path letter = folder.resolve("letter.md");
    run(0, "questions", first, "-o", letter);
    String text = Files.readString(letter);
    String changed = text.replaceFirst("- Suggested wording: ", "- Suggested wording: (no) ");
    assertThat(changed).isNotEqualTo(text);
    Files.writeString(letter, changed);
    Path out = folder.resolve("out.xlsx");
    assertThat(run(0, "questions", first, "--replies", letter, "-o", out))
        .contains("Answers taken: none", "1 text could not be placed", "Suggested wording: (no) ");
  }

  @Test
  void a_letter_that_came_back_unanswered_changes_nothing() throws Exception {
    Path first = check(1, null);
    Path letter = folder.resolve("letter.docx");
    run(0, "questions", first, "-o", letter, "--all");
    Path out = folder.resolve("out.xlsx");
    assertThat(run(0, "questions", first, "--replies", letter, "-o", out))
        .contains("Answers taken: none")
        .doesNotContain("placed");
  }

  @Test
  void other_endings_are_refused() throws Exception {
    Path first = check(1, null);
    assertThat(run(2, "questions", first, "-o", folder.resolve("letter.pdf"))).contains(".docx");
    Path out = folder.resolve("out.xlsx");
    assertThat(run(2, "questions", first, "--replies", folder.resolve("back.pdf"), "-o", out))
        .contains("save it so");
    Path letter = Files.writeString(folder.resolve("back.md"), "1: yes");
    assertThat(run(2, "questions", first, "--replies", letter)).contains("-o answered.xlsx");
    assertThat(run(2, "questions", first, "--replies", letter, "-o", first)).contains("only read");
  }

  private Path check(int issue, Path carried) throws Exception {
    Path documents = folder.resolve("issue-" + issue);
    papers(issue).write(documents);
    Path out = folder.resolve("findings-" + issue + ".xlsx");
    String date = List.of("2026-03-02", "2026-04-06", "2026-05-04", "2026-06-01").get(issue - 1);
    List<Object> line = new ArrayList<>(List.of("check", documents, "--quiet", "-o", out));
    line.addAll(List.of("--date", date));
    if (carried != null) line.addAll(List.of("--carry", carried));
    run(1, line.toArray());
    return out;
  }

  private static Papers papers(int issue) throws IOException {
    Papers papers = Papers.twins();
    if (issue == 1) return papers;
    Papers.Prose tiling = (Papers.Prose) papers.papers().get(1);
    List<Clause> clauses = new ArrayList<>(tiling.outline().clauses());
    clauses.removeIf(clause -> clause.text().startsWith("Mortar coverage: 80 percent"));
    Papers.Prose mended = new Papers.Prose(tiling.path(), tiling.outline().withClauses(clauses));
    return papers.replaced(1, mended);
  }

  /** Runs the program and gives what it printed. */
  private static String run(int code, Object... arguments) {
    PrintStream oldOut = System.out;
    PrintStream oldErr = System.err;
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream both = new PrintStream(said, true, StandardCharsets.UTF_8);
    System.setOut(both);
    System.setErr(both);
    try {
      int ended = Main.run(Arrays.stream(arguments).map(Object::toString).toArray(String[]::new));
      String text = said.toString(StandardCharsets.UTF_8);
      assertThat(ended).as(text).isEqualTo(code);
      return text;
    } finally {
      System.setOut(oldOut);
      System.setErr(oldErr);
    }
  }

  private void saved(Path file) throws Exception {
    if (!office) return;
    boolean there =
        file.toString().endsWith(".docx")
            ? OfficeProgram.openAndSaveWord(file)
            : OfficeProgram.openAndSave(file);
    Assumptions.assumeTrue(there, "LibreOffice is not installed");
  }

  private static int number(Path workbook, String id) throws IOException {
    return Integer.parseInt(text(workbook, id, Headers.NUMBER));
  }

  private static String numbers(Path workbook, String... ids) throws IOException {
    List<Integer> numbers = new ArrayList<>();
    for (String id : ids) numbers.add(number(workbook, id));
    return String.join(", ", numbers.stream().sorted().map(String::valueOf).toList());
  }

  private static String text(Path workbook, String id, String header) throws IOException {
    try (XSSFWorkbook book = Desk.open(workbook)) {
      return Desk.text(book, Headers.QUESTIONS, id, header);
    }
  }

  private static String kept(Path workbook) throws IOException {
    StringBuilder all = new StringBuilder();
    try (XSSFWorkbook book = Desk.open(workbook)) {
      for (Row row : book.getSheet("Set aside")) row.forEach(cell -> all.append(cell).append('\n'));
    }
    return all.toString();
  }

  /** Types each line as a paragraph into the box below the question. */
  private static void type(Path letter, Map<Integer, List<String>> answers) throws IOException {
    editWord(
        letter,
        word -> {
          int number = 0;
          for (IBodyElement element : word.getBodyElements()) {
            if (element instanceof XWPFParagraph paragraph) {
              String text = paragraph.getText();
              if (text.startsWith("Question "))
                number = Integer.parseInt(text.replaceAll("^Question (\\d+).*", "$1"));
            } else if (element instanceof XWPFTable box && answers.containsKey(number)) {
              XWPFTableCell cell = box.getRow(0).getCell(0);
              List<String> lines = answers.get(number);
              cell.getParagraphs().get(0).createRun().setText(lines.get(0));
              for (String more : lines.subList(1, lines.size()))
                cell.addParagraph().createRun().setText(more);
            }
          }
        });
  }

  /** Puts words over the first question. */
  private static void note(Path letter, String words) throws IOException {
    editWord(
        letter,
        word -> {
          XWPFParagraph second = word.getParagraphs().get(1);
          try (var cursor = second.getCTP().newCursor()) {
            word.insertNewParagraph(cursor).createRun().setText(words);
          }
        });
  }

  private interface Typing {
    void in(XWPFDocument word);
  }

  private static void editWord(Path file, Typing typing) throws IOException {
    try (InputStream in = Files.newInputStream(file);
        XWPFDocument word = new XWPFDocument(in)) {
      typing.in(word);
      try (OutputStream out = Files.newOutputStream(file)) {
        word.write(out);
      }
    }
  }

  /** A mail that quotes the letter, with an answer below the word Answer. */
  private static void answerInMail(Path letter, int number, String answer) throws IOException {
    StringBuilder mail = new StringBuilder();
    int at = 0;
    for (String line : Files.readAllLines(letter)) {
      if (line.startsWith("### "))
        at = Integer.parseInt(line.replaceAll("^### Question (\\d+).*", "$1"));
      mail.append("> ").append(line).append('\n');
      if (line.equals("Answer:") && at == number) mail.append(answer).append('\n');
    }
    Files.writeString(letter, mail);
  }
}
