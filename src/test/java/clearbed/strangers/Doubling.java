package clearbed.strangers;

import clearbed.Checked;
import clearbed.model.Block;
import clearbed.model.Document;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import clearbed.recognise.Recogniser;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;

/**
 * How much longer recognition takes over a clause that says one of our words twice as often. Takes
 * how many words, phrases and figures to try.
 */
public final class Doubling {
  /** What twice the length may take of the time. */
  static final double TWICE = 2.5;

  /** What the clock is not trusted with. */
  private static final double SLACK_SECONDS = 0.25;

  private static final int LENGTH = 8_000;
  private static final long SEED = 2026;

  private final Recogniser recogniser = new Recogniser(Checked.vocabulary());

  public static void main(String[] words) throws IOException {
    Doubling doubling = new Doubling();
    int above = 0;
    double worst = 0;
    for (String piece : pieces(Integer.parseInt(words[0]))) {
      double times = doubling.times(piece);
      worst = Math.max(worst, times);
      if (times <= TWICE) continue;
      above++;
      System.out.printf("%.2f  \"%s\"%n", times, piece);
    }
    System.out.printf("%s pieces, %d above %.1f, worst %.2f%n", words[0], above, TWICE, worst);
  }

  static List<String> pieces(int count) throws IOException {
    return OwnWords.pieces(count, SEED);
  }

  double times(String piece) {
    seconds(piece, LENGTH / 4);
    double once = seconds(piece, LENGTH);
    double twice = seconds(piece, 2 * LENGTH);
    return Math.max(0, twice - SLACK_SECONDS) / Math.max(0.01, once);
  }

  /** Of processor time. */
  private double seconds(String piece, int length) {
    String text = "A. GT-1: cast glass tile, " + piece.repeat(1 + length / piece.length());
    List<Block> blocks = new ArrayList<>();
    for (String line : List.of("SECTION 09 30 00 GLASS TILING", "2.1 GLASS TILE", text))
      blocks.add(
          Paragraph.body(
              new Origin("a.docx", null, null, null, blocks.size() + 1, null, line), line));
    Document document = Document.read("a.docx", "docx", blocks, List.of());
    long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    if (recogniser.facts(document).sections().isEmpty()) throw new IllegalStateException(piece);
    return (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before) / 1e9;
  }
}
