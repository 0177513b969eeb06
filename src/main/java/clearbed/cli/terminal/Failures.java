package clearbed.cli.terminal;

import clearbed.base.DisplayText;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.util.stream.Collectors;

/** Turns exceptions into one line for people. */
public final class Failures {
  private Failures() {}

  public static String oneLine(Throwable e) {
    if (e instanceof AccessDeniedException a) return a.getFile() + ": access denied";
    if (e instanceof NoSuchFileException n) return n.getFile() + ": no such file or folder";
    if (e instanceof OutOfMemoryError)
      return "out of memory; give Java more, for example CLEARBED_JAVA_OPTS=-Xmx2g";
    if (e instanceof StackOverflowError)
      return "a rule or document nested too deeply; give Java more, for example CLEARBED_JAVA_OPTS=-Xss8m";
    String message = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    return message.strip().lines().map(DisplayText::of).collect(Collectors.joining("\n"));
  }
}
