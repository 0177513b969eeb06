package clearbed.read.pdf;

import clearbed.read.layout.Line;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** Tells headers and footers: lines near the edge of the page that come again on other pages. */
final class PageMargins {
  /** Of the page's height, at the top and at the bottom. */
  private static final double DEPTH = 0.09;

  /** Left and right pages may have headers of their own; first pages of parts have none. */
  private static final double SHARE_OF_PAGES = 0.3;

  private static final Pattern PAGE_NUMBER =
      Pattern.compile("(?i)^(page\\s+)?[-\u2013 ]*\\d+[-\u2013 ]*((of|/)\\s*\\d+)?$");

  private final Map<String, Set<Integer>> pagesByText = new HashMap<>();
  private final int pages;

  PageMargins(List<PdfPage> all) {
    pages = all.size();
    for (PdfPage page : all) {
      for (Line line : page.lines()) {
        if (isNearEdge(line, page)) {
          pagesByText.computeIfAbsent(key(line, page), k -> new HashSet<>()).add(page.number());
        }
      }
    }
  }

  boolean isHeader(Line line, PdfPage page) {
    return line.baseline() < page.height() / 2 && isRunning(line, page);
  }

  boolean isFooter(Line line, PdfPage page) {
    return line.baseline() > page.height() / 2 && isRunning(line, page);
  }

  private boolean isRunning(Line line, PdfPage page) {
    if (!isNearEdge(line, page)) return false;
    if (PAGE_NUMBER.matcher(line.text()).matches()) return true;
    int seen = pagesByText.getOrDefault(key(line, page), Set.of()).size();
    return seen >= Math.max(2, SHARE_OF_PAGES * pages) && !headsATable(line, page);
  }

  /** A table that goes on over the page repeats its heading, right above its rows. */
  private static boolean headsATable(Line line, PdfPage page) {
    if (line.segments().size() < 3) return false;
    int next = page.lines().indexOf(line) + 1;
    if (next >= page.lines().size()) return false;
    Line below = page.lines().get(next);
    return below.segments().size() >= 3 && below.baseline() - line.baseline() < 4 * line.size();
  }

  private static boolean isNearEdge(Line line, PdfPage page) {
    double y = line.baseline() / page.height();
    return y < DEPTH || y > 1 - DEPTH;
  }

  private static String key(Line line, PdfPage page) {
    String side = line.baseline() < page.height() / 2 ? "top " : "bottom ";
    return side + line.text().replaceAll("\\d+", "#").replaceAll("\\s+", " ");
  }
}
