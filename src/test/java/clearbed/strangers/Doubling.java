package clearbed.strangers;

import clearbed.Checked;
import clearbed.recognise.Recogniser;
import clearbed.recognise.TimeOfText;
import java.io.IOException;
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
    return TimeOfText.seconds(recogniser, text);
  }
}
