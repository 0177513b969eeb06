package clearbed.report.wording;

import clearbed.model.document.Document;
import clearbed.model.report.Account;
import java.util.Locale;

/** Small turns of phrase. */
public final class Phrasing {
  private Phrasing() {}

  public static String of(Document.Status status) {
    return status.name().toLowerCase(Locale.ROOT);
  }

  public static String of(Document.GapFate fate) {
    return switch (fate) {
      case UNREAD -> "not read";
      case NOT_IN_FORCE -> "not in force";
      case PASSED_OVER -> "passed over";
      case READ -> "read";
    };
  }

  public static String of(Account.Tally tally) {
    return tally.read()
        + " read, "
        + tally.context()
        + " context, "
        + tally.setAside()
        + " set aside, "
        + tally.notUnderstood()
        + " not understood";
  }

  public static String count(int number, String one) {
    return count(number, one, one + "s");
  }

  public static String count(int number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
  }

  /** Lines that a text takes in a width of characters, at least 1. */
  public static int lines(String text, int width) {
    int usable = Math.max(4, width < 20 ? width - 1 : width);
    if (text.length() <= usable && text.indexOf('\n') < 0 && text.indexOf('\r') < 0) return 1;
    return Math.max(1, text.lines().mapToInt(line -> wrapped(line, usable)).sum());
  }

  /** Lines of a paragraph that breaks between words, and inside those that are too long. */
  private static int wrapped(String line, int width) {
    int lines = 1;
    int used = 0;
    for (String word : line.split(" ")) {
      int length = word.length();
      if (used > 0 && used + 1 + length > width) {
        lines++;
        used = 0;
      }
      used += (used > 0 ? 1 : 0) + length;
      lines += Math.max(0, (used - 1) / width);
      used = used > width ? used % width : used;
    }
    return lines;
  }
}
