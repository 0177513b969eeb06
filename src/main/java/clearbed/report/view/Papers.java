package clearbed.report.view;

import clearbed.model.Account;
import clearbed.model.Block;
import clearbed.model.Document;
import clearbed.model.Fate;
import clearbed.model.Finding;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import clearbed.model.Table;
import clearbed.recognise.text.PlainText;
import clearbed.report.wording.Words;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** The documents as text and tables. */
final class Papers {
  /** Pieces of a text without pages that are laid out together. */
  private static final int TOGETHER = 40;

  /**
   * More rows of one table are of no use to a reader; those with findings are shown all the same.
   */
  private static final int MOST_ROWS = 2_000;

  /** Rows that are laid out together. */
  private static final int ROWS_TOGETHER = 40;

  /** Characters of all documents; what is more is named, and not shown. */
  private static final long MOST_TEXT = 24_000_000;

  private static final Pattern LETTER = Pattern.compile("\\(?[A-Za-z0-9]{1,3}[.)]");

  private static final Page.Run NOTHING = new Page.Run("", "", "");

  private final Anchors anchors;
  private final Map<Place, List<Integer>> byPlace = new LinkedHashMap<>();
  private long text;

  private record Place(
      String document, String sheet, String cell, Integer page, Integer paragraph) {
    static Place of(Origin o) {
      return new Place(o.document(), o.sheet(), o.cell(), o.page(), o.paragraph());
    }
  }

  /**
   * @param findings to be shown, numbered from 1
   */
  Papers(Anchors anchors, List<Finding> findings) {
    this.anchors = anchors;
    for (int i = 0; i < findings.size(); i++)
      byPlace
          .computeIfAbsent(Place.of(findings.get(i).origin()), p -> new ArrayList<>())
          .add(i + 1);
  }

  /** Findings that stand at no place shown so far. */
  List<Integer> left() {
    return byPlace.values().stream().flatMap(List::stream).sorted().toList();
  }

  Page.Paper of(Viewed viewed) {
    Document document = viewed.document();
    Map<Place, List<Account.Ending>> endings = new HashMap<>();
    for (Account.Ending e : viewed.endings())
      endings.computeIfAbsent(Place.of(e.origin()), p -> new ArrayList<>()).add(e);
    List<String> remarks = new ArrayList<>();
    if (!document.reason().isEmpty()) remarks.add(Shown.line(document.reason()));
    for (Document.Gap gap : document.gaps())
      remarks.add(
          Words.of(gap.fate())
              + ": "
              + Shown.line(gap.origin().place())
              + ": "
              + Shown.line(gap.reason()));
    List<Page.Chunk> chunks = new ArrayList<>();
    if (text < MOST_TEXT) chunks(document, endings, chunks);
    else if (!document.blocks().isEmpty())
      remarks.add(
          "its text is left out here, as the page would grow too large; give fewer documents");
    return new Page.Paper(
        anchors.document(document.path()),
        Shown.line(document.path()),
        Words.of(document.status()),
        remarks,
        chunks);
  }

  private void chunks(
      Document document, Map<Place, List<Account.Ending>> endings, List<Page.Chunk> chunks) {
    List<Page.Piece> pieces = new ArrayList<>();
    Integer page = null;
    for (Block block : document.blocks()) {
      Integer of = block.origin().page();
      boolean full = of == null ? pieces.size() >= TOGETHER : !of.equals(page);
      if (full && !pieces.isEmpty()) {
        chunks.add(new Page.Chunk(name(page), List.copyOf(pieces)));
        pieces.clear();
      }
      page = of;
      if (block instanceof Paragraph p) pieces.add(paragraph(p, endings));
      else if (block instanceof Table t) {
        for (Page.Piece part : table(t, endings)) {
          // Each part of a long table by itself, with the findings on it.
          if (part.grid().lines().size() >= ROWS_TOGETHER && !pieces.isEmpty()) {
            chunks.add(new Page.Chunk(name(page), List.copyOf(pieces)));
            pieces.clear();
          }
          pieces.add(part);
        }
      }
    }
    if (!pieces.isEmpty()) chunks.add(new Page.Chunk(name(page), pieces));
  }

  private static String name(Integer page) {
    return page == null ? "" : "Page " + page;
  }

  private List<Integer> taken(Origin origin) {
    List<Integer> there = byPlace.remove(Place.of(origin));
    return there == null ? List.of() : there;
  }

  private Page.Piece paragraph(Paragraph p, Map<Place, List<Account.Ending>> endings) {
    text += p.text().length();
    String part =
        switch (p.region()) {
          case BODY -> "";
          default -> p.region().name().toLowerCase(Locale.ROOT);
        };
    return new Page.Piece(
        anchors.at(p.origin()),
        Math.min(p.headingLevel(), 3),
        Shown.line(p.label()),
        part,
        runs(p.text(), endings.getOrDefault(Place.of(p.origin()), List.of())),
        null,
        taken(p.origin()));
  }

  /** The text cut where one ending gives way to the next. */
  private static List<Page.Run> runs(String written, List<Account.Ending> endings) {
    String plain = PlainText.of(written);
    // Marks that are one character in either form stay as they were typed.
    String shown = plain.length() == written.length() ? written : plain;
    List<Page.Run> out = new ArrayList<>();
    int from = 0;
    for (Account.Ending e : endings) {
      int at = plain.indexOf(e.text(), from);
      if (at < 0) continue;
      String between = shown.substring(from, at);
      int end = at + e.text().length();
      // The letter of a clause is no sentence, whatever became of it.
      boolean letter = LETTER.matcher(e.text()).matches();
      String words = shown.substring(at, end);
      Page.Run run =
          letter ? new Page.Run("", words, "") : new Page.Run(kind(e.fate()), words, why(e));
      Page.Run last = out.isEmpty() ? NOTHING : out.get(out.size() - 1);
      boolean same =
          !out.isEmpty()
              && between.isBlank()
              && last.kind().equals(run.kind())
              && last.why().equals(run.why());
      if (same) {
        out.set(
            out.size() - 1,
            new Page.Run(run.kind(), last.text() + between + run.text(), run.why()));
      } else {
        if (at > from) out.add(new Page.Run("", between, ""));
        out.add(run);
      }
      from = end;
    }
    if (from < shown.length()) out.add(new Page.Run("", shown.substring(from), ""));
    return out.stream().map(r -> new Page.Run(r.kind(), Shown.text(r.text()), r.why())).toList();
  }

  private static String kind(Fate fate) {
    return switch (fate) {
      case READ -> "read";
      case CONTEXT -> "context";
      case SET_ASIDE -> "aside";
      case NOT_UNDERSTOOD -> "unread";
    };
  }

  private static String why(Account.Ending e) {
    String why = Shown.line(e.why());
    return switch (e.fate()) {
      case READ -> why.isEmpty() ? "read" : "read: " + why;
      case CONTEXT -> "context: heading, tag, place or unit of others";
      case SET_ASIDE -> "set aside: " + why;
      case NOT_UNDERSTOOD -> "not understood";
    };
  }

  private List<Page.Piece> table(Table table, Map<Place, List<Account.Ending>> endings) {
    TreeSet<Integer> columns = new TreeSet<>();
    for (Table.Row row : table.rows())
      for (Table.Cell cell : row.cells()) if (!cell.text().isBlank()) columns.add(cell.column());
    List<String> letters = columns.stream().map(c -> letters(table, c)).toList();
    List<Page.Piece> out = new ArrayList<>();
    List<Page.Line> lines = new ArrayList<>();
    List<Integer> onTable = taken(table.origin());
    int shown = 0;
    int left = 0;
    for (Table.Row row : table.rows()) {
      if (row.cells().stream().allMatch(c -> c.text().isBlank())) continue;
      Page.Line line = line(table, row, List.copyOf(columns), endings);
      if (++shown > MOST_ROWS && line.findings().isEmpty() || text > MOST_TEXT) {
        left++;
        continue;
      }
      lines.add(line);
      if (lines.size() < ROWS_TOGETHER) continue;
      out.add(grid(table, letters, lines, 0, out.isEmpty() ? onTable : List.of(), out.isEmpty()));
      lines = new ArrayList<>();
    }
    if (!lines.isEmpty() || left > 0 || out.isEmpty())
      out.add(
          grid(table, letters, lines, left, out.isEmpty() ? onTable : List.of(), out.isEmpty()));
    return out;
  }

  private static String letters(Table table, int column) {
    if (table.turned()) return String.valueOf(column + 1);
    String address = Table.address(1, column);
    return address.substring(0, address.length() - 1);
  }

  private Page.Piece grid(
      Table table,
      List<String> letters,
      List<Page.Line> lines,
      int left,
      List<Integer> findings,
      boolean first) {
    String sheet = table.origin().sheet();
    String name = sheet == null ? "Table" : "Sheet " + Shown.line(sheet);
    String id = first ? anchors.at(table.origin()) : "";
    Page.Grid grid = new Page.Grid(first ? name : name + ", continued", letters, lines, left);
    return new Page.Piece(id, 0, "", "", List.of(), grid, findings);
  }

  private Page.Line line(
      Table table, Table.Row row, List<Integer> columns, Map<Place, List<Account.Ending>> endings) {
    Page.Run whole = ofRow(table, row, endings);
    List<Page.Box> boxes = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      int column = columns.get(i);
      Table.Cell there = row.at(column);
      // A finding may stand at an empty cell.
      Table.Cell cell = there == null ? Table.Cell.of(row.number(), column, "") : there;
      int span = 1;
      while (i + 1 < columns.size() && columns.get(i + 1) < cell.column() + cell.columnSpan()) {
        span++;
        i++;
      }
      boxes.add(box(table, cell, span, whole, endings));
    }
    List<Integer> findings = boxes.stream().flatMap(box -> box.findings().stream()).toList();
    return new Page.Line(row.number(), boxes, findings);
  }

  private Page.Box box(
      Table table,
      Table.Cell cell,
      int span,
      Page.Run whole,
      Map<Place, List<Account.Ending>> endings) {
    if (cell.continued())
      return new Page.Box("", span, new Page.Run("above", "\u2033", ""), List.of());
    Origin origin = table.origin(cell);
    List<Integer> own = taken(origin);
    text += cell.text().length() + 40;
    List<Account.Ending> ended = endings.getOrDefault(Place.of(origin), List.of());
    Account.Ending only = ended.size() == 1 ? ended.get(0) : null;
    boolean alone = only != null && only.text().equals(cell.text());
    boolean blank = cell.text().isBlank();
    Page.Run words =
        blank
            ? NOTHING
            : new Page.Run(
                alone ? kind(only.fate()) : whole.kind(),
                Shown.text(cell.text()),
                alone ? why(only) : whole.why());
    return new Page.Box(anchors.at(origin), span, words, own);
  }

  /** A row that was read as a sentence ended as its words did, the worst of them. */
  private static Page.Run ofRow(
      Table table, Table.Row row, Map<Place, List<Account.Ending>> endings) {
    Account.Ending worst = null;
    for (Table.Cell cell : row.cells()) {
      if (cell.text().isBlank()) continue;
      for (Account.Ending e : endings.getOrDefault(Place.of(table.origin(cell)), List.of())) {
        boolean worse = worst == null || rank(e.fate()) > rank(worst.fate());
        if (!e.text().equals(cell.text()) && worse) worst = e;
      }
    }
    return worst == null ? NOTHING : new Page.Run(kind(worst.fate()), "", why(worst));
  }

  private static int rank(Fate fate) {
    return switch (fate) {
      case SET_ASIDE -> 0;
      case CONTEXT -> 1;
      case READ -> 2;
      case NOT_UNDERSTOOD -> 3;
    };
  }
}
