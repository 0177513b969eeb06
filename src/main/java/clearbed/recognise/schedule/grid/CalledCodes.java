package clearbed.recognise.schedule.grid;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.text.PlainText;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Codes by which a table lists what other tables of the document call: systems, products, finishes.
 * In a table that has marks of its own a column of such codes calls, and names no row: "GT-1 | ...
 * | S-2" beside "S-2 | mortar bed | membrane".
 */
public final class CalledCodes {
  public static final CalledCodes NONE = new CalledCodes(Map.of());

  /** "S-1", "FA", "77310", "0930.G1": short, of figures and capitals. */
  private static final Pattern CODE =
      Pattern.compile("(?=.{1,12}$)[\\p{Lu}\\d]{1,8}(?:[-./ ]?[\\p{Lu}\\d]{1,6}){0,3}\\p{Ll}?");

  /** "9", "1.5" and "300" may be figures: codes of figures alone are longer. */
  private static final Pattern FIGURE = Pattern.compile("[\\d.,/ ]{1,3}|\\d*[.,/ ][\\d.,/ ]*");

  private static final Pattern NOTHING = Pattern.compile("[^\\p{L}\\d]*");

  /** Fewer codes might be anything. */
  private static final int FEWEST = 2;

  /** The first rows tell: of long schedules the others would take time. */
  private static final int SEARCHED = 60;

  private record NamedAt(Origin table, int row) {}

  /** Where a code names the row that it stands in. */
  private final Map<String, Set<NamedAt>> named;

  private CalledCodes(Map<String, Set<NamedAt>> named) {
    this.named = named;
  }

  /** Of all tables of a document. */
  public static CalledCodes of(Document document) {
    Map<String, Set<NamedAt>> named = new HashMap<>();
    for (Block block : document.blocks()) if (block instanceof Table t) names(t, named);
    return named.isEmpty() ? NONE : new CalledCodes(named);
  }

  private static void names(Table table, Map<String, Set<NamedAt>> named) {
    Map<String, NamedAt> run = new HashMap<>();
    int column = -1;
    for (Table.Row row : table.rows()) {
      Table.Cell first = first(row);
      String code = first == null ? "" : code(first);
      boolean same = !code.isEmpty() && first.column() == column && !run.containsKey(code);
      if (!same) {
        note(run, named);
        run.clear();
        column = code.isEmpty() ? -1 : first.column();
      }
      if (!code.isEmpty()) run.put(code, new NamedAt(table.origin(), row.number()));
    }
    note(run, named);
  }

  private static void note(Map<String, NamedAt> run, Map<String, Set<NamedAt>> named) {
    if (run.size() < FEWEST) return;
    run.forEach((code, at) -> named.computeIfAbsent(code, any -> new HashSet<>()).add(at));
  }

  /** The first cell that holds something. */
  private static Table.Cell first(Table.Row row) {
    return row.cells().stream().filter(c -> !c.text().isBlank()).findFirst().orElse(null);
  }

  private static String code(Table.Cell cell) {
    if (cell.continued() || cell.text().length() > SEARCHED) return "";
    String text = PlainText.line(cell.text()).strip();
    boolean is = CODE.matcher(text).matches() && !FIGURE.matcher(text).matches();
    return is ? text : "";
  }

  /**
   * The column of the marks of the rows below a heading, where that which was taken for it calls
   * the rows of other tables; itself else. "Z3 | Changing room | TG3": the tile is no row's of its
   * zone.
   */
  public int marks(Table table, List<Table.Row> below, Header header, int taken) {
    List<Table.Row> rows = taken < 0 ? List.of() : calling(table, below, taken);
    if (rows.isEmpty()) return taken;
    Set<Integer> columns = new HashSet<>();
    rows.get(0).cells().forEach(cell -> columns.add(cell.column()));
    return columns.stream()
        .sorted()
        .filter(column -> column != taken && isDistinct(rows, column))
        // "GT-1 | P-1" with a table for GT-1 and one for P-1: the first is whose row it is.
        .filter(column -> column < taken || calling(table, below, column).isEmpty())
        .filter(column -> !isRead(header.columns().get(column)))
        .findFirst()
        .orElse(taken);
  }

  /** "Mortar" over "ANSI A118.15" marks no rows. */
  private static boolean isRead(Header.Column column) {
    return column != null && column.attribute() != null;
  }

  /** The header with the columns told whose cells are codes and call rows. */
  public Header calling(Table table, List<Table.Row> below, Header header, int tags) {
    if (named.isEmpty() || tags < 0) return header;
    Header out = header;
    // Codes alone describe nothing, whatever stands over them.
    for (Header.Role role : List.of(Header.Role.OTHER, Header.Role.MATERIAL))
      for (Header.Column column : header.all(role))
        if (column.index() != tags && callsMostly(table, below, column.index()))
          out = out.calling(column.index());
    return out;
  }

  /** The first rows with codes of a column that all call other rows; empty where not all do. */
  private List<Table.Row> calling(Table table, List<Table.Row> below, int column) {
    List<Table.Row> rows = new ArrayList<>();
    if (named.isEmpty()) return rows;
    for (Table.Row row : below) {
      boolean more = rows.size() < SEARCHED && row.at(column) != null;
      if (!more || code(row.at(column)).isEmpty()) break;
      rows.add(row);
    }
    return rows.size() >= FEWEST && calls(table, rows, column) ? rows : List.of();
  }

  /** True of a column of codes most of which call other rows: some are of what nobody lists. */
  private boolean callsMostly(Table table, List<Table.Row> below, int column) {
    List<Table.Row> rows = new ArrayList<>();
    int strange = 0;
    for (Table.Row row : below) {
      if (rows.size() + strange >= SEARCHED) break;
      Table.Cell cell = row.at(column);
      // A line over the rows of a group, and "-" where nothing is called.
      if (cell == null || cell.columnSpan() > 1 || NOTHING.matcher(cell.text()).matches()) continue;
      String code = code(cell);
      if (code.isEmpty()) break;
      if (named.containsKey(code)) rows.add(row);
      else strange++;
    }
    return rows.size() >= FEWEST && rows.size() > strange && calls(table, rows, column);
  }

  private boolean calls(Table table, List<Table.Row> rows, int column) {
    Set<NamedAt> own = new HashSet<>();
    for (Table.Row row : rows) own.add(new NamedAt(table.origin(), row.number()));
    return rows.stream()
        .map(row -> named.getOrDefault(code(row.at(column)), Set.of()))
        .allMatch(places -> !own.containsAll(places));
  }

  private static boolean isDistinct(List<Table.Row> rows, int column) {
    Set<String> seen = new HashSet<>();
    for (Table.Row row : rows) {
      Table.Cell cell = row.at(column);
      if (cell == null || code(cell).isEmpty() || !seen.add(code(cell))) return false;
    }
    return true;
  }
}
