package clearbed.track;

import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.State;
import clearbed.report.letter.Letter;
import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.layout.SheetLayout;
import clearbed.report.workbook.log.AskedTogether;
import clearbed.report.workbook.typed.EarlierWorkbook;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The questions of a findings workbook, in the words that people gave them. */
public final class OpenQuestions {
  private final SheetLayout layout;
  private final Map<String, Row> rows;

  private OpenQuestions(SheetLayout layout) {
    this.layout = layout;
    this.rows = layout == null ? Map.of() : layout.rows();
  }

  /**
   * Reads what is open and not dropped: every finding that the exit code counts, whether or not its
   * row is still there.
   *
   * @param all true for every question that is still found, whatever its status
   * @throws RefusedWorkbook when the workbook is open elsewhere, locked, damaged or not ours
   */
  public static Letter read(Path file, boolean all) throws RefusedWorkbook {
    return of(file, EarlierLog.read(file).log(), all);
  }

  static Letter of(Path file, QuestionLog log, boolean all) throws RefusedWorkbook {
    try (XSSFWorkbook book = EarlierWorkbook.open(log.workbook())) {
      Sheet sheet = SheetLayout.find(book, Headers.QUESTIONS);
      SheetLayout layout =
          sheet == null
              ? null
              : SheetLayout.ofLines(sheet, Headers.of(Headers.QUESTIONS), log.lines().values());
      List<Letter.Question> questions =
          asked(log)
              .filter(line -> isWanted(line, all))
              .map(new OpenQuestions(layout)::question)
              .sorted(
                  Comparator.comparing(Letter.Question::asksNothing)
                      .thenComparingInt(Letter.Question::number))
              .toList();
      return new Letter(log.names(), "", log.since(), questions);
    } catch (IOException closing) {
      throw WorkbookFile.refused(file, closing.getMessage());
    }
  }

  /** The questions, and the findings that ask nothing. */
  private static Stream<QuestionLog.LogLine> asked(QuestionLog log) {
    List<QuestionLog.LogLine> settled =
        log.lines().values().stream().map(QuestionLog.LogLine::settled).toList();
    return Stream.concat(
        AskedTogether.of(settled).values().stream(),
        settled.stream().filter(line -> line.number() == 0));
  }

  private static boolean isWanted(QuestionLog.LogLine line, boolean all) {
    boolean found = line.finding().suppressed().isEmpty() && line.state() != State.RESOLVED;
    return all ? found : line.isAsked();
  }

  private Letter.Question question(QuestionLog.LogLine line) {
    Finding finding = line.finding();
    Row row = rows.get(finding.id());
    return new Letter.Question(
        line.number(),
        text(row, Headers.ASKED_OF),
        String.join(", ", finding.tags()),
        line.number() == 0 ? finding.origin().place() : AskedTogether.places(finding),
        or(text(row, Headers.QUESTION), finding.question()),
        found(finding),
        finding.why(),
        finding.source(),
        or(text(row, Headers.WORDING), finding.clause()),
        text(row, Headers.DATE_ASKED),
        text(row, Headers.DUE),
        standing(line),
        line.reply().answer());
  }

  private static Letter.Standing standing(QuestionLog.LogLine line) {
    if (!line.isOpen()) return Letter.Standing.ANSWERED;
    if (line.isDropped()) return Letter.Standing.DROPPED;
    if (line.isOutdated()) return Letter.Standing.OUTDATED;
    return line.state() == State.REOPENED ? Letter.Standing.REOPENED : Letter.Standing.OPEN;
  }

  private String text(Row row, String header) {
    return row == null ? "" : layout.text(row, header);
  }

  private static String found(Finding finding) {
    // What contradicts is named in the message, side by side.
    boolean said =
        finding.found().isBlank()
            || finding.kind() == FindingKind.CONFLICTING
            || finding.message().contains(finding.found());
    return said ? finding.message() : finding.message() + " Found: " + finding.found() + ".";
  }

  private static String or(String typed, String ours) {
    return typed.isBlank() ? ours : typed;
  }
}
