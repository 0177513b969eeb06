package clearbed.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** Runs two commands in alternation, and compares their medians. */
final class Duel {
  private final List<Measured> ours = new ArrayList<>();
  private final List<Measured> theirs = new ArrayList<>();

  /** Makes ready for a round, and gives its command. */
  interface Round {
    List<String> command(int number) throws IOException;
  }

  static Duel of(List<String> ours, List<String> theirs, int repeats, Path log)
      throws IOException, InterruptedException {
    return of(round -> ours, theirs, repeats, log);
  }

  static Duel of(Round ours, List<String> theirs, int repeats, Path log)
      throws IOException, InterruptedException {
    Duel duel = new Duel();
    for (int i = 0; i < repeats; i++) {
      // Neither always follows the other, in case the first warms the disk for the second.
      boolean first = i % 2 == 0;
      List<String> own = ours.command(i);
      if (first) duel.ours.add(Measured.run(own, log));
      duel.theirs.add(Measured.run(theirs, log));
      if (!first) duel.ours.add(Measured.run(own, log));
    }
    return duel;
  }

  double seconds() {
    return median(ours, Measured::seconds);
  }

  double clockRatio() {
    return median(ours, Measured::seconds) / median(theirs, Measured::seconds);
  }

  double processorRatio() {
    return median(ours, Measured::processor) / median(theirs, Measured::processor);
  }

  long megabytes() {
    return Math.round(median(ours, Measured::megabytes));
  }

  /** Cells of a table: seconds of both, the two ratios, the memory of both. */
  String cells() {
    return String.format(
        Locale.ROOT,
        "%.1f | %.1f | **%.2f** | %.2f | %d | %d",
        median(ours, Measured::seconds),
        median(theirs, Measured::seconds),
        clockRatio(),
        processorRatio(),
        megabytes(),
        Math.round(median(theirs, Measured::megabytes)));
  }

  private static double median(List<Measured> runs, ToDoubleFunction<Measured> of) {
    double[] sorted = runs.stream().mapToDouble(of).sorted().toArray();
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }
}
