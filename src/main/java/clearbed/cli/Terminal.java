package clearbed.cli;

import java.util.function.Consumer;
import java.util.function.Function;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** What the terminal at the other end can show. */
final class Terminal {
  private static final int WIDTH = 100;
  private static final int HEIGHT = 40;

  private Terminal() {}

  static boolean interactive() {
    return System.console() != null;
  }

  /** auto: colour on a terminal, unless NO_COLOR says otherwise. */
  static boolean colour(String when) {
    return switch (when) {
      case "always" -> true;
      case "never" -> false;
      default -> interactive() && System.getenv("NO_COLOR") == null;
    };
  }

  static int width() {
    return number("COLUMNS", WIDTH);
  }

  /** Piped output is not cut to a screen. */
  static int height() {
    return interactive() ? number("LINES", HEIGHT) : Integer.MAX_VALUE;
  }

  private static int number(String variable, int otherwise) {
    String value = System.getenv(variable);
    return value != null && value.matches("\\d{2,4}") ? Integer.parseInt(value) : otherwise;
  }

  /** Work with a bar on a terminal that counts documents, or with none. */
  static <T> T progress(boolean wanted, Function<Consumer<String>, T> work) {
    if (!wanted || !interactive()) return work.apply(path -> {});
    try (ProgressBar bar =
        new ProgressBarBuilder()
            .setTaskName("Reading")
            .setStyle(ProgressBarStyle.ASCII)
            .setInitialMax(-1)
            .setUnit(" documents", 1)
            .clearDisplayOnFinish()
            .build()) {
      return work.apply(path -> bar.step());
    }
  }
}
