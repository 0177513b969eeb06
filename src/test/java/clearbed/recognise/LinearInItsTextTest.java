package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A clause that repeats its words takes no more time than its length asks for. */
class LinearInItsTextTest {
  private static final int LENGTH = 8_000;

  /** What twice the length may take of the time, and what the clock is not trusted with. */
  private static final double TWICE = 2.5;

  private static final double SLACK_SECONDS = 0.25;

  private static final Recogniser RECOGNISER = new Recogniser(Checked.vocabulary());

  /** Words of every kind that some way of reading looks for. */
  static Stream<String> pieces() {
    return Stream.of(
        "ASTM C920 ",
        "ANSI A118.15 or ",
        "A118.4 ",
        "A118/",
        "C2TES1, ",
        "class 25 ",
        "F-25LM ",
        "grout white ",
        "coverage ",
        "95 percent ",
        "400 psi ",
        "3 mm ",
        "1/8 in x ",
        "8 ft at exterior and ",
        "20 ft elsewhere, ",
        "except at pools, ",
        "at pools and ",
        "GT-1, ",
        "GT-1 to GT-9 ",
        "glass tile ",
        "other glass tile ",
        "not ",
        "shall not ",
        "may ",
        "unless ",
        "[white] [grey] ",
        "[",
        "TBD ",
        "____ ",
        "as approved ",
        "see Section 09 30 00 ",
        "delete epoxy and substitute ",
        "translucent ",
        "behind translucent tile ",
        "either ",
        "one of the following ",
        ": ",
        ", ",
        " ",
        "\t",
        "-",
        "1.",
        "(");
  }

  @ParameterizedTest
  @MethodSource("pieces")
  void twiceTheWordsTakeTwiceTheTime(String piece) {
    seconds(piece, LENGTH / 4);
    double once = seconds(piece, LENGTH);
    double twice = seconds(piece, 2 * LENGTH);
    assertThat(twice).isLessThan(TWICE * once + SLACK_SECONDS);
  }

  /** Of processor time. */
  private static double seconds(String piece, int length) {
    String text = "A. GT-1: cast glass tile, " + piece.repeat(length / piece.length());
    return TimeOfText.seconds(RECOGNISER, text);
  }
}
