package clearbed.track;

import clearbed.model.report.ProjectNames;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.Report;
import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.layout.SheetLayout;
import clearbed.report.workbook.log.AskedTogether;
import clearbed.report.workbook.typed.Ledger;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The findings workbook of an earlier issue, as people left it. */
public final class EarlierLog {
  private final QuestionLog log;

  private EarlierLog(QuestionLog log) {
    this.log = log;
  }

  /**
   * Reads a workbook and never changes it.
   *
   * @throws RefusedWorkbook when it is open elsewhere, locked, damaged or not ours
   */
  public static EarlierLog read(Path file) throws RefusedWorkbook {
    byte[] bytes = WorkbookFile.bytes(file);
    LedgerContent earlier = ledger(file, bytes);
    try (XSSFWorkbook book = WorkbookFile.open(file, bytes)) {
      return new EarlierLog(new Reader(book).log(file.getFileName().toString(), bytes, earlier));
    } catch (IOException closing) {
      throw new RefusedWorkbook("cannot carry on " + file + ": " + closing.getMessage(), closing);
    }
  }

  private record LedgerContent(
      boolean isThere,
      String date,
      List<String> documents,
      Map<String, QuestionLog.LogLine> lines,
      ProjectNames names) {}

  private static LedgerContent ledger(Path file, byte[] bytes) throws RefusedWorkbook {
    try (XSSFWorkbook book = WorkbookFile.openLedger(file, bytes)) {
      return new LedgerContent(
          Ledger.isThere(book),
          Ledger.date(book),
          Ledger.documents(book),
          Ledger.read(book),
          Ledger.names(book));
    } catch (IOException closing) {
      throw new RefusedWorkbook("cannot carry on " + file + ": " + closing.getMessage(), closing);
    }
  }

  /** The findings, replies and oddities that were read. */
  public QuestionLog log() {
    return log;
  }

  /** The new run joined with the earlier issue: states, dates, numbers, replies. */
  public Carry into(Report report) {
    return Carry.of(log, report);
  }

  private static final class Reader {
    /** Rows named one by one; of more, only the number is said. */
    private static final int MOST_NAMED = 20;

    /** Rows that belong to no finding; each is moved by itself. */
    private static final int MOST_STRAYS = 5_000;

    private final XSSFWorkbook book;
    private final List<String> remarks = new ArrayList<>();

    Reader(XSSFWorkbook book) {
      this.book = book;
    }

    QuestionLog log(String name, byte[] bytes, LedgerContent earlier) throws IOException {
      Map<String, QuestionLog.LogLine> lines = earlier.lines();
      if (lines.isEmpty() && !earlier.isThere()) {
        lines = new VisibleRows(book).lines();
        remarks.add(
            "The hidden sheet \"For the next issue\" is gone; the findings were read from the"
                + " visible columns, and what differs from our words was set aside on the sheet"
                + " Set aside.");
      }
      Map<String, QuestionLog.LogLine> replied = withReplies(lines);
      oddities(Headers.FINDINGS, lines);
      return new QuestionLog(
          name, earlier.date(), bytes, earlier.documents(), replied, remarks, earlier.names());
    }

    private Map<String, QuestionLog.LogLine> withReplies(Map<String, QuestionLog.LogLine> lines)
        throws IOException {
      Map<String, QuestionLog.LogLine> asking = AskedTogether.of(lines.values());
      SheetLayout layout = oddities(Headers.QUESTIONS, asking);
      Map<String, QuestionLog.LogLine> replied = new LinkedHashMap<>(lines);
      if (layout == null) return replied;
      Map<Integer, QuestionLog.Reply> replies = new HashMap<>();
      asking.forEach((id, line) -> replies.put(line.number(), reply(layout, id)));
      replied.replaceAll(
          (id, line) -> line.withReply(replies.getOrDefault(line.number(), line.reply())));
      return replied;
    }

    private static QuestionLog.Reply reply(SheetLayout layout, String id) {
      Row row = layout.rows().get(id);
      return new QuestionLog.Reply(
          layout.text(row, Headers.STATUS),
          layout.text(row, Headers.ASKED_OF),
          layout.text(row, Headers.DATE_ASKED),
          layout.text(row, Headers.DUE),
          layout.text(row, Headers.ANSWER));
    }

    /** Says what people did to a sheet that it was not made for. */
    private SheetLayout oddities(String name, Map<String, QuestionLog.LogLine> lines)
        throws IOException {
      Set<String> ids = lines.keySet();
      Sheet sheet = SheetLayout.find(book, name);
      SheetLayout layout =
          sheet == null ? null : SheetLayout.ofLines(sheet, Headers.of(name), lines.values());
      if (layout != null && !sheet.getSheetName().equals(name)) {
        remarks.add(
            "The sheet \"" + sheet.getSheetName() + "\" was " + name + " and is called so again.");
      }
      if (layout == null) {
        remarks.add("The sheet " + name + " " + whatBecame(name) + "; it was written anew.");
        return null;
      }
      if (!layout.missing().isEmpty()) {
        String columns = String.join(", ", layout.missing());
        remarks.add(
            "Sheet " + name + ": deleted or renamed columns were added again: " + columns + ".");
      }
      oddRows(name, layout);
      long deleted = ids.stream().filter(id -> !layout.rows().containsKey(id)).count();
      if (deleted > 0) {
        remarks.add(
            "Sheet "
                + name
                + ": rows of "
                + deleted
                + " findings were missing and were added again.");
      }
      return layout;
    }

    private String whatBecame(String name) {
      List<String> like = SheetLayout.like(book, name).stream().map(Sheet::getSheetName).toList();
      if (like.size() > 1) {
        return "could be any of \"" + String.join("\", \"", like) + "\", and none of them was read";
      }
      return book.getSheet(name) == null ? "was gone" : "had lost its header row and was set aside";
    }

    private void oddRows(String name, SheetLayout layout) throws IOException {
      int strays = layout.strays().size();
      if (strays > MOST_STRAYS)
        throw new IOException(
            "its sheet "
                + name
                + " has more than "
                + MOST_STRAYS
                + " rows that belong to no finding; take them out");
      for (SheetLayout.Stray stray : layout.strays().subList(0, Math.min(strays, MOST_NAMED))) {
        remarks.add(
            "Sheet %s, row %d was moved to the sheet Set aside: %s."
                .formatted(name, stray.row().getRowNum() + 1, stray.reason()));
      }
      if (strays > MOST_NAMED) {
        remarks.add(
            "Sheet " + name + ": " + (strays - MOST_NAMED) + " more rows were moved there.");
      }
    }
  }
}
