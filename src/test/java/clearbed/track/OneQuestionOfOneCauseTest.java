package clearbed.track;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.cli.Main;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.State;
import clearbed.report.letter.Letter;
import clearbed.report.workbook.OfficeProgram;
import clearbed.report.workbook.layout.Headers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A schedule that leaves one thing out for several tiles asks once, in issue after issue: tiles
 * leave the question and come to it, people answer, other programs save the workbook.
 */
class OneQuestionOfOneCauseTest {
  private static final String ONE = "translucency/gt-1";
  private static final String TWO = "translucency/gt-2";
  private static final String THREE = "translucency/gt-3";
  private static final String FOUR = "translucency/gt-4";

  @TempDir Path folder;
  private int issues;

  /** An issue in which the tiles are opaque, or nothing is said where the word is empty. */
  private void issue(String... opacity) throws Exception {
    StringBuilder rows =
        new StringBuilder("Tag,Description,Size,Location,Surface,Substrate,Opacity\n");
    for (int i = 0; i < opacity.length; i++)
      rows.append(
          "GT-%d,Glass mosaic tile,1 x 2 in,Lobby,Wall,Cement board,%s\n"
              .formatted(i + 1, opacity[i]));
    Path documents = Files.createDirectory(folder.resolve("issue-" + ++issues));
    Files.writeString(documents.resolve("schedule.csv"), rows);
    Files.writeString(
        documents.resolve("section.txt"),
        "SECTION 09 30 00\nTILING\n\n3.1 PREPARATION\nA. Deflection of the substrate: L/240.\n");
    List<String> line = new ArrayList<>(List.of("check", documents.toString(), "--quiet"));
    line.addAll(List.of("-o", file().toString(), "--date", "2026-0" + issues + "-02"));
    if (issues > 1) line.addAll(List.of("--carry", file(issues - 1).toString()));
    Main.run(line.toArray(String[]::new));
  }

  private Path file() {
    return file(issues);
  }

  private Path file(int issue) {
    return folder.resolve("findings-" + issue + ".xlsx");
  }

  private QuestionLog.LogLine line(String id) throws Exception {
    return EarlierLog.read(file()).log().lines().get(id);
  }

  private State state(String id) throws Exception {
    return line(id).state();
  }

  private int number(String id) throws Exception {
    return line(id).number();
  }

  private String cell(String sheet, String id, String header) throws Exception {
    try (XSSFWorkbook book = Desk.open(file())) {
      return Desk.text(book, sheet, id, header);
    }
  }

  private void type(String id, String header, String text) throws Exception {
    Desk.edit(file(), book -> Desk.type(book, Headers.QUESTIONS, id, header, text));
  }

  private List<Letter.Question> asked() throws Exception {
    return OpenQuestions.read(file(), false).questions().stream()
        .filter(question -> question.question().contains("opaque, translucent"))
        .toList();
  }

  @Test
  void what_is_missing_of_several_tiles_is_one_row_and_one_question_that_names_them_all()
      throws Exception {
    issue("", "", "");
    assertThat(number(ONE)).isEqualTo(number(TWO)).isEqualTo(number(THREE)).isPositive();
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.TAGS)).isEqualTo("GT-1, GT-2, GT-3");
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.QUESTION))
        .isEqualTo("Are GT-1 to GT-3 opaque, translucent or transparent?");
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.PLACE))
        .endsWith("schedule.csv, cell G2; G3; G4");
    try (XSSFWorkbook book = Desk.open(file())) {
      assertThat(Desk.row(book, Headers.QUESTIONS, TWO)).isNull();
      assertThat(Desk.text(book, Headers.FINDINGS, TWO, Headers.TAGS)).isEqualTo("GT-2");
      assertThat(Desk.text(book, Headers.FINDINGS, TWO, Headers.ASKED_IN))
          .isEqualTo(Desk.text(book, Headers.QUESTIONS, ONE, Headers.NUMBER));
    }
    assertThat(asked())
        .singleElement()
        .satisfies(
            question -> {
              assertThat(question.tags()).isEqualTo("GT-1, GT-2, GT-3");
              assertThat(question.found())
                  .isEqualTo(
                      "Whether GT-1 to GT-3 are opaque, translucent or transparent is not stated.");
            });
  }

  @Test
  void what_stands_in_one_place_is_one_question_and_other_places_are_others() throws Exception {
    issue("opaque", "opaque", "opaque");
    assertThat(number("deflection/gt-2")).isEqualTo(number("deflection/gt-3")).isPositive();
    assertThat(number("mockup/section-09-30-00")).isNotEqualTo(number("deflection/gt-2"));
  }

  @Test
  void a_tile_comes_to_a_question_that_nobody_was_asked_and_leaves_it_when_it_is_mended()
      throws Exception {
    issue("", "", "opaque");
    int asked = number(ONE);
    type(ONE, Headers.STATUS, "to ask");
    type(ONE, Headers.ASKED_OF, "Architect");
    issue("opaque", "", "", "");
    assertThat(number(THREE)).isEqualTo(number(FOUR)).isEqualTo(asked);
    assertThat(state(ONE)).isEqualTo(State.RESOLVED);
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.TAGS)).isEqualTo("GT-2, GT-3, GT-4");
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.STATE)).isEqualTo("open");
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.ASKED_OF)).isEqualTo("Architect");
    assertThat(asked()).extracting(Letter.Question::number).containsExactly(asked);

    issue("opaque", "opaque", "opaque", "opaque");
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.STATE)).isEqualTo("resolved");
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.TAGS)).isEqualTo("GT-1, GT-2, GT-3, GT-4");
    assertThat(asked()).isEmpty();
  }

  @Test
  void a_tile_that_comes_after_the_question_was_asked_is_asked_under_a_number_of_its_own()
      throws Exception {
    issue("", "", "opaque");
    type(ONE, Headers.STATUS, "answered");
    type(ONE, Headers.ANSWER, "Both opaque, by addendum 2.");
    issue("", "", "", "opaque");
    assertThat(List.of(state(ONE), state(TWO))).containsOnly(State.ANSWERED);
    assertThat(state(THREE)).isEqualTo(State.NEW);
    assertThat(asked())
        .singleElement()
        .satisfies(
            question -> {
              assertThat(question.number()).isNotEqualTo(1);
              assertThat(question.question())
                  .isEqualTo("Is GT-3 opaque, translucent or transparent?");
            });
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.ANSWER))
        .isEqualTo("Both opaque, by addendum 2.");
  }

  @Test
  void a_tile_that_returns_to_an_answered_question_is_asked_again_and_the_others_are_not()
      throws Exception {
    returnsToAnAnsweredQuestion();
  }

  @Test
  void the_same_holds_when_the_hidden_sheet_was_taken_away() throws Exception {
    between =
        () ->
            Desk.edit(file(), book -> book.removeSheetAt(book.getSheetIndex("For the next issue")));
    returnsToAnAnsweredQuestion();
  }

  @Test
  void the_same_holds_when_another_program_saves_the_workbook() throws Exception {
    between =
        () ->
            Assumptions.assumeTrue(
                OfficeProgram.openAndSave(file()), "LibreOffice is not installed");
    returnsToAnAnsweredQuestion();
  }

  private interface Step {
    void run() throws Exception;
  }

  private Step between = () -> {};

  private void returnsToAnAnsweredQuestion() throws Exception {
    issue("", "", "");
    int asked = number(ONE);
    // The answer comes back by letter, under the one number.
    Path letter =
        Files.writeString(
            folder.resolve("back.md"),
            "### Question %d: GT-1, GT-2, GT-3\n\nAnswer: All three opaque.\n".formatted(asked));
    Path replied = folder.resolve("replied.xlsx");
    assertThat(
            Main.run(
                "questions",
                file().toString(),
                "--replies",
                letter.toString(),
                "-o",
                replied.toString()))
        .isZero();
    Files.move(replied, file(), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    assertThat(line(THREE).reply().answer()).isEqualTo("All three opaque.");
    type(ONE, Headers.STATUS, "answered");
    between.run();

    issue("opaque", "", "");
    assertThat(state(ONE)).isEqualTo(State.RESOLVED);
    assertThat(List.of(state(TWO), state(THREE))).containsOnly(State.ANSWERED);
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.STATE)).isEqualTo("answered");
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.TAGS)).isEqualTo("GT-2, GT-3");
    between.run();

    issue("", "", "");
    assertThat(state(ONE)).isEqualTo(State.REOPENED);
    assertThat(List.of(state(TWO), state(THREE))).containsOnly(State.ANSWERED);
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.TAGS)).isEqualTo("GT-1");
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.ANSWER)).isEqualTo("All three opaque.");
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.EARLIER)).contains("All three opaque.");
    assertThat(asked())
        .singleElement()
        .satisfies(
            question -> {
              assertThat(question.number()).isEqualTo(asked);
              assertThat(question.tags()).isEqualTo("GT-1");
              assertThat(question.standing()).isEqualTo(Letter.Standing.OUTDATED);
              assertThat(question.answer()).isEqualTo("All three opaque.");
            });
  }

  @Test
  void a_finding_of_a_section_that_spreads_to_another_tile_after_its_reply_is_open_again()
      throws Exception {
    String mockup = "mockup/section-09-30-00";
    issue("opaque", "opaque");
    type(mockup, Headers.STATUS, "answered");
    type(mockup, Headers.ANSWER, "One of each, in the lobby.");
    issue("opaque", "opaque");
    assertThat(state(mockup)).isEqualTo(State.ANSWERED);
    issue("opaque", "opaque", "opaque");
    assertThat(state(mockup)).isEqualTo(State.OPEN);
    assertThat(cell(Headers.FINDINGS, mockup, Headers.REMARK))
        .contains("holds for more tiles since 2026-03-02: GT-3");
    issue("opaque", "opaque", "opaque");
    assertThat(state(mockup)).isEqualTo(State.OPEN);
    type(mockup, Headers.ANSWER, "One of each, GT-3 too.");
    issue("opaque", "opaque", "opaque");
    assertThat(state(mockup)).isEqualTo(State.ANSWERED);
  }

  @Test
  void words_of_their_own_for_a_question_stand_though_its_tiles_change() throws Exception {
    issue("", "", "opaque");
    type(ONE, Headers.QUESTION, "Can one see through the mosaics?");
    issue("", "", "");
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.QUESTION))
        .isEqualTo("Can one see through the mosaics?");
    assertThat(cell(Headers.QUESTIONS, ONE, Headers.TAGS)).isEqualTo("GT-1, GT-2, GT-3");
  }
}
