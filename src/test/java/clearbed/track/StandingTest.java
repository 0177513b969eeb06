package clearbed.track;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.model.report.Finding;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import clearbed.report.DemoReport;
import clearbed.report.letter.Letter;
import clearbed.report.letter.LetterMarkdown;
import clearbed.report.workbook.FindingsWorkbook;
import clearbed.report.workbook.layout.Headers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Letter, workbook and exit code agree on what is open (src/site/question-log.md). */
class StandingTest {
  private static final String ONE = "bond-strength/GT-1";
  private static final String TWO = "bond-strength/GT-2";
  private static final String THREE = "bond-strength/GT-3";

  @TempDir Path folder;
  private Path file;
  private int month = 2;

  @BeforeEach
  void a_first_issue() throws Exception {
    file = folder.resolve("findings.xlsx");
    FindingsWorkbook.write(DemoReport.report("2026-02-02", any -> true), file);
  }

  private Carry issue(Report report) throws Exception {
    Carry carry = EarlierLog.read(file).into(report);
    FindingsWorkbook.write(carry.report(), carry.log(), UnaryOperator.identity(), file);
    return carry;
  }

  private Carry issue(Predicate<Finding> still) throws Exception {
    return issue(DemoReport.report("2026-%02d-02".formatted(++month), still));
  }

  private static Predicate<Finding> without(String id) {
    return finding -> !finding.id().equals(id);
  }

  private void reply(String id, String status, String answer) throws Exception {
    Desk.edit(
        file,
        book -> {
          Desk.type(book, Headers.QUESTIONS, id, Headers.STATUS, status);
          Desk.type(book, Headers.QUESTIONS, id, Headers.ANSWER, answer);
        });
  }

  private static State state(Carry carry, String id) {
    return carry.log().lines().get(id).finding().state();
  }

  /** Tags of the questions on the bond strength, each a finding of its own. */
  private Set<String> asked(boolean all) throws Exception {
    return OpenQuestions.read(file, all).questions().stream()
        .filter(question -> question.question().contains("shear bond"))
        .map(question -> "bond-strength/" + question.tags())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private String letter(boolean all) throws Exception {
    return LetterMarkdown.text(OpenQuestions.read(file, all));
  }

  @Test
  void a_finding_that_came_back_is_asked_again_though_its_old_reply_says_answered()
      throws Exception {
    reply(ONE, "answered", "450 psi");
    assertThat(asked(false)).doesNotContain(ONE);
    issue(without(ONE));
    Carry back = issue(any -> true);
    assertThat(state(back, ONE)).isEqualTo(State.REOPENED);
    assertThat(asked(false)).contains(ONE);
    assertThat(letter(false))
        .contains("- Status: open again: it came back, or more tiles have it now")
        .contains("- Answer before that: 450 psi");

    assertThat(state(issue(any -> true), ONE)).isEqualTo(State.OPEN);
    assertThat(asked(false)).contains(ONE);
    reply(ONE, "answered", "now 510 psi, by letter");
    assertThat(asked(false)).doesNotContain(ONE);
    Carry renewed = issue(any -> true);
    assertThat(state(renewed, ONE)).isEqualTo(State.ANSWERED);
    assertThat(renewed.log().lines().get(ONE).refuted()).isEmpty();
  }

  @Test
  void a_question_that_was_dropped_is_asked_again_when_its_finding_comes_back() throws Exception {
    reply(ONE, "dropped", "");
    assertThat(asked(false)).doesNotContain(ONE);
    issue(without(ONE));
    issue(any -> true);
    assertThat(asked(false)).contains(ONE);
  }

  @Test
  void a_dropped_question_leaves_its_finding_open_and_says_so_wherever_it_is_listed()
      throws Exception {
    reply(ONE, "Dropped", "the owner decides on site");
    Carry carry = issue(any -> true);
    assertThat(state(carry, ONE)).isEqualTo(State.OPEN);
    assertThat(asked(false)).doesNotContain(ONE);
    assertThat(asked(true)).contains(ONE);
    assertThat(letter(true))
        .contains("- Status: dropped: not asked any more; the finding is still open")
        .contains("17 questions are open. ")
        .contains("One more is listed with them, answered or dropped.");
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(Desk.text(book, Headers.FINDINGS, ONE, Headers.REMARK))
          .isEqualTo("its question was dropped; the finding stays open");
      assertThat(summary(book)).contains("    question dropped 1 open (not asked any more)");
    }
  }

  @Test
  void an_answer_without_the_status_is_printed_with_the_question_to_be_confirmed()
      throws Exception {
    reply(ONE, "asked", "some 400 psi, they think");
    reply(TWO, "", "see letter 7");
    reply(THREE, "answered", "500 psi");
    assertThat(asked(false)).contains(ONE, TWO).doesNotContain(THREE);
    assertThat(letter(false))
        .contains("17 questions are open. 2 have an answer so far, given below: please confirm ")
        .contains("- Answer so far: some 400 psi, they think");
    assertThat(letter(true)).contains("- Status: answered\n- Answer: 500 psi");
    Carry carry = issue(any -> true);
    assertThat(state(carry, ONE)).isEqualTo(State.OPEN);
    assertThat(carry.log().remarks())
        .contains(
            "Questions with an answer but not the status \"answered\"; they count as open: 1, 2.");
  }

  @Test
  void a_status_that_is_none_of_ours_counts_as_open_and_that_is_said() throws Exception {
    reply(ONE, "closed", "yes");
    reply(TWO, "answered", "");
    Carry carry = issue(any -> true);
    assertThat(asked(false)).contains(ONE).doesNotContain(TWO);
    assertThat(carry.log().remarks())
        .anyMatch(remark -> remark.startsWith("Questions with a status that is none of the words"))
        .anyMatch(remark -> remark.endsWith("and no answer; they count as answered: 2."));
  }

  @Test
  void what_is_open_is_asked_even_when_its_row_or_the_sheet_was_deleted() throws Exception {
    Desk.edit(
        file,
        book -> {
          Row row = Desk.row(book, Headers.QUESTIONS, ONE);
          row.getSheet().removeRow(row);
        });
    assertThat(asked(false)).contains(ONE);
    Desk.edit(file, book -> book.removeSheetAt(book.getSheetIndex(Headers.QUESTIONS)));
    assertThat(asked(false)).contains(ONE, TWO);
  }

  @Test
  void findings_that_ask_nothing_are_in_the_letter_too() throws Exception {
    Letter letter = OpenQuestions.read(file, false);
    assertThat(LetterMarkdown.text(letter))
        .contains("18 questions are open. Besides, 6 findings that ask nothing are open.")
        .contains("### Finding: GT-4\n\nWhat is stated for GT-4 does not do");
  }

  @Test
  void a_finding_that_a_rule_file_hides_is_never_asked_even_without_the_hidden_sheet()
      throws Exception {
    Desk.edit(file, book -> Desk.type(book, Headers.FINDINGS, ONE, Headers.STATE, "suppressed"));
    assertThat(asked(true)).contains(ONE);
    Desk.edit(file, book -> book.removeSheetAt(book.getSheetIndex("For the next issue")));
    assertThat(asked(true)).doesNotContain(ONE).contains(TWO);
  }

  @Test
  void an_old_reply_stays_outdated_when_the_hidden_sheet_is_taken_away() throws Exception {
    reply(ONE, "answered", "450 psi");
    issue(without(ONE));
    issue(any -> true);
    Desk.edit(file, book -> book.removeSheetAt(book.getSheetIndex("For the next issue")));
    assertThat(asked(false)).contains(ONE);
    assertThat(state(issue(any -> true), ONE)).isEqualTo(State.OPEN);
  }

  /** Whatever people reply in whatever order: one definition, everywhere. */
  @Test
  void letter_workbook_and_exit_code_agree_whatever_people_reply() throws Exception {
    Random random = new Random(7);
    List<String> ids = List.of(ONE, TWO, THREE, "joint-sealant/GT-1", "mockup/section 09 30 13");
    List<String> words = List.of("", "asked", "answered", "dropped", "ANSWERED ", "done");
    for (int round = 0; round < 6; round++) {
      for (String id : ids) {
        if (random.nextInt(3) > 0) continue;
        reply(id, words.get(random.nextInt(words.size())), random.nextBoolean() ? "so" : "");
      }
      Set<String> gone =
          ids.stream().filter(id -> random.nextInt(4) == 0).collect(Collectors.toSet());
      Carry carry = issue(finding -> !gone.contains(finding.id()));
      agree(carry);
    }
  }

  private void agree(Carry carry) throws Exception {
    List<String> counted = new ArrayList<>();
    List<String> inLetter = new ArrayList<>();
    for (Finding finding : carry.report().findings()) {
      boolean dropped =
          carry.log().lines().containsKey(finding.id())
              && carry.log().lines().get(finding.id()).isDropped();
      if (finding.isOpen() && !dropped) counted.add(finding.message());
    }
    for (Letter.Question question : OpenQuestions.read(file, false).questions()) {
      inLetter.add(question.asksNothing() ? question.words() : question.found());
    }
    assertThat(inLetter).hasSameSizeAs(counted);
    for (String message : counted) {
      assertThat(inLetter).as(message).anyMatch(words -> words.startsWith(message));
    }
    try (XSSFWorkbook book = Desk.open(file)) {
      for (QuestionLog.LogLine line : carry.log().lines().values()) {
        Finding finding = line.finding();
        String state = finding.suppressed().isEmpty() ? finding.state().word() : "suppressed";
        assertThat(Desk.text(book, Headers.FINDINGS, finding.id(), Headers.STATE)).isEqualTo(state);
      }
      long open = carry.report().findings().stream().filter(Finding::isOpen).count();
      assertThat(summary(book)).contains("open in all " + open + " (");
    }
  }

  private static String summary(XSSFWorkbook book) {
    StringBuilder text = new StringBuilder();
    for (Row row : book.getSheet("Summary")) row.forEach(cell -> text.append(cell).append(' '));
    return text.toString();
  }

  @Test
  void what_stands_in_a_document_that_was_left_out_is_not_resolved() throws Exception {
    Report all = DemoReport.report("2026-03-02", without("mockup/section 09 30 13"));
    Report.DocumentSummary spec = all.documents().get(1);
    assertThat(spec.path()).isEqualTo(DemoReport.SPEC);
    Carry part = issue(with(all, all.documents().stream().filter(d -> d != spec).toList()));
    assertThat(state(part, "mockup/section 09 30 13")).isEqualTo(State.OPEN);
    assertThat(part.log().lines().get("mockup/section 09 30 13").remark())
        .isEqualTo(
            "not checked again on 2026-03-02: its document "
                + DemoReport.SPEC
                + " is not among those checked");
    // Nor in the issue after it, which lacks it as well.
    part = issue(with(all, all.documents().stream().filter(d -> d != spec).toList()));
    assertThat(state(part, "mockup/section 09 30 13")).isEqualTo(State.OPEN);
    assertThat(state(issue(all), "mockup/section 09 30 13")).isEqualTo(State.RESOLVED);
  }

  @Test
  void a_tag_that_is_in_no_document_any_more_stays_open_while_one_cannot_be_read()
      throws Exception {
    Report all = DemoReport.report("2026-03-02", without(TWO));
    Report rest =
        new Report(
            all.run(),
            all.documents(),
            all.entries().stream().filter(entry -> !entry.tag().equals("GT-2")).toList(),
            all.findings(),
            all.verdicts(),
            all.calculations(),
            all.checks());
    // The details of the demo project are pictures without text.
    Carry carry = issue(rest);
    assertThat(state(carry, TWO)).isEqualTo(State.OPEN);
    assertThat(carry.log().lines().get(TWO).remark())
        .endsWith(
            "GT-2 is in none of the documents that were read, and these were not read: Moorhen"
                + " Baths/details.pdf");
    assertThat(state(issue(all), TWO)).isEqualTo(State.RESOLVED);
  }

  @Test
  void a_document_under_another_name_takes_the_place_of_the_one_that_is_gone() throws Exception {
    Report all = DemoReport.report("2026-03-02", without("mockup/section 09 30 13"));
    for (String name : List.of("tiling rev B.docx", "09-30-13 Tiling.odt")) {
      FindingsWorkbook.write(DemoReport.report("2026-02-02", any -> true), file);
      List<Report.DocumentSummary> documents = new ArrayList<>(all.documents());
      documents.set(
          1,
          new Report.DocumentSummary("B/" + name, "", Document.Status.READ, "", 0, 0, List.of()));
      assertThat(state(issue(with(all, documents)), "mockup/section 09 30 13"))
          .as(name)
          .isEqualTo(State.RESOLVED);
    }
  }

  private static Report with(Report report, List<Report.DocumentSummary> documents) {
    return new Report(
        report.run(),
        documents,
        report.entries(),
        report.findings(),
        report.verdicts(),
        report.calculations(),
        report.checks());
  }
}
