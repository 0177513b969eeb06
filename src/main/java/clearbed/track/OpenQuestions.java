package clearbed.track;

import clearbed.model.Finding;
import clearbed.model.QuestionLog;
import clearbed.model.State;
import clearbed.report.Headers;
import clearbed.report.Letter;
import clearbed.report.SheetLayout;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The questions of a findings workbook, in the words that people gave them. */
public final class OpenQuestions {
  private static final Set<String> CLOSED = Set.of("answered", "dropped");

  private OpenQuestions() {}

  /**
   * Reads the questions that nobody has answered or dropped.
   *
   * @param all true for every question that is still found, whatever its status
   * @throws RefusedWorkbook when the workbook is open elsewhere, locked, damaged or not ours
   */
  public static Letter read(Path file, boolean all) throws RefusedWorkbook {
    QuestionLog log = EarlierLog.read(file).log();
    try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(log.workbook()))) {
      return new Letter(log.since(), questions(book, log, all));
    } catch (IOException closing) {
      throw WorkbookFile.refused(file, closing.getMessage());
    }
  }

  private static List<Letter.Question> questions(XSSFWorkbook book, QuestionLog log, boolean all) {
    List<Letter.Question> questions = new ArrayList<>();
    Sheet sheet = SheetLayout.find(book, Headers.QUESTIONS);
    if (sheet == null) return questions;
    SheetLayout layout = SheetLayout.of(sheet, Headers.of(Headers.QUESTIONS), log);
    if (layout == null) return questions;
    layout
        .rows()
        .forEach(
            (id, row) -> {
              QuestionLog.Line line = log.lines().get(id);
              if (isWanted(line, all)) questions.add(question(layout, row, line));
            });
    questions.sort(Comparator.comparingInt(Letter.Question::number));
    return questions;
  }

  private static boolean isWanted(QuestionLog.Line line, boolean all) {
    Finding finding = line.finding();
    if (!finding.suppressed().isEmpty()) return false;
    if (finding.state() == State.RESOLVED) return false;
    String status = line.reply().status().strip().toLowerCase(Locale.ROOT);
    return all || !CLOSED.contains(status);
  }

  private static Letter.Question question(SheetLayout layout, Row row, QuestionLog.Line line) {
    return new Letter.Question(
        line.number(),
        layout.text(row, Headers.ASKED_OF),
        String.join(", ", line.finding().tags()),
        line.finding().origin().place(),
        or(layout.text(row, Headers.QUESTION), line.finding().question()),
        why(line.finding()),
        or(layout.text(row, Headers.WORDING), line.finding().clause()),
        layout.text(row, Headers.DATE_ASKED),
        layout.text(row, Headers.DUE));
  }

  private static String why(Finding finding) {
    String found = finding.found().isBlank() ? "" : " Found: " + finding.found() + ".";
    String source = finding.source().isBlank() ? "" : " Source: " + finding.source() + ".";
    return finding.message() + found + source;
  }

  private static String or(String typed, String ours) {
    return typed.isBlank() ? ours : typed;
  }
}
