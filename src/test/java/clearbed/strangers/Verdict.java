package clearbed.strangers;

/**
 * What came of an attempt.
 *
 * @param millis from the command to its end, by the clock or of processor time, the lesser
 * @param detail what was said; for {@link End#FAILED} what is wrong with it
 */
record Verdict(End end, long millis, String detail) {
  enum End {
    /** Read as what it is. */
    HANDLED,
    /** Named with its reason, in whole or in part. */
    NAMED,
    /** Named with a limit that it went beyond. */
    LIMIT,
    /** Without an answer, or with a wrong one. */
    FAILED
  }

  String line() {
    return end + "\t" + millis + "\t" + detail.replaceAll("\\s+", " ");
  }

  static Verdict of(String line) {
    String[] parts = line.split("\t", 3);
    return new Verdict(End.valueOf(parts[0]), Long.parseLong(parts[1]), parts[2]);
  }
}
