package clearbed.read.pdf;

import clearbed.read.block.CleanText;
import clearbed.read.layout.Line;
import clearbed.read.layout.Line.Segment;
import clearbed.read.layout.Ruling;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Puts letters together into words and lines. */
final class Lines {
  /** Of the font's size: letters within this height of each other stand on one line. */
  private static final double SAME_LINE = 0.35;

  /** Of the font's size: a wider blank sets columns apart; justified text stays below it. */
  private static final double COLUMN_GAP = 0.9;

  private final List<Ruling> uprights;

  Lines(List<Ruling> rulings) {
    uprights = rulings.stream().filter(Ruling::isUpright).toList();
  }

  List<Line> of(List<Glyph> glyphs) {
    TreeMap<Double, List<Glyph>> levels = new TreeMap<>();
    for (Glyph glyph : glyphs) level(levels, glyph).add(glyph);
    List<Line> lines = new ArrayList<>();
    for (GlyphRow row : raisedLettersIn(levels.values().stream().map(GlyphRow::of).toList())) {
      Line line = line(row.glyphs());
      if (line != null) lines.add(line);
    }
    lines.sort(Comparator.comparingDouble(Line::baseline));
    return lines;
  }

  private static List<Glyph> level(TreeMap<Double, List<Glyph>> levels, Glyph glyph) {
    double y = glyph.baseline();
    double reach = Math.max(1, glyph.size() * SAME_LINE);
    Map.Entry<Double, List<Glyph>> below = levels.floorEntry(y);
    Map.Entry<Double, List<Glyph>> above = levels.ceilingEntry(y);
    double down = below == null ? Double.MAX_VALUE : y - below.getKey();
    double up = above == null ? Double.MAX_VALUE : above.getKey() - y;
    if (Math.min(down, up) > reach) return levels.computeIfAbsent(y, k -> new ArrayList<>());
    return down <= up ? below.getValue() : above.getValue();
  }

  /**
   * @param largest of the letters; raised ones that join them are smaller
   */
  private record GlyphRow(List<Glyph> glyphs, Glyph largest) {
    static GlyphRow of(List<Glyph> glyphs) {
      return new GlyphRow(glyphs, Lines.largest(glyphs));
    }

    double baseline() {
      return glyphs.get(0).baseline();
    }
  }

  /** Raised and lowered letters (small, between two levels) go to the line they belong to. */
  private static List<GlyphRow> raisedLettersIn(List<GlyphRow> rows) {
    List<GlyphRow> kept = new ArrayList<>(rows);
    for (GlyphRow small : rows) {
      for (GlyphRow host : rows) {
        if (host == small || !isRaised(small, host) || !holds(kept, host)) continue;
        host.glyphs().addAll(small.glyphs());
        kept.removeIf(r -> r == small);
        break;
      }
    }
    return kept;
  }

  private static boolean holds(List<GlyphRow> rows, GlyphRow row) {
    return rows.stream().anyMatch(r -> r == row);
  }

  /** Each small letter stands beside a larger one, not beside small letters of its own kind. */
  private static boolean isRaised(GlyphRow small, GlyphRow host) {
    double most = host.largest().size() * 0.6;
    if (Math.abs(small.baseline() - host.baseline()) > 2 * most) return false;
    for (Glyph g : small.glyphs()) {
      if (g.isBlank()) continue;
      if (host.glyphs().stream().noneMatch(o -> carries(o, g))) return false;
    }
    return true;
  }

  private static boolean carries(Glyph large, Glyph g) {
    double size = large.size();
    return !large.isBlank()
        && g.size() <= size * 0.8
        && Math.abs(g.baseline() - large.baseline()) <= size * 0.6
        && g.x0() - large.x1() < size
        && large.x0() - g.x1() < size;
  }

  private Line line(List<Glyph> row) {
    row.sort(Comparator.comparingDouble(Glyph::x0));
    List<Segment> segments = new ArrayList<>();
    List<Glyph> run = new ArrayList<>();
    StringBuilder text = new StringBuilder();
    Glyph last = null;
    boolean blank = false;
    double reach = 0;
    for (Glyph g : row) {
      if (g.isBlank() || g.struck()) {
        // What is struck through says nothing, and keeps its room.
        if (g.struck()) reach = Math.max(reach, g.x1());
        blank = true;
        continue;
      }
      if (last != null && isSecondPrint(g, last)) continue;
      double gap = last == null ? 0 : g.x0() - Math.max(reach, last.x1());
      if (last != null
          && (gap > COLUMN_GAP * g.size() || gap > 0.1 * g.size() && isRuledApart(last, g))) {
        segments.add(segment(run, text));
      } else if (last != null && (blank || gap > wordGap(g))) {
        text.append(' ');
      }
      text.append(g.text());
      run.add(g);
      last = g;
      blank = false;
    }
    if (!run.isEmpty()) segments.add(segment(run, text));
    segments.removeIf(s -> s.text().isEmpty());
    if (segments.isEmpty()) return null;
    return new Line(segments, largest(row).baseline());
  }

  private static Glyph largest(List<Glyph> row) {
    Glyph largest = row.get(0);
    for (Glyph g : row) if (g.size() > largest.size() && !g.isBlank()) largest = g;
    return largest;
  }

  /** Some programs print a letter twice, a hair apart, to make it bold. */
  private static boolean isSecondPrint(Glyph g, Glyph last) {
    return g.text().equals(last.text()) && g.x0() - last.x0() < 0.25 * (last.x1() - last.x0());
  }

  private static double wordGap(Glyph g) {
    boolean sound = g.space() > 0.1 * g.size() && g.space() < 0.6 * g.size();
    return sound ? Math.max(0.1 * g.size(), 0.45 * g.space()) : 0.18 * g.size();
  }

  private boolean isRuledApart(Glyph left, Glyph right) {
    double y = right.baseline() - right.size() * 0.3;
    for (Ruling r : uprights) {
      if (r.x() >= left.x1() - 1 && r.x() <= right.x0() + 1 && r.y0() <= y && r.y1() >= y) {
        return true;
      }
    }
    return false;
  }

  private static Segment segment(List<Glyph> run, StringBuilder text) {
    double size = 0;
    for (Glyph g : run) size = Math.max(size, g.size());
    boolean bold = run.stream().allMatch(Glyph::bold);
    Segment segment =
        new Segment(
            CleanText.line(text.toString()),
            run.get(0).x0(),
            run.get(run.size() - 1).x1(),
            largest(run).baseline(),
            size,
            bold);
    run.clear();
    text.setLength(0);
    return segment;
  }
}
