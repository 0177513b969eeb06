package clearbed.track;

import clearbed.model.report.QuestionLog;
import clearbed.report.letter.Letter;
import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.layout.SheetLayout;
import clearbed.report.workbook.log.RepliedWorkbook;
import clearbed.report.workbook.typed.EarlierWorkbook;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Replies that came back, put beside their questions in a findings workbook. */
public final class Replies {
  /** Endings of files that replies are taken from. */
  public static final List<String> ENDINGS = List.of("docx", "xlsx", "md", "txt");

  private final QuestionLog log;
  private final Map<Integer, Row> rows = new HashMap<>();
  private final SheetLayout layout;
  private final List<RepliedWorkbook.CellText> texts = new ArrayList<>();
  private final List<Returned.Unplaced> unplaced = new ArrayList<>();
  private final Set<Integer> taken = new TreeSet<>();
  private final Set<Integer> again = new TreeSet<>();
  private final String from;

  private Replies(QuestionLog log, SheetLayout layout, String from) {
    this.log = log;
    this.layout = layout;
    this.from = from;
    if (layout == null) return;
    for (QuestionLog.LogLine line : log.lines().values()) {
      Row row = layout.rows().get(line.finding().id());
      if (line.number() > 0 && row != null) rows.putIfAbsent(line.number(), row);
    }
  }

  /**
   * Reads both files and changes neither.
   *
   * @throws RefusedWorkbook when one of them cannot be read
   */
  public static Replies read(Path workbook, Path returned) throws RefusedWorkbook {
    QuestionLog log = EarlierLog.read(workbook).log();
    Letter letter = OpenQuestions.of(workbook, log, true);
    try (XSSFWorkbook book = EarlierWorkbook.open(log.workbook())) {
      Sheet sheet = SheetLayout.find(book, Headers.QUESTIONS);
      SheetLayout layout =
          sheet == null
              ? null
              : SheetLayout.ofLines(sheet, Headers.of(Headers.QUESTIONS), log.lines().values());
      Replies replies = new Replies(log, layout, returned.getFileName().toString());
      replies.take(replies.returned(returned, letter));
      return replies;
    } catch (IOException wrong) {
      throw new RefusedWorkbook("cannot take replies from " + returned + ": " + wrong.getMessage());
    }
  }

  private Returned returned(Path file, Letter letter) throws IOException, RefusedWorkbook {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".docx")) return ReturnedLetter.of(ReturnedFile.word(file), letter);
    if (!name.endsWith(".xlsx")) return ReturnedLetter.of(ReturnedFile.text(file), letter);
    try (XSSFWorkbook book = WorkbookFile.openAny(file)) {
      Returned returned = ReturnedSheet.of(book, this::known);
      if (returned != null) return returned;
      throw new IOException("no sheet has a column No. and a column Answer");
    }
  }

  private String known(int number, String header) {
    return rows.containsKey(number) ? layout.text(rows.get(number), header) : "";
  }

  private void take(Returned returned) {
    unplaced.addAll(returned.unplaced());
    returned
        .replies()
        .forEach(
            (number, reply) -> {
              if (rows.containsKey(number)) {
                reply.forEach((header, text) -> take(number, header, text));
                return;
              }
              reply.forEach(
                  (header, text) ->
                      leave(number, header, text, "the workbook has no row of this number"));
            });
  }

  /** The later answer stands; what stood there before goes among the earlier answers. */
  private void take(int number, String header, String text) {
    String before = known(number, header).strip();
    if (ReturnedLetter.plain(before).equals(ReturnedLetter.plain(text))) {
      if (header.equals(Headers.ANSWER)) again.add(number);
      return;
    }
    boolean answer = header.equals(Headers.ANSWER);
    if (!answer && !before.isEmpty() && !header.equals(Headers.STATUS)) {
      leave(number, header, text, "the workbook has \"" + before + "\" there");
      return;
    }
    int row = rows.get(number).getRowNum();
    texts.add(new RepliedWorkbook.CellText(row, header, text));
    if (!answer) return;
    taken.add(number);
    if (before.isEmpty()) return;
    String earlier = known(number, Headers.EARLIER).strip();
    String said = log.since().isEmpty() ? before : log.since() + ": " + before;
    boolean noted = earlier.endsWith(": " + before);
    String all = noted ? earlier : earlier.isEmpty() ? said : earlier + "\n" + said;
    texts.add(new RepliedWorkbook.CellText(row, Headers.EARLIER, all));
  }

  private void leave(int number, String header, String text, String why) {
    unplaced.add(new Returned.Unplaced("Question " + number + ", " + header, text, why));
  }

  /** Numbers of the questions that an answer was taken for. */
  public Set<Integer> taken() {
    return taken;
  }

  /** Numbers of the questions whose answer the workbook had already. */
  public Set<Integer> known() {
    return again;
  }

  /** A line for each text that could not be placed. */
  public List<String> unplaced() {
    return unplaced.stream()
        .map(words -> words.place() + ": \"" + words.text() + "\" (" + words.why() + ")")
        .toList();
  }

  /**
   * Writes the workbook with the replies.
   *
   * @param today ISO 8601
   * @throws IOException with one line that names the file and the reason
   */
  public void write(Path file, String today) throws IOException {
    List<RepliedWorkbook.Loose> loose =
        unplaced.stream()
            .map(one -> new RepliedWorkbook.Loose(one.place(), one.text(), one.why()))
            .toList();
    RepliedWorkbook.write(log.workbook(), texts, loose, from, today, file);
  }
}
