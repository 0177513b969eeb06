package clearbed.read.sheet;

import clearbed.base.Cancellation;
import clearbed.mark.OwnNotes;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.document.Table.Cell;
import clearbed.model.document.Table.Row;
import clearbed.read.block.CleanText;
import clearbed.read.block.MarkedText;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;

/**
 * Gathers the rows of one sheet, however long; like texts share one string. Blank rows are left
 * out.
 */
final class SheetGrid {
  private static final int POOL = 1 << 13;

  /** Above this a sheet's faulty cells are counted, not listed. */
  private static final int MOST_GAPS = 20;

  private final String document;
  private final String sheet;
  private final List<Row> rows = new ArrayList<>();
  private final List<Cell> cells = new ArrayList<>();
  private final String[] pool = new String[POOL];
  private final MergedAreas merged = new MergedAreas();
  private final List<Gap> gaps = new ArrayList<>();
  private final SheetNotes notes;
  private int moreGaps;
  private int number;
  private boolean hidden;
  private boolean rising = true;

  SheetGrid(String document, String sheet) {
    this.document = document;
    this.sheet = sheet;
    this.notes = new SheetNotes(document, sheet);
  }

  /** The sheet does not show; to be said in the words that name it. */
  void hide(String name) {
    notes.hiddenSheet(name);
  }

  /** Columns that do not show, from 0, both ends among them. */
  void hideColumns(int first, int last) {
    notes.hiddenColumns(first, last);
  }

  /** Begins a row, numbered from 1. */
  void row(int rowNumber, boolean isHidden) {
    Cancellation.check();
    endRow();
    number = rowNumber;
    hidden = isHidden;
  }

  /** Adds a cell to the current row unless it holds nothing. */
  void cell(int column, String text, String comment) {
    String remark = comment.isEmpty() ? comment : OwnNotes.without(comment);
    if (!remark.equals(comment)) gap(number, column, null, "a finding of an earlier run");
    if (text.isEmpty() && remark.isEmpty()) return;
    Cancellation.check();
    cells.add(new Cell(column, 1, false, pooled(text), remark, number, 0));
    if (!text.isEmpty()) notes.filled(column);
    if (!remark.isEmpty()) notes.remark(number, column, remark);
  }

  /** Adds a cell of whose words some may not be in force. */
  void marked(int column, MarkedText text, String remark) {
    cell(column, CleanText.of(text.raw()), remark);
    for (MarkedText.MarkedWords piece : text.pieces()) {
      notes.struck(number, column, piece.words());
      notes.filled(column);
    }
  }

  /** A merged area; rows from 1, columns from 0, both ends within it. */
  void merge(int firstRow, int firstColumn, int lastRow, int lastColumn) {
    merged.add(firstRow, firstColumn, lastRow, lastColumn);
  }

  void gap(int row, int column, String text, String reason) {
    if (gaps.size() < MOST_GAPS) {
      String cell = Table.address(row, column);
      gaps.add(new Gap(Origin.ofCell(document, sheet, cell, text), reason));
    } else {
      moreGaps++;
    }
  }

  Table table() {
    endRow();
    List<Row> inOrder = rising ? rows : sorted();
    List<Row> result = merged.apply(inOrder, this::gap);
    if (merged.isCutShort()) {
      gaps.add(new Gap(origin(), "more merged areas than a sheet can hold; the rest left out"));
    }
    return new Table(origin(), result, true);
  }

  /** To be asked after {@link #table()}. */
  List<Gap> gaps() {
    List<Gap> all = new ArrayList<>(gaps);
    if (moreGaps > 0) all.add(new Gap(origin(), moreGaps + " more such cells"));
    all.addAll(notes.list());
    return all;
  }

  private Origin origin() {
    return Origin.ofCell(document, sheet, null, null);
  }

  private void endRow() {
    notes.row(number, hidden, !cells.isEmpty());
    if (cells.isEmpty()) return;
    boolean ordered = true;
    for (int i = 1; i < cells.size(); i++) {
      ordered &= cells.get(i - 1).column() < cells.get(i).column();
    }
    if (!ordered) cells.sort(Comparator.comparingInt(Cell::column));
    if (!rows.isEmpty() && rows.get(rows.size() - 1).number() >= number) rising = false;
    rows.add(new Row(number, cells, hidden));
    cells.clear();
  }

  /** Rows out of order or written in two parts happen in files made by programs. */
  private List<Row> sorted() {
    TreeMap<Integer, Row> byNumber = new TreeMap<>();
    for (Row row : rows) byNumber.merge(row.number(), row, SheetGrid::joined);
    return new ArrayList<>(byNumber.values());
  }

  private static Row joined(Row a, Row b) {
    TreeMap<Integer, Cell> byColumn = new TreeMap<>();
    for (Cell cell : a.cells()) byColumn.put(cell.column(), cell);
    for (Cell cell : b.cells()) byColumn.put(cell.column(), cell);
    return new Row(a.number(), List.copyOf(byColumn.values()), a.hidden() || b.hidden());
  }

  private String pooled(String text) {
    int slot = (text.hashCode() * 0x9E3779B9) >>> 19;
    if (!text.equals(pool[slot])) pool[slot] = text;
    return pool[slot];
  }
}
