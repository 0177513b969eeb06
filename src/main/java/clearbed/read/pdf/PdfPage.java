package clearbed.read.pdf;

import clearbed.read.layout.Line;
import clearbed.read.layout.Ruling;
import java.util.List;

/**
 * What stands on a page.
 *
 * @param number from 1
 * @param lines of the page's main writing direction, from the top
 * @param turned lines in other directions, each direction from its own top
 * @param struck words that a line is drawn through, those of neighbouring lines together
 * @param pictures true when the page shows pictures, or drawings large enough to hold outlined text
 * @param fault why the page could not be read to its end, or empty
 */
record PdfPage(
    int number,
    double width,
    double height,
    List<Line> lines,
    List<Line> turned,
    List<Ruling> rulings,
    List<String> struck,
    boolean pictures,
    String fault) {

  /** A stamp or a page number on a scan is no text layer. */
  private static final int LETTERS_OF_A_STAMP = 20;

  boolean isScanned() {
    int letters = 0;
    for (Line line : lines) letters += line.text().length();
    for (String words : struck) letters += words.length();
    return pictures && letters < LETTERS_OF_A_STAMP;
  }
}
