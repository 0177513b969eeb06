package clearbed.read.detect;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * How a delimited text sets its values apart.
 *
 * @param columns the commonest number of values in a line
 * @param agreement share of the filled lines that have that number
 * @param lines filled lines looked at
 */
public record Dialect(char delimiter, int columns, double agreement, int lines) {
  private static final char[] DELIMITERS = {',', ';', '\t', '|'};
  private static final int LINES = 60;

  /** The likeliest dialect of a text that is known to be delimited. */
  public static Dialect detect(String start) {
    if (start.regionMatches(true, 0, "sep=", 0, 4) && start.length() > 4) {
      return new Dialect(start.charAt(4), 2, 1, 2);
    }
    Dialect best = new Dialect(',', 1, 0, 0);
    for (char delimiter : DELIMITERS) {
      Dialect dialect = measure(start, delimiter);
      if (dialect.score() > best.score()) best = dialect;
    }
    return best;
  }

  /** Plain enough to be taken for delimited when the file's name does not say so. */
  public boolean isSure() {
    // Prose has commas too, though seldom the same number in line after line.
    int least = delimiter == ',' || delimiter == ';' ? 3 : 2;
    return lines >= 2 && columns >= least && agreement >= 0.9;
  }

  public static CSVFormat format(char delimiter, boolean quoted) {
    return CSVFormat.Builder.create()
        .setDelimiter(delimiter)
        .setQuote(quoted ? '"' : null)
        .setIgnoreEmptyLines(false)
        .setTrailingData(true)
        .get();
  }

  private double score() {
    return columns < 2 ? 0 : agreement * (1 + Math.log(columns));
  }

  private static Dialect measure(String start, char delimiter) {
    Map<Integer, Integer> counts = new HashMap<>();
    int lines = 0;
    // Cut at the last whole line, lest half a line counts.
    int end = start.lastIndexOf('\n');
    String whole = end > 0 && start.length() > 1 << 14 ? start.substring(0, end) : start;
    try (CSVParser parser = CSVParser.parse(whole, format(delimiter, true))) {
      for (CSVRecord record : parser) {
        if (isBlank(record)) continue;
        counts.merge(record.size(), 1, Integer::sum);
        if (++lines >= LINES) break;
      }
    } catch (IOException | UncheckedIOException | IllegalStateException e) {
      // Stray quotes: what was read up to here must do.
    }
    if (lines == 0) return new Dialect(delimiter, 1, 0, 0);
    Map.Entry<Integer, Integer> commonest = commonest(counts);
    return new Dialect(delimiter, commonest.getKey(), commonest.getValue() / (double) lines, lines);
  }

  private static Map.Entry<Integer, Integer> commonest(Map<Integer, Integer> counts) {
    return List.copyOf(counts.entrySet()).stream()
        .max(
            Map.Entry.<Integer, Integer>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey()))
        .orElseThrow();
  }

  private static boolean isBlank(CSVRecord record) {
    for (String value : record) if (!value.isBlank()) return false;
    return true;
  }
}
