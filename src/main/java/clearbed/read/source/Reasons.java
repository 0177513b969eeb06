package clearbed.read.source;

import clearbed.base.Deadline;
import clearbed.read.block.CleanText;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.util.Locale;

/** Words for what went wrong in a parser: one line, what it is and what to do. */
public final class Reasons {
  public static final String ENDED =
      "its reading ended the program that read it; open and save it again";
  public static final String PASSWORD = "password-protected; save a copy without a password";
  public static final String DEEP = "nested too deeply; open and save it again";
  public static final String BOMB = "expands out of all proportion; not read for safety";
  static final String MISSING = "no such file or folder";
  private static final int LONGEST = 160;

  private Reasons() {}

  /** Of a document that the run had no time for. */
  public static String overdue(Deadline deadline) {
    return "not read: the run has used its "
        + deadline.limit().toSeconds()
        + " s; give it more by --timeout, or fewer documents";
  }

  public static String of(Throwable failure, Format format) {
    for (Throwable t = failure; t != null && t != t.getCause(); t = t.getCause()) {
      String known = known(t);
      if (known != null) return known;
    }
    String what = format == null ? "file" : format.description().replaceFirst("^an? ", "");
    return "damaged or truncated " + what + detail(failure) + "; open and save it again";
  }

  /** Why the words of a document could not be made out, when it could be read. */
  public static String ofWords(Throwable failure) {
    return failure instanceof StackOverflowError
        ? "its words are nested too deeply to be made out; split it"
        : "its words could not be made out; split it, and report it";
  }

  public static String outOfMemory() {
    long mebibytes = Runtime.getRuntime().maxMemory() >> 20;
    return "too large for the memory given (" + mebibytes + " MiB); split it or give more (-Xmx)";
  }

  private static String known(Throwable t) {
    if (t instanceof Unreadable) return t.getMessage();
    if (t instanceof OutOfMemoryError) return outOfMemory();
    if (t instanceof StackOverflowError) return DEEP;
    if (t instanceof AccessDeniedException) return "no permission to read it";
    if (t instanceof NoSuchFileException) return MISSING;
    String name = t.getClass().getSimpleName();
    if (name.contains("Encrypted") || name.equals("InvalidPasswordException")) return PASSWORD;
    if (name.equals("OldExcelFormatException") || name.equals("OldWordFileFormatException")) {
      return "written by a program older than Office 97; open and save it in a current format";
    }
    String message = String.valueOf(t.getMessage()).toLowerCase(Locale.ROOT);
    if (message.contains("zip bomb")) return BOMB;
    if (message.contains("doctype")) return "declares its own entities; not read for safety";
    return null;
  }

  private static String detail(Throwable failure) {
    String message = failure.getMessage();
    if (message == null || message.isBlank()) return "";
    String line = CleanText.line(message);
    if (line.length() > LONGEST) line = line.substring(0, LONGEST) + "...";
    return " (" + line + ")";
  }
}
