package clearbed.report;

/** Small turns of phrase. */
final class Words {
  private Words() {}

  static String count(int number, String one) {
    return count(number, one, one + "s");
  }

  static String count(int number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
  }

  /** Lines that a text takes in a width of characters, at least 1. */
  static int lines(String text, int width) {
    int usable = Math.max(1, width * 95 / 100);
    return text.lines().mapToInt(line -> Math.max(1, (line.length() + usable - 1) / usable)).sum()
        + (text.isEmpty() ? 1 : 0);
  }
}
