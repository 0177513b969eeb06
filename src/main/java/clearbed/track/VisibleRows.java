package clearbed.track;

import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.State;
import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.layout.SheetLayout;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;

/** Findings as the visible columns tell them, for a workbook whose hidden sheet is gone. */
final class VisibleRows {
  private final Workbook book;

  VisibleRows(Workbook book) {
    this.book = book;
  }

  Map<String, QuestionLog.LogLine> lines() {
    Map<String, QuestionLog.LogLine> lines = new LinkedHashMap<>();
    Map<String, Seen> questions = rows(Headers.QUESTIONS);
    Map<String, Integer> numbers = numbers(questions);
    rows(Headers.FINDINGS)
        .forEach(
            (id, row) ->
                lines.put(id, row.line(id, row.numberAmong(numbers, id), questions.get(id))));
    return lines;
  }

  /** A number that somebody typed twice stays with the first. */
  private static Map<String, Integer> numbers(Map<String, Seen> questions) {
    Map<String, Integer> numbers = new LinkedHashMap<>();
    Set<Integer> given = new HashSet<>();
    questions.forEach(
        (id, row) -> {
          if (given.add(row.number())) numbers.put(id, row.number());
        });
    return numbers;
  }

  private Map<String, Seen> rows(String name) {
    Map<String, Seen> found = new LinkedHashMap<>();
    Sheet sheet = SheetLayout.find(book, name);
    if (sheet == null) return found;
    SheetLayout none = SheetLayout.of(sheet, Headers.of(name), Set.of());
    if (none == null || none.column(Headers.ID) < 0) return found;
    for (SheetLayout.Stray stray : none.strays()) {
      String id = none.text(stray.row(), Headers.ID).strip();
      if (!id.isEmpty()) found.putIfAbsent(id, new Seen(none, stray.row()));
    }
    return found;
  }

  private record Seen(SheetLayout layout, Row row) {
    String text(String header) {
      return layout.text(row, header).strip();
    }

    int number() {
      return number(Headers.NUMBER);
    }

    /** Of its own row on Questions, or of the one that it shares. */
    int numberAmong(Map<String, Integer> questions, String id) {
      int shared = number(Headers.ASKED_IN);
      return questions.getOrDefault(id, questions.containsValue(shared) ? shared : 0);
    }

    private int number(String header) {
      try {
        return Math.max(0, Integer.parseInt(text(header)));
      } catch (NumberFormatException typedOver) {
        return 0;
      }
    }

    QuestionLog.LogLine line(String id, int number, Seen question) {
      String remark = text(Headers.REMARK);
      boolean outdated = question != null && remark.contains(QuestionLog.SETTLES_NOTHING);
      return new QuestionLog.LogLine(
          finding(id),
          number,
          text(Headers.FIRST_SEEN),
          text(Headers.LAST_SEEN),
          text(Headers.GONE_ON),
          remark,
          outdated ? question.reply().print() : "",
          QuestionLog.Reply.NONE);
    }

    private QuestionLog.Reply reply() {
      return new QuestionLog.Reply(text(Headers.STATUS), "", "", "", text(Headers.ANSWER));
    }

    private Finding finding(String id) {
      String place = text(Headers.PLACE);
      String document = place.contains(", ") ? place.substring(0, place.indexOf(", ")) : place;
      return new Finding(
          id,
          text(Headers.CHECK),
          word(FindingKind.class, text(Headers.KIND), FindingKind.MISSING),
          word(Level.class, text(Headers.LEVEL), Level.ERROR),
          word(State.class, text(Headers.STATE), State.OPEN),
          tags(text(Headers.TAGS)),
          text(Headers.ATTRIBUTE),
          Origin.ofDocument(document),
          List.of(),
          text(Headers.MESSAGE),
          text(Headers.FOUND),
          text(Headers.EXPECTED),
          List.of(),
          text(Headers.QUESTION),
          text(Headers.CLAUSE),
          text(Headers.SOURCE),
          text(Headers.WHY),
          Headers.isSuppressed(text(Headers.STATE)) ? "as the earlier issue says" : "",
          Finding.FindingWording.NONE);
    }

    private static List<String> tags(String text) {
      return text.isEmpty() ? List.of() : List.of(text.split(",\\s*"));
    }

    private static <E extends Enum<E>> E word(Class<E> type, String text, E otherwise) {
      for (E each : type.getEnumConstants()) {
        if (each.name().equals(text.toUpperCase(Locale.ROOT))) return each;
      }
      return otherwise;
    }
  }
}
