package clearbed.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * Holds the end of the process when it was a parser that asked for it. A call to {@code exit} waits
 * for the hooks of the process and comes back never, while all other threads go on: so a hook that
 * waits leaves the parser's thread standing and lets the batch be finished, until the program ends
 * by {@code halt}, or something other than a parser asks for the end (Ctrl-C, a main program).
 *
 * <p>A security manager, which could refuse the call, is gone from current Java.
 */
final class ExitGuard extends Thread {
  private static final long LOOK_AGAIN_MILLIS = 100;

  private final ThreadGroup parsers;
  private final Consumer<Thread> told;

  private ExitGuard(ThreadGroup parsers, Consumer<Thread> told) {
    super("exit guard");
    this.parsers = parsers;
    this.told = told;
  }

  /**
   * @param told of each parser's thread that has asked to exit, once or more
   */
  static ExitGuard install(ThreadGroup parsers, Consumer<Thread> told) {
    ExitGuard guard = new ExitGuard(parsers, told);
    Runtime.getRuntime().addShutdownHook(guard);
    return guard;
  }

  /** Without effect when the end is being held. */
  void remove() {
    try {
      Runtime.getRuntime().removeShutdownHook(this);
    } catch (IllegalStateException e) {
      // The process is ending; the hook goes on until it is halted.
    }
  }

  @Override
  public void run() {
    List<Thread> asking = asking();
    while (!asking.isEmpty() && asking.stream().allMatch(this::isParser)) {
      asking.forEach(told);
      try {
        Thread.sleep(LOOK_AGAIN_MILLIS);
      } catch (InterruptedException e) {
        return;
      }
      asking = asking();
    }
  }

  private static List<Thread> asking() {
    List<Thread> asking = new ArrayList<>();
    for (Map.Entry<Thread, StackTraceElement[]> thread : Thread.getAllStackTraces().entrySet()) {
      for (StackTraceElement frame : thread.getValue()) {
        boolean exit = frame.getMethodName().equals("exit");
        if (exit && frame.getClassName().equals("java.lang.Shutdown")) asking.add(thread.getKey());
      }
    }
    return asking;
  }

  private boolean isParser(Thread thread) {
    ThreadGroup group = thread.getThreadGroup();
    return group != null && parsers.parentOf(group);
  }
}
