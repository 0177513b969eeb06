package clearbed.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One run of a process and of those that it starts.
 *
 * @param seconds on the clock
 * @param processor seconds of processor time, or 0 where the system does not tell
 * @param megabytes the most that all of them together held in memory, or 0 likewise
 */
record Measured(double seconds, double processor, long megabytes) {
  private static final Pattern HIGH_WATER = Pattern.compile("VmHWM:\\s+(\\d+) kB");

  /** Kernel ticks in a second, on every Linux of note. */
  private static final double TICKS = 100;

  static Measured run(List<String> command, Path log) throws IOException, InterruptedException {
    long start = System.nanoTime();
    Process process =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile()).start();
    long most = 0;
    double processor = 0;
    while (!process.waitFor(20, TimeUnit.MILLISECONDS)) {
      List<ProcessHandle> children = process.descendants().toList();
      long now = highWater(process.pid());
      double used = processor(process.pid());
      for (ProcessHandle child : children) {
        now += highWater(child.pid());
        used += processor(child.pid());
      }
      most = Math.max(most, now);
      processor = Math.max(processor, used);
    }
    double seconds = (System.nanoTime() - start) / 1e9;
    if (process.exitValue() > 1 && process.exitValue() != 3) {
      throw new IOException(command + " ended with " + process.exitValue() + ", see " + log);
    }
    return new Measured(seconds, processor, most >> 10);
  }

  private static long highWater(long pid) {
    Matcher m = HIGH_WATER.matcher(text(pid, "status"));
    return m.find() ? Long.parseLong(m.group(1)) : 0;
  }

  private static double processor(long pid) {
    String stat = text(pid, "stat");
    String[] words = stat.substring(stat.lastIndexOf(')') + 1).trim().split(" ");
    if (words.length < 15) return 0;
    // Fields 14 to 17 of proc(5): its own time, and that of children that have ended.
    long ticks = 0;
    for (int i = 11; i <= 14; i++) ticks += Long.parseLong(words[i]);
    return ticks / TICKS;
  }

  private static String text(long pid, String name) {
    try {
      return Files.readString(Path.of("/proc", String.valueOf(pid), name));
    } catch (IOException e) {
      return "";
    }
  }
}
