package clearbed.cli.terminal;

/** What the terminal at the other end can show. */
public final class Terminal {
  private static final int WIDTH = 100;
  private static final int HEIGHT = 40;

  private Terminal() {}

  static boolean interactive() {
    return System.console() != null;
  }

  /** auto: colour on a terminal, unless NO_COLOR says otherwise. */
  public static boolean colour(String when) {
    return switch (when) {
      case "always" -> true;
      case "never" -> false;
      default -> interactive() && System.getenv("NO_COLOR") == null;
    };
  }

  public static int width() {
    return number("COLUMNS", WIDTH);
  }

  /** Piped output is not cut to a screen. */
  public static int height() {
    return interactive() ? number("LINES", HEIGHT) : Integer.MAX_VALUE;
  }

  private static int number(String variable, int otherwise) {
    String value = System.getenv(variable);
    return value != null && value.matches("\\d{2,4}") ? Integer.parseInt(value) : otherwise;
  }
}
