package clearbed.recognise.schedule;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** Tells which column of a table has the marks of its tiles. */
final class MarkColumn {
  private static final Pattern MARKED =
      Pattern.compile("\\s*" + Tags.MARK + "\\s*(?:[:\u2013\u2014]|-(?=\\s))\\s*\\p{L}{3,}");

  private static final int LONGEST_NAME = 30;

  /** Rows by which a column is judged: a table may have many headings over as many rows. */
  private static final int JUDGED = 60;

  private final ScheduleFinder means;
  private final Vocabulary vocabulary;
  private final Table table;

  MarkColumn(ScheduleFinder means, Table table) {
    this.means = means;
    this.vocabulary = means.vocabulary;
    this.table = table;
  }

  /**
   * Its index; -1 where there is none.
   *
   * @param from index of the first row below the heading
   */
  int of(Header found, List<Table.Row> all, int from) {
    List<Header.Column> told = found.all(Header.Role.TAG);
    int only = told.size() == 1 ? told.get(0).index() : -1;
    if (only >= 0 && !isRunningNumber(all, from, only))
      return describedBehindMarks(all, from, only) ? -1 : only;
    int best = -1;
    long most = 0;
    for (Header.Column column : found.columns().values()) {
      boolean named =
          vocabulary
              .list("schedule.tag")
              .matches(column.text().toLowerCase(Locale.ROOT).replaceAll("[.:#]", "").trim());
      if (column.role() == Header.Role.SURFACE
          || column.role() == Header.Role.FORMER
          || column.role() == Header.Role.UNASKED
          || (column.role() == Header.Role.ATTRIBUTE && !named)) continue;
      long tags =
          all.stream()
              .skip(from)
              .limit(JUDGED)
              .filter(
                  r ->
                      r.at(column.index()) != null
                          && means.tagCells.areTags(r.at(column.index()).text()))
              .count();
      long score = tags * 2 + (named ? 1 : 0);
      if (score > most && (named || tags >= 2 || tags * 2 >= Math.min(JUDGED, all.size() - from))) {
        best = column.index();
        most = score;
      }
    }
    if (best >= 0 && describedBehindMarks(all, from, best)) return -1;
    if (best < 0 && only >= 0) return only;
    return best < 0 && table.turned() ? names(all, from) : best;
  }

  /** "TILE-3: glass mosaic, 1 x 1": mark and description in one cell, row after row. */
  private static boolean describedBehindMarks(List<Table.Row> all, int from, int column) {
    int marked = 0;
    int others = 0;
    List<Table.Row> below = ScheduleWalk.below(all, from);
    for (Table.Row row : below.subList(0, Math.min(JUDGED, below.size()))) {
      Table.Cell cell = row.at(column);
      if (cell == null || cell.continued() || cell.text().isBlank()) continue;
      if (MARKED.matcher(PlainText.line(cell.text())).lookingAt()) marked++;
      else others++;
    }
    return marked >= 2 && marked > others;
  }

  /** "1", "2", "3": the number of a line, and a mark only where no other column has one. */
  private static boolean isRunningNumber(List<Table.Row> all, int from, int column) {
    int next = 1;
    for (Table.Row row : ScheduleWalk.below(all, from)) {
      Table.Cell cell = row.at(column);
      if (cell == null || cell.text().isBlank()) continue;
      if (!cell.text().strip().equals(Integer.toString(next++))) return false;
    }
    return next > 1;
  }

  /** Turned round, a table begins with what its tiles are called. */
  private static int names(List<Table.Row> all, int from) {
    int first =
        all.get(from - 1).cells().isEmpty() ? -1 : all.get(from - 1).cells().get(0).column();
    long named =
        all.stream()
            .skip(from)
            .map(r -> r.at(first))
            .filter(c -> c != null && !c.text().isBlank() && c.text().length() <= LONGEST_NAME)
            .map(Table.Cell::text)
            .distinct()
            .count();
    return first >= 0 && named > 0 && named == all.size() - from ? first : -1;
  }
}
