package clearbed.recognise.schedule.card;

import clearbed.model.document.Table;
import clearbed.recognise.text.PlainText;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Cards of names and values that run on below one another as one table, with the title of each in
 * the cell of its first name: {@code Floor | F-1}, {@code Walls | W-2}, {@code Room 2 Kitchen Floor
 * | F-2}, {@code Walls | W-3}. So printers leave them where nothing is ruled between.
 */
public final class GluedTitles {
  /** A card with the words that stand over it; empty for the first, whose title stands above. */
  public record RunOn(String title, Table table) {}

  /** Names that come again in another card. */
  private static final int FEWEST_AGAIN = 2;

  private static final int LONGEST_TITLE = 60;

  private GluedTitles() {}

  /** The cards in their order; empty where the table is not made of such. */
  public static List<RunOn> of(Table table) {
    List<Table.Row> rows = table.rows();
    if (rows.size() < 2 * FEWEST_AGAIN || !rows.stream().allMatch(GluedTitles::isPair))
      return List.of();
    String first = name(rows.get(0));
    Map<String, Integer> times = new HashMap<>();
    List<Integer> starts = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      String title = title(rows.get(i), first);
      if (!title.isEmpty()) starts.add(i);
      times.merge(title.isEmpty() ? name(rows.get(i)) : first, 1, Integer::sum);
    }
    long again = times.values().stream().filter(n -> n > 1).count();
    if (starts.isEmpty() || again < FEWEST_AGAIN) return List.of();
    List<RunOn> out = new ArrayList<>();
    out.add(new RunOn("", table.withRows(rows.subList(0, starts.get(0)))));
    for (int i = 0; i < starts.size(); i++) {
      int from = starts.get(i);
      int to = i + 1 < starts.size() ? starts.get(i + 1) : rows.size();
      List<Table.Row> own = new ArrayList<>(rows.subList(from, to));
      Table.Row head = own.get(0);
      List<Table.Cell> cells = new ArrayList<>(head.cells());
      cells.set(0, cells.get(0).withText(first));
      own.set(0, head.withCells(cells));
      out.add(new RunOn(title(head, first), table.withRows(own)));
    }
    return out;
  }

  private static boolean isPair(Table.Row row) {
    return row.cells().size() == 2 && row.cells().stream().allMatch(Table.Cell::hasOwnWords);
  }

  private static String name(Table.Row row) {
    return PlainText.line(row.cells().get(0).text()).strip();
  }

  /** The words before the first name; empty where the row does not begin a card. */
  private static String title(Table.Row row, String first) {
    String words = name(row);
    boolean glued = words.endsWith(" " + first) && words.length() <= LONGEST_TITLE;
    return glued ? words.substring(0, words.length() - first.length()).strip() : "";
  }
}
