package clearbed.cli.output;

import clearbed.base.DisplayText;
import clearbed.report.wording.Phrasing;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Says what was and was not written when somebody stops the run with Ctrl-C. Every file is written
 * whole or not at all, so that nothing is left half done. It looks at the files themselves: one may
 * have come to its place the moment before.
 */
public final class Stopped implements AutoCloseable {
  private final PrintWriter err;
  private final FileTime start;

  /** What stood at the place of each output when the run began. */
  private final Map<Path, FileState> before = new LinkedHashMap<>();

  private final Set<Path> whole = new LinkedHashSet<>();
  private final Thread hook = new Thread(this::say, "stopped");

  public Stopped(PrintWriter err, Path... outputs) {
    this(err, Instant.now(), outputs);
  }

  /**
   * @param start files of an output folder that are younger were written by this run
   */
  Stopped(PrintWriter err, Instant start, Path... outputs) {
    this.err = err;
    this.start = FileTime.from(start);
    for (Path each : outputs) if (each != null) before.put(each, FileState.of(each));
    Runtime.getRuntime().addShutdownHook(hook);
  }

  /** An output is there, with all that belongs to it. */
  public synchronized void written(Path output) {
    whole.add(output);
  }

  private void say() {
    err.println("clearbed: " + words());
    err.flush();
  }

  /** One line. */
  synchronized String words() {
    List<String> written = new ArrayList<>();
    List<String> partly = new ArrayList<>();
    List<String> not = new ArrayList<>();
    before.forEach(
        (output, seen) -> {
          String name = DisplayText.path(output.toString());
          boolean folder = Files.isDirectory(output);
          int files = folder && !whole.contains(output) ? files(output) : 0;
          if (whole.contains(output)) written.add(name);
          else if (files > 0) partly.add(name + " (" + Phrasing.count(files, "file") + ")");
          else if (!folder && isNew(output, seen)) written.add(name);
          else not.add(name);
        });
    if (written.isEmpty() && partly.isEmpty())
      return "stopped; nothing was written: " + String.join(", ", not) + " as before";
    return "stopped"
        + list("written", written)
        + list("in part", partly)
        + list("not written", not);
  }

  private static String list(String what, List<String> names) {
    return names.isEmpty() ? "" : "; " + what + ": " + String.join(", ", names);
  }

  private static boolean isNew(Path output, FileState before) {
    FileState now = FileState.of(output);
    return now.isThere() && !now.equals(before);
  }

  /** Files of a folder that this run put there, each of them whole. */
  private int files(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      return (int) files.filter(Files::isRegularFile).filter(this::isOfThisRun).count();
    } catch (IOException | UncheckedIOException gone) {
      return 0;
    }
  }

  private boolean isOfThisRun(Path file) {
    FileState now = FileState.of(file);
    // What was still being written when the run was stopped is hidden.
    boolean half = file.getFileName().toString().startsWith(".");
    return now.isThere() && !half && now.changed().compareTo(start) >= 0;
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
