package clearbed.base.config;

import java.io.IOException;

/**
 * A configuration file that cannot be used. The message names file, line and reason, one line for
 * each fault.
 */
public final class ConfigException extends IOException {
  private static final long serialVersionUID = 1L;

  private static final int LONGEST_REASON = 300;

  public ConfigException(String message) {
    super(message);
  }

  /**
   * @param line from 1; 0 when the file as a whole is meant
   */
  static ConfigException at(String file, int line, String reason) {
    return new ConfigException(fault(file, line, reason));
  }

  static String fault(String file, int line, String reason) {
    String where = escaped(file) + (line > 0 ? ":" + line : "");
    return where + ": " + bounded(escaped(reason));
  }

  private static String bounded(String reason) {
    if (reason.length() <= LONGEST_REASON) return reason;
    int end = LONGEST_REASON - 1;
    return reason.substring(0, Character.isHighSurrogate(reason.charAt(end - 1)) ? end - 1 : end)
        + "\u2026";
  }

  /** What a terminal would obey, or what turns the reading direction, as Java escapes. */
  private static String escaped(String text) {
    StringBuilder out = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      int type = Character.getType(c);
      boolean unseen =
          type == Character.CONTROL
              || type == Character.FORMAT
              || type == Character.LINE_SEPARATOR
              || type == Character.PARAGRAPH_SEPARATOR;
      if (unseen) out.append("\\u%04x".formatted((int) c));
      else out.append(c);
    }
    return out.toString();
  }
}
