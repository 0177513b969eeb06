package clearbed.track;

import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.layout.SheetLayout;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Reads the answers out of a workbook that came back: a copy of the findings workbook, or any table
 * with a column of numbers and one of answers.
 */
final class ReturnedSheet {
  /** What people fill in beside a question. */
  static final List<String> FILLED =
      List.of(
          Headers.STATUS,
          Headers.ANSWER,
          Headers.ASKED_OF,
          Headers.DATE_ASKED,
          Headers.DUE,
          Headers.NOTE);

  private static final Set<String> NUMBERS =
      Set.of("no.", "no", "nr", "nr.", "#", "number", "question no.", "question number");
  private static final Set<String> ANSWERS = Set.of("answer", "reply", "response");
  private static final int DEEPEST_HEADER = 50;

  private final Map<Integer, Map<String, String>> replies = new LinkedHashMap<>();
  private final List<Returned.Unplaced> unplaced = new ArrayList<>();
  private final BiFunction<Integer, String, String> known;

  /**
   * @param known what stands in our workbook beside a number, under a heading
   */
  private ReturnedSheet(BiFunction<Integer, String, String> known) {
    this.known = known;
  }

  /** Null where no sheet has numbers and answers. */
  static Returned of(XSSFWorkbook book, BiFunction<Integer, String, String> known) {
    ReturnedSheet returned = new ReturnedSheet(known);
    boolean found = false;
    for (Sheet sheet : book) found |= returned.take((XSSFSheet) sheet);
    return found ? new Returned(returned.replies, returned.unplaced) : null;
  }

  private boolean take(XSSFSheet sheet) {
    Row header = header(sheet);
    if (header == null) return false;
    Map<Integer, String> columns = new HashMap<>();
    for (Cell cell : header) columns.put(cell.getColumnIndex(), name(cell));
    for (Row row : sheet) if (row.getRowNum() > header.getRowNum()) take(row, columns);
    sheet
        .getCellComments()
        .forEach(
            (at, comment) ->
                leave(
                    sheet.getSheetName() + ", cell " + at.formatAsString(),
                    comment.getString().getString(),
                    "a comment"));
    return true;
  }

  private static Row header(Sheet sheet) {
    for (Row row : sheet) {
      if (row.getRowNum() > DEEPEST_HEADER) return null;
      boolean number = false;
      boolean answer = false;
      for (Cell cell : row) {
        number |= name(cell).equals(Headers.NUMBER);
        answer |= name(cell).equals(Headers.ANSWER);
      }
      if (number && answer) return row;
    }
    return null;
  }

  /** The heading, under the name that we give it. */
  private static String name(Cell cell) {
    String text = SheetLayout.text(cell).strip();
    String lower = text.toLowerCase(Locale.ROOT);
    if (NUMBERS.contains(lower)) return Headers.NUMBER;
    if (ANSWERS.contains(lower)) return Headers.ANSWER;
    return FILLED.stream().filter(each -> each.equalsIgnoreCase(text)).findFirst().orElse(text);
  }

  private void take(Row row, Map<Integer, String> columns) {
    int number = number(row, columns);
    for (Cell cell : row) {
      String header = columns.getOrDefault(cell.getColumnIndex(), "");
      String text = SheetLayout.text(cell).strip();
      if (text.isEmpty() || header.equals(Headers.NUMBER)) continue;
      String place =
          cell.getSheet().getSheetName() + ", cell " + cell.getAddress().formatAsString();
      if (number == 0) {
        leave(place, text, "the row has no number of a question");
      } else if (FILLED.contains(header)) {
        Map<String, String> own = replies.computeIfAbsent(number, any -> new LinkedHashMap<>());
        own.merge(header, text, (before, more) -> before + "\n" + more);
      } else if (!isKnown(number, header, text)) {
        leave("Question " + number + ", column " + header, text, "not in a column for answers");
      }
    }
  }

  private boolean isKnown(int number, String header, String text) {
    return ReturnedLetter.plain(text).equals(ReturnedLetter.plain(known.apply(number, header)));
  }

  private static int number(Row row, Map<Integer, String> columns) {
    for (Cell cell : row) {
      if (!Headers.NUMBER.equals(columns.get(cell.getColumnIndex()))) continue;
      String digits = SheetLayout.text(cell).strip().replaceFirst("\\.0*$", "");
      if (digits.matches("\\d{1,6}")) return Integer.parseInt(digits);
    }
    return 0;
  }

  private void leave(String place, String text, String why) {
    unplaced.add(new Returned.Unplaced(place, text, why));
  }
}
