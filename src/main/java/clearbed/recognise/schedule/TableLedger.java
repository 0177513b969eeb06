package clearbed.recognise.schedule;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.report.Account;
import clearbed.model.report.Fate;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.statement.Accounting;
import clearbed.recognise.statement.SpanFinder;
import clearbed.recognise.statement.code.ClauseNumbers;
import clearbed.recognise.text.PlainText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What came of each cell of a table, column by column. */
public final class TableLedger {
  private static final int SAMPLES = 2;

  /** More than any sheet has. */
  private static final long COLUMNS = 100_000;

  /** More tags than that are as good as all. */
  private static final int MOST_TAGS = 200;

  private static final Header.Column NO_COLUMN =
      new Header.Column(-1, "", Header.Role.OTHER, null, "", null);

  private final Table table;
  private final Map<Header.Column, Unknown> unknown = new LinkedHashMap<>();
  private final List<Header.Column> columns = new ArrayList<>();
  private final Map<String, Integer> aside = new LinkedHashMap<>();
  private final Map<String, Origin> asideAt = new LinkedHashMap<>();
  private final Map<Long, Fate> rows = new LinkedHashMap<>();
  private Account.Tally tally = Account.Tally.NONE;
  private List<String> tags = List.of();
  private boolean rooms;

  /** How each cell ended, for those who are shown it; null where nobody is. */
  private final Map<Long, Account.Ending> endings;

  /**
   * @param traces true when every cell is to be told of, not only counted
   */
  TableLedger(Table table, boolean traces) {
    this.table = table;
    this.endings = traces ? new LinkedHashMap<>() : null;
  }

  private static long place(Table.Cell cell) {
    return cell.firstRow() * COLUMNS + cell.column();
  }

  private void ended(Table.Cell cell, Fate fate, String why) {
    if (endings != null)
      endings.put(place(cell), new Account.Ending(table.origin(cell), cell.text(), fate, why));
  }

  /** The cells of one column that were not understood. */
  private static final class Unknown {
    final Origin first;
    final Set<String> samples = new LinkedHashSet<>();
    final Set<String> tags = new LinkedHashSet<>();

    Unknown(Origin first) {
      this.first = first;
    }
  }

  void header(Header header) {
    columns.addAll(header.columns().values());
  }

  /** The columns as they would be, of a table that is not taken for a schedule. */
  public List<Account.Column> weighed() {
    return columns.stream().map(this::column).toList();
  }

  /** Of the columns of the first header; that of others would count a repeated one again. */
  double evidence() {
    Set<Integer> seen = new LinkedHashSet<>();
    return columns.stream()
        .filter(c -> seen.add(c.index()))
        .mapToDouble(c -> c.evidence().score())
        .sum();
  }

  void rooms() {
    rooms = true;
  }

  /** Every cell with words of a row that may stand over several tables. */
  void row(Table.Row row, Fate fate) {
    for (Table.Cell cell : row.cells())
      if (cell.hasOwnWords() && rows.putIfAbsent(place(cell), fate) == null) ended(cell, fate, "");
  }

  void setAside(Table.Row row, String why) {
    for (Table.Cell cell : row.cells()) {
      if (!cell.hasOwnWords()) continue;
      tally = tally.plus(Fate.SET_ASIDE);
      ended(cell, Fate.SET_ASIDE, why);
      aside.merge(why, 1, Integer::sum);
      asideAt.putIfAbsent(why, table.origin(cell));
    }
  }

  /** The tiles of the row whose cells come next. */
  void tags(List<String> ofRow) {
    tags = ofRow;
  }

  /** A row with neither tag nor material: who knows what it says of which tile. */
  void unknown(Table.Row row, Header header) {
    tags = List.of();
    for (Table.Cell cell : row.cells()) {
      Header.Column column = header.columns().get(cell.column());
      cell(cell, column == null ? NO_COLUMN : column, Fate.NOT_UNDERSTOOD);
    }
  }

  /** The cells of a row that is read that stand under no heading, and its tag. */
  void columnless(Table.Row row, Header header, int tagColumn) {
    for (Table.Cell cell : row.cells()) {
      if (cell.column() == tagColumn) cell(cell, NO_COLUMN, Fate.CONTEXT);
      else if (!header.columns().containsKey(cell.column()))
        cell(cell, NO_COLUMN, Fate.NOT_UNDERSTOOD);
    }
  }

  /** A row that does not say what it is: its columns tell what would be read of it. */
  void undecided(Table.Row row, Header header, int tagColumn) {
    columnless(row, header, tagColumn);
    for (Header.Column column : header.columns().values()) {
      Table.Cell cell = column.index() == tagColumn ? null : row.at(column.index());
      if (cell == null) continue;
      cell(cell, column, fate(column));
    }
  }

  private static Fate fate(Header.Column column) {
    return switch (column.role()) {
      case OTHER -> Fate.NOT_UNDERSTOOD;
      case CALLS -> Fate.CONTEXT;
      case FORMER, UNASKED -> Fate.SET_ASIDE;
      default -> Fate.READ;
    };
  }

  void cell(Table.Cell cell, Header.Column column, Fate ending) {
    if (!cell.hasOwnWords()) return;
    // "M41/340" under "Adhesive" says where to read on.
    boolean call = ending == Fate.NOT_UNDERSTOOD && ClauseNumbers.isOne(cell.text());
    Fate fate = call ? Fate.CONTEXT : ending;
    tally = tally.plus(fate);
    boolean former = column.role() == Header.Role.FORMER;
    String why =
        fate == Fate.SET_ASIDE
            ? (former ? "former values under \"" : "nothing that is asked for, under \"")
                + column.text()
                + "\""
            : "";
    ended(
        cell,
        fate,
        fate == Fate.READ && column.attribute() != null ? column.attribute().label() : why);
    if (fate == Fate.SET_ASIDE) {
      aside.merge(why, 1, Integer::sum);
      asideAt.putIfAbsent(why, table.origin(cell));
    }
    if (fate != Fate.NOT_UNDERSTOOD) return;
    Unknown of = unknown.computeIfAbsent(column, c -> new Unknown(table.origin(cell)));
    if (of.samples.size() < SAMPLES) of.samples.add(PlainText.line(cell.text()));
    if (of.tags.size() <= MOST_TAGS) of.tags.addAll(tags);
  }

  /**
   * @param seen cells of titles over several tables that another of them has counted
   */
  public void into(Accounting accounting, SpanFinder spans, String heading, Set<Long> seen) {
    rows.forEach(
        (place, fate) -> {
          if (seen.add(place)) tally = tally.plus(fate);
          else if (endings != null) endings.remove(place);
        });
    if (endings != null) endings.values().forEach(accounting::cell);
    accounting.cells(tally);
    accounting.table(
        new Account.TableAccount(
            table.origin(),
            rooms ? "rooms" : "schedule",
            columns.stream().map(this::column).toList()));
    aside.forEach(
        (why, count) -> {
          accounting.setAside(asideAt.get(why), place(), why, count);
        });
    unknown.forEach((column, of) -> accounting.unread(unread(column, of, spans, heading)));
  }

  private Account.Unread unread(
      Header.Column column, Unknown of, SpanFinder spans, String heading) {
    SpanFinder.Candidates could = new SpanFinder.Candidates();
    if (column.attribute() != null) {
      could.all().add(column.attribute().id());
      could.likely().add(column.attribute().id());
    }
    could.all().addAll(column.evidence().could());
    if (!column.text().isEmpty()) could.addAll(spans.couldState(column.text(), ""));
    for (String sample : of.samples)
      could.addAll(spans.couldState(column.text() + ": " + measured(column, sample), heading));
    return new Account.Unread(
        of.first,
        place(),
        column.text(),
        List.copyOf(could.all()),
        List.copyOf(could.likely()),
        of.tags.size() > MOST_TAGS ? List.of() : List.copyOf(of.tags),
        List.copyOf(of.samples));
  }

  /** A figure alone has the unit of its heading. */
  private static String measured(Header.Column column, String sample) {
    boolean bare = column.unit() != null && sample.matches("[\\d .,/-]+");
    return bare ? sample + " " + column.unit().symbol() : sample;
  }

  private String place() {
    Origin o = table.origin();
    return o.sheet() == null ? "table" : "sheet " + o.sheet();
  }

  private Account.Column column(Header.Column c) {
    String as =
        switch (c.role()) {
          case TAG -> "tag";
          case MATERIAL -> "material";
          case SURFACE -> "surface " + c.surface();
          case ATTRIBUTE -> c.attribute().id();
          case CALLS, FORMER, UNASKED, OTHER -> "";
        };
    boolean some = !as.isEmpty() && unknown.keySet().stream().anyMatch(u -> u.index() == c.index());
    String evidence = c.evidence().why() + (some ? "; some cells not understood" : "");
    boolean open = as.isEmpty() && c.role() == Header.Role.OTHER;
    return new Account.Column(
        c.text(),
        as,
        evidence,
        c.unit() == null ? "" : c.unit().symbol(),
        c.evidence().could(),
        open ? samples(c) : List.of());
  }

  /** Two cells below the heading. */
  private List<String> samples(Header.Column c) {
    Set<String> out = new LinkedHashSet<>();
    boolean below = c.text().isEmpty();
    for (Table.Row row : table.rows()) {
      Table.Cell cell = row.at(c.index());
      if (cell == null || !cell.hasOwnWords() || cell.column() != c.index()) continue;
      String words = PlainText.line(cell.text());
      boolean heads = c.text().endsWith(words);
      if (below && !heads && out.size() < SAMPLES) out.add(words);
      below |= heads;
    }
    return List.copyOf(out);
  }
}
