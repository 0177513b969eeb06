package clearbed.cli;

import clearbed.base.DisplayText;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Says what was and was not written when somebody stops the run with Ctrl-C. Every file is written
 * whole or not at all, so that nothing is left half done.
 */
final class Stopped implements AutoCloseable {
  private final PrintWriter err;
  private final Set<Path> open = new LinkedHashSet<>();
  private final List<Path> written = new ArrayList<>();
  private final Thread hook = new Thread(this::say, "stopped");

  Stopped(PrintWriter err, Path... outputs) {
    this.err = err;
    for (Path each : outputs) if (each != null) open.add(each);
    Runtime.getRuntime().addShutdownHook(hook);
  }

  /** An output is there. */
  synchronized void written(Path output) {
    if (open.remove(output)) written.add(output);
  }

  private void say() {
    err.println("clearbed: " + words());
    err.flush();
  }

  /** One line. */
  synchronized String words() {
    if (written.isEmpty()) return "stopped; nothing was written: " + list(open) + " as before";
    String rest = open.isEmpty() ? "" : "; not written: " + list(open);
    return "stopped; written: " + list(written) + rest;
  }

  private static String list(Iterable<Path> paths) {
    List<String> names = new ArrayList<>();
    for (Path each : paths) names.add(DisplayText.path(each.toString()));
    return String.join(", ", names);
  }

  /** The run has come to its end. */
  @Override
  public void close() {
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException stopping) {
      // It is being stopped, and the hook says so.
    }
  }
}
