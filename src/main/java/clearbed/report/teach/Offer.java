package clearbed.report.teach;

import clearbed.base.DisplayText;
import java.util.List;

/**
 * A line that would teach what was not understood.
 *
 * @param section of {@code words} that it belongs to; {@link #NONE} where no word would teach it
 * @param words that are taught
 * @param guess what they may stand for; empty in a list
 * @param place where they stand first
 * @param samples of what stands below a heading; else empty
 * @param why on what evidence the guess is made
 */
record Offer(
    String section, String words, String guess, String place, List<String> samples, String why) {
  static final String COLUMNS = "columns";
  static final String TERMS = "terms";
  static final String GLASS = "glass";
  static final String TAGS = "tags";
  static final String NONE = "";

  /** To be replaced by hand before the line is confirmed. */
  static final String UNKNOWN = "?";

  private static final int LONGEST = 60;

  Offer {
    samples = List.copyOf(samples);
  }

  /** Place, samples and evidence in one line. */
  String remark() {
    StringBuilder out = new StringBuilder(DisplayText.of(place));
    if (!samples.isEmpty()) out.append(": ").append(String.join(", ", quoted()));
    if (!why.isEmpty()) out.append("; ").append(DisplayText.of(why));
    return out.toString();
  }

  private List<String> quoted() {
    return samples.stream()
        .map(s -> '"' + DisplayText.of(DisplayText.shortened(s, LONGEST)) + '"')
        .toList();
  }
}
