package clearbed.read.pdf;

import clearbed.read.layout.Line;
import clearbed.read.layout.Line.Segment;
import clearbed.read.layout.PdfTable;
import clearbed.read.layout.PdfTable.PdfCell;
import clearbed.read.layout.Ruling;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;

/** Finds tables whose cells are drawn, and takes their words out of the lines of the page. */
final class RuledTables {
  private static final int MOST_COLUMNS = 60;
  private static final int MOST_ROWS = 400;

  private final int page;
  private final List<PdfTable> tables = new ArrayList<>();
  private final List<List<Line>> boxes = new ArrayList<>();

  /** By identity: two tables of a page may have the same word at the same place across it. */
  private final Set<Segment> taken = Collections.newSetFromMap(new IdentityHashMap<>());

  RuledTables(PdfPage page, List<Line> lines) {
    this.page = page.number();
    for (List<Ruling> frame : RuledFrames.of(page.rulings())) {
      add(new RuledGrid(frame), page, lines);
    }
    tables.sort(Comparator.comparingDouble(PdfTable::top));
  }

  List<PdfTable> tables() {
    return tables;
  }

  /**
   * Words in frames that are no tables (a title block, a framed note), to be read by themselves.
   */
  List<List<Line>> boxes() {
    return boxes;
  }

  /** The lines less the words that stand in the tables and boxes. */
  List<Line> rest(List<Line> lines) {
    if (taken.isEmpty()) return lines;
    List<Line> rest = new ArrayList<>();
    for (Line line : lines) {
      List<Segment> left = line.segments().stream().filter(s -> !taken.contains(s)).toList();
      if (left.size() == line.segments().size()) rest.add(line);
      else if (!left.isEmpty()) rest.add(Line.apart(left));
    }
    return rest;
  }

  private void add(RuledGrid grid, PdfPage sheet, List<Line> lines) {
    if (grid.columns() < 1 || grid.columns() > MOST_COLUMNS || grid.rows() > MOST_ROWS) return;
    RuledWords words = new RuledWords(grid, page);
    for (Line line : lines) {
      for (Segment s : line.segments()) {
        if (!taken.contains(s)) words.add(s, line);
      }
    }
    words.leaveOutPage(sheet.width() * sheet.height());
    List<List<PdfCell>> rows = words.rows();
    if (grid.columns() >= 2 && isTable(rows)) {
      tables.add(new PdfTable(grid.top(), grid.bottom(), grid.lefts(), grid.right(), rows));
    } else if (isInFlow(grid, words, lines)) {
      return;
    } else {
      boxes.addAll(words.boxes());
    }
    taken.addAll(words.segments());
  }

  /** A line or a note with a frame around it and nothing beside it is read where it stands. */
  private static boolean isInFlow(RuledGrid grid, RuledWords words, List<Line> lines) {
    List<List<Line>> boxes = words.boxes();
    if (boxes.size() > 1 && boxes.stream().anyMatch(box -> box.size() > 1)) return false;
    Set<Segment> own = Collections.newSetFromMap(new IdentityHashMap<>());
    own.addAll(words.segments());
    return lines.stream()
        .filter(line -> line.middle() > grid.top() && line.middle() < grid.bottom())
        .allMatch(line -> own.containsAll(line.segments()));
  }

  /** Boxes drawn around notes or pictures have lines too, but no two rows of values. */
  private static boolean isTable(List<List<PdfCell>> rows) {
    long several = rows.stream().filter(r -> r.size() >= 2).count();
    return rows.size() >= 2 && several >= 2 || several >= 1 && rows.size() >= 3;
  }
}
