package clearbed.report.workbook.log;

import clearbed.model.report.Finding;
import clearbed.model.report.QuestionLog;
import clearbed.report.workbook.cell.Datum;
import clearbed.report.workbook.cell.DocumentLinks;
import clearbed.report.workbook.cell.Styles.Look;
import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.log.LogColumn.Owner;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.Function;

/** The columns of the sheets Findings and Questions. */
public final class LogColumns {
  private final DocumentLinks links;
  private final String today;

  public LogColumns(DocumentLinks links, String today) {
    this.links = links;
    this.today = today;
  }

  /** The columns of {@link Headers#FINDINGS} or {@link Headers#QUESTIONS}. */
  public List<LogColumn> of(String sheet) {
    return sheet.equals(Headers.QUESTIONS) ? ofQuestions() : ofFindings();
  }

  private List<LogColumn> ofFindings() {
    return List.of(
        fact(Headers.ID, 24, Finding::id),
        state(Headers.LEVEL, 9, Look.STRONG, line -> words(line.finding().level().word())),
        state(Headers.STATE, 10, Look.TEXT, line -> words(stateWord(line.finding()))),
        fact(Headers.TAGS, 13, finding -> String.join(", ", finding.tags())),
        fact(Headers.CHECK, 19, Finding::check),
        fact(Headers.MESSAGE, 42, Finding::message),
        fact(Headers.FOUND, 24, Finding::found),
        fact(Headers.EXPECTED, 26, Finding::expected),
        fact(Headers.PLACE, 27, finding -> finding.origin().place()),
        link(),
        wording(Headers.QUESTION, 42, Finding::question),
        fact(Headers.WHY, 42, Finding::why),
        unprinted(Headers.WORDS, 60, finding -> nonNull(finding.origin().text())),
        new LogColumn(
            Headers.CLAUSE,
            70,
            Owner.WORDING,
            Look.TEXT,
            false,
            line -> words(line.finding().clause())),
        unprinted(Headers.SOURCE, 50, Finding::source),
        unprinted(Headers.KIND, 13, finding -> finding.kind().word()),
        unprinted(Headers.ATTRIBUTE, 20, Finding::attribute),
        history(Headers.ASKED_IN, Look.COUNT, LogColumns::number),
        history(Headers.FIRST_SEEN, Look.DATE, line -> new Datum.Day(line.firstSeen())),
        history(Headers.LAST_SEEN, Look.DATE, line -> new Datum.Day(line.lastSeen())),
        history(Headers.AGE, Look.COUNT, this::age),
        history(Headers.GONE_ON, Look.DATE, line -> new Datum.Day(line.goneOn())),
        new LogColumn(
            Headers.REMARK, 34, Owner.SHARED, Look.TEXT, false, line -> words(line.remark())));
  }

  private List<LogColumn> ofQuestions() {
    return List.of(
        state(Headers.NUMBER, 6, Look.COUNT, line -> new Datum.Count(line.number())),
        fact(Headers.TAGS, 13, finding -> String.join(", ", finding.tags())),
        wording(Headers.QUESTION, 40, Finding::question),
        fact(Headers.PLACE, 24, AskedTogether::places),
        link(),
        state(Headers.STATE, 10, Look.TEXT, line -> words(stateWord(line.finding()))),
        people(Headers.STATUS, 11, Look.TO_FILL),
        people(Headers.ANSWER, 40, Look.TO_FILL),
        people(Headers.ASKED_OF, 16, Look.TO_FILL),
        people(Headers.DATE_ASKED, 12, Look.TO_FILL_DATE),
        people(Headers.DUE, 12, Look.TO_FILL_DATE),
        state(Headers.DAYS_OPEN, 7, Look.COUNT, this::age),
        people(Headers.NOTE, 22, Look.TO_FILL),
        fact(Headers.WHY, 36, Finding::why),
        wording(Headers.WORDING, 44, Finding::clause),
        new LogColumn(
            Headers.EARLIER, 30, Owner.SHARED, Look.TEXT, false, line -> words(line.answers())),
        unprintedState(Headers.LEVEL, 9, Look.STRONG, line -> line.finding().level().word()),
        unprinted(Headers.ID, 20, Finding::id));
  }

  static String stateWord(Finding finding) {
    return finding.suppressed().isEmpty() ? finding.state().word() : Headers.SUPPRESSED;
  }

  private static Datum number(QuestionLog.LogLine line) {
    return line.number() == 0 ? new Datum.Blank() : new Datum.Count(line.number());
  }

  private Datum age(QuestionLog.LogLine line) {
    try {
      LocalDate from = LocalDate.parse(line.firstSeen());
      LocalDate to = LocalDate.parse(line.goneOn().isEmpty() ? today : line.goneOn());
      return new Datum.Count((int) ChronoUnit.DAYS.between(from, to));
    } catch (DateTimeParseException undated) {
      return new Datum.Blank();
    }
  }

  private LogColumn link() {
    return state(Headers.OPEN, 6, Look.LINK, line -> links.link(line.finding().origin()));
  }

  private static LogColumn state(
      String header, int width, Look look, Function<QuestionLog.LogLine, Datum> datum) {
    return new LogColumn(header, width, Owner.STATE, look, true, datum);
  }

  private static LogColumn unprintedState(
      String header, int width, Look look, Function<QuestionLog.LogLine, String> text) {
    return new LogColumn(header, width, Owner.STATE, look, false, line -> words(text.apply(line)));
  }

  private static LogColumn history(
      String header, Look look, Function<QuestionLog.LogLine, Datum> datum) {
    return new LogColumn(header, 11, Owner.STATE, look, false, datum);
  }

  private static LogColumn fact(String header, int width, Function<Finding, String> text) {
    return new LogColumn(header, width, Owner.FACT, Look.TEXT, true, line -> of(text, line));
  }

  private static LogColumn unprinted(String header, int width, Function<Finding, String> text) {
    return new LogColumn(header, width, Owner.FACT, Look.TEXT, false, line -> of(text, line));
  }

  private static LogColumn wording(String header, int width, Function<Finding, String> text) {
    return new LogColumn(header, width, Owner.WORDING, Look.TEXT, true, line -> of(text, line));
  }

  private static LogColumn people(String header, int width, Look look) {
    return new LogColumn(header, width, Owner.PEOPLE, look, true, line -> new Datum.Blank());
  }

  private static Datum of(Function<Finding, String> text, QuestionLog.LogLine line) {
    return words(text.apply(line.finding()));
  }

  private static Datum words(String text) {
    return new Datum.Text(text);
  }

  private static String nonNull(String text) {
    return text == null ? "" : text;
  }
}
