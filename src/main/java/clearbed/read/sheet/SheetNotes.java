package clearbed.read.sheet;

import clearbed.model.document.Document.Gap;
import clearbed.model.document.Document.GapFate;
import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.read.block.Remarks;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/** What is to be said of a sheet beyond its cells: once for what is alike and side by side. */
final class SheetNotes {
  static final String HIDDEN = "a hidden sheet";
  static final String VERY_HIDDEN = "a sheet hidden so that Excel does not offer to show it";

  /** Above this the places of a kind are counted, not listed. */
  private static final int MOST = 500;

  private final String document;
  private final String sheet;
  private final PlacesAlike struck =
      new PlacesAlike("struck through, not in force", GapFate.NOT_IN_FORCE);
  private final PlacesAlike remarks = new PlacesAlike(Remarks.COMMENT, GapFate.PASSED_OVER);
  private final PlacesAlike rows = new PlacesAlike("hidden rows; read like the rest", GapFate.READ);
  private final BitSet hiddenColumns = new BitSet();
  private final BitSet filledColumns = new BitSet();
  private String hiddenSheet = "";
  private int struckRow;
  private int struckColumn;
  private StringBuilder struckWords = new StringBuilder();
  private int reachedRow;
  private int firstHiddenRow;
  private int lastHiddenRow;

  SheetNotes(String document, String sheet) {
    this.document = document;
    this.sheet = sheet;
  }

  void hiddenSheet(String name) {
    hiddenSheet = name;
  }

  void hiddenColumns(int first, int last) {
    hiddenColumns.set(first, last + 1);
  }

  /** The column holds something. */
  void filled(int column) {
    filledColumns.set(column);
  }

  /** The next row; of hidden ones those are said that hold something, or lie between such. */
  void row(int number, boolean hidden, boolean filled) {
    boolean goesOn = number == reachedRow + 1;
    reachedRow = number;
    if (!hidden || !goesOn) endRows();
    if (!hidden || !filled) return;
    if (firstHiddenRow == 0) firstHiddenRow = number;
    lastHiddenRow = number;
  }

  private void endRows() {
    if (firstHiddenRow == 0) return;
    boolean one = firstHiddenRow == lastHiddenRow;
    String reason =
        one
            ? "hidden row " + firstHiddenRow + "; read like the rest"
            : "hidden rows " + firstHiddenRow + " to " + lastHiddenRow + "; read like the rest";
    rows.add(place(firstHiddenRow, 0, null), reason);
    firstHiddenRow = 0;
  }

  void struck(int row, int column, String words) {
    if (row != struckRow) {
      endStruck();
      struckRow = row;
      struckColumn = column;
    }
    struckWords.append(struckWords.length() > 0 ? " | " : "").append(words);
  }

  private void endStruck() {
    if (struckWords.length() == 0) return;
    struck.add(place(struckRow, struckColumn, struckWords.toString()), struck.reason);
    struckWords = new StringBuilder();
  }

  void remark(int row, int column, String words) {
    remarks.add(place(row, column, words).withPart("comment"), remarks.reason);
  }

  private Origin place(int row, int column, String words) {
    return Origin.ofCell(document, sheet, Table.address(row, column), words);
  }

  /** Nothing for a sheet that holds nothing. */
  List<Gap> list() {
    endRows();
    endStruck();
    List<Gap> all = new ArrayList<>();
    Origin whole = Origin.ofCell(document, sheet, null, null);
    if (!hiddenSheet.isEmpty() && !filledColumns.isEmpty()) {
      all.add(new Gap(whole, hiddenSheet + "; read like the rest", GapFate.READ));
    }
    columns(all);
    for (PlacesAlike kind : List.of(rows, struck, remarks)) kind.into(all, whole);
    return all;
  }

  private void columns(List<Gap> all) {
    int first = hiddenColumns.nextSetBit(0);
    while (first >= 0) {
      int end = hiddenColumns.nextClearBit(first);
      int filled = filledColumns.nextSetBit(first);
      if (filled >= 0 && filled < end) {
        int last = filledColumns.previousSetBit(end - 1);
        String name = letters(filled) + (last > filled ? " to " + letters(last) : "");
        String reason = "hidden column" + (last > filled ? "s " : " ") + name;
        all.add(new Gap(place(1, filled, null), reason + "; read like the rest", GapFate.READ));
      }
      first = hiddenColumns.nextSetBit(end);
    }
  }

  private static String letters(int column) {
    return Table.address(1, column).replaceAll("\\d", "");
  }

  /** Places of which the same is to be said. */
  private static final class PlacesAlike {
    private final String reason;
    private final GapFate fate;
    private final List<Gap> places = new ArrayList<>();
    private int more;

    PlacesAlike(String reason, GapFate fate) {
      this.reason = reason;
      this.fate = fate;
    }

    void add(Origin place, String words) {
      if (places.size() < MOST) places.add(new Gap(place, words, fate));
      else more++;
    }

    void into(List<Gap> all, Origin whole) {
      all.addAll(places);
      if (more > 0) all.add(new Gap(whole, more + " more places: " + reason, fate));
    }
  }
}
