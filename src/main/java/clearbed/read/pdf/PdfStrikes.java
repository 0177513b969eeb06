package clearbed.read.pdf;

import clearbed.read.layout.Hyphens;
import clearbed.read.layout.Line;
import clearbed.read.layout.Ruling;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationTextMarkup;

/** Which letters of a page are struck through: by a line across their middle, or by a remark. */
final class PdfStrikes {
  // Of the font's size, above the foot of the letters; lines under words lie below it.
  private static final double LOWEST = 0.12;
  private static final double HIGHEST = 0.5;

  /** Of a letter's width that the line must cross. */
  private static final double SHARE = 0.6;

  /** Of the font's size that a line may go on beyond the letters. */
  private static final double OVERHANG = 1.0;

  /** Points that lines must end within each other to meet. */
  private static final double MEET = 1.5;

  private final List<Glyph> glyphs;
  private final List<Ruling> rest = new ArrayList<>();
  private final BitSet struck = new BitSet();

  /** Glyphs by the line that they stand on. */
  private final Integer[] byBaseline;

  private final double largest;

  /**
   * @param areas that a reader of the page has marked as struck out
   */
  PdfStrikes(List<Glyph> all, List<Ruling> rulings, List<Ruling> areas) {
    glyphs = all;
    byBaseline = new Integer[all.size()];
    Arrays.setAll(byBaseline, i -> i);
    Arrays.sort(byBaseline, Comparator.comparingDouble(i -> all.get(i).baseline()));
    largest = all.stream().mapToDouble(Glyph::size).max().orElse(0);
    List<Ruling> uprights = rulings.stream().filter(Ruling::isUpright).toList();
    for (Ruling r : rulings) {
      if (!r.isLevel() || !strikes(r, uprights)) rest.add(r);
    }
    for (Ruling area : areas) strike(area);
  }

  /** Marks the letters that the line goes through the middle of. */
  private boolean strikes(Ruling r, List<Ruling> uprights) {
    BitSet hit = new BitSet();
    double x0 = Double.MAX_VALUE;
    double x1 = 0;
    double size = 0;
    for (int i = from(r.y()); i < byBaseline.length; i++) {
      Glyph g = glyphs.get(byBaseline[i]);
      if (g.baseline() - HIGHEST * largest > r.y()) break;
      if (!isThrough(r, g)) continue;
      hit.set(byBaseline[i]);
      x0 = Math.min(x0, g.x0());
      x1 = Math.max(x1, g.x1());
      size = Math.max(size, g.size());
    }
    if (hit.isEmpty()) return false;
    boolean ofTheWords = Math.max(x0 - r.x0(), r.x1() - x1) <= OVERHANG * size;
    if (!ofTheWords && !crosses(r, uprights, x0, x1)) return false;
    struck.or(hit);
    return true;
  }

  /** The first glyph that does not stand above a height. */
  private int from(double y) {
    int low = 0;
    int high = byBaseline.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (glyphs.get(byBaseline[middle]).baseline() < y) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  private static boolean isThrough(Ruling r, Glyph g) {
    double above = g.baseline() - r.y();
    double overlap = Math.min(r.x1(), g.x1()) - Math.max(r.x0(), g.x0());
    return !g.isBlank()
        && above >= LOWEST * g.size()
        && above <= HIGHEST * g.size()
        && overlap >= SHARE * (g.x1() - g.x0());
  }

  /**
   * A line over a whole row of a table crosses the lines of its columns, and words on both sides of
   * one; where a row ends, so do lines.
   *
   * @param x0 where the words begin that it goes through
   * @param x1 where they end
   */
  private static boolean crosses(Ruling r, List<Ruling> uprights, double x0, double x1) {
    boolean any = false;
    for (Ruling upright : uprights) {
      if (upright.x() < r.x0() - MEET || upright.x() > r.x1() + MEET) continue;
      if (upright.y0() > r.y() + MEET || upright.y1() < r.y() - MEET) continue;
      boolean through = upright.y0() < r.y() - 2 * MEET && upright.y1() > r.y() + 2 * MEET;
      if (!through) return false;
      any |= upright.x() > x0 && upright.x() < x1;
    }
    return any;
  }

  private void strike(Ruling area) {
    for (int i = 0; i < glyphs.size(); i++) {
      Glyph g = glyphs.get(i);
      double x = (g.x0() + g.x1()) / 2;
      boolean within =
          x >= area.x0() && x <= area.x1() && g.middle() >= area.y0() && g.middle() <= area.y1();
      if (within && !g.isBlank()) struck.set(i);
    }
  }

  /** The drawn lines that strike nothing through. */
  List<Ruling> rest() {
    return rest;
  }

  List<Glyph> glyphs() {
    if (struck.isEmpty()) return glyphs;
    List<Glyph> marked = new ArrayList<>(glyphs.size());
    for (int i = 0; i < glyphs.size(); i++) {
      marked.add(struck.get(i) ? glyphs.get(i).withStruck(true) : glyphs.get(i));
    }
    return marked;
  }

  /** The words that are struck, those of lines that follow each other in one piece. */
  List<String> words() {
    List<Glyph> gone = struck.stream().mapToObj(glyphs::get).toList();
    List<String> words = new ArrayList<>();
    StringBuilder piece = new StringBuilder();
    Line last = null;
    for (Line line : new Lines(rest).of(gone)) {
      boolean goesOn = last != null && line.baseline() - last.baseline() < 2 * line.size();
      if (!goesOn && piece.length() > 0) {
        words.add(piece.toString());
        piece.setLength(0);
      }
      Hyphens.append(piece, line.text());
      last = line;
    }
    if (piece.length() > 0) words.add(piece.toString());
    return words;
  }

  /** Areas of remarks that strike words out, in points from the foot of the page. */
  static List<Ruling> areas(PDPage page) {
    List<Ruling> areas = new ArrayList<>();
    try {
      for (PDAnnotation note : page.getAnnotations()) {
        if (!(note instanceof PDAnnotationTextMarkup markup)) continue;
        if (!"StrikeOut".equals(markup.getSubtype())) continue;
        float[] quads = markup.getQuadPoints();
        for (int i = 0; quads != null && i + 7 < quads.length; i += 8)
          areas.add(area(quads, i, page));
      }
    } catch (IOException | RuntimeException e) {
      // A broken note is no part of the page's own text.
    }
    return areas;
  }

  private static Ruling area(float[] quads, int from, PDPage page) {
    double x0 = Double.MAX_VALUE;
    double y0 = Double.MAX_VALUE;
    double x1 = -Double.MAX_VALUE;
    double y1 = -Double.MAX_VALUE;
    for (int i = from; i < from + 8; i += 2) {
      x0 = Math.min(x0, quads[i]);
      x1 = Math.max(x1, quads[i]);
      y0 = Math.min(y0, quads[i + 1]);
      y1 = Math.max(y1, quads[i + 1]);
    }
    double left = page.getCropBox().getLowerLeftX();
    double foot = page.getCropBox().getLowerLeftY();
    return new Ruling(x0 - left, y0 - foot, x1 - left, y1 - foot);
  }
}
