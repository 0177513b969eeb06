package clearbed.read.guard;

import clearbed.read.source.ReadingLimits;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Starts a process of the same Java, with the same classes and the same memory as this one.
 *
 * @param mainClass that runs {@link Worker}
 */
public record WorkerCommand(String mainClass) {
  /** What is handed on; above all, nothing that writes files or opens ports. */
  private static final List<String> HANDED_ON =
      List.of(
          "-Xmx",
          "-Xshare",
          "-XX:SharedArchiveFile=",
          "-XX:MaxRAM",
          "-XX:+Use",
          "-XX:TieredStopAtLevel=",
          "-Dfile.encoding=",
          "-Duser.");

  private static Path java() {
    boolean windows = System.getProperty("os.name").startsWith("Windows");
    return Path.of(System.getProperty("java.home"), "bin", windows ? "java.exe" : "java");
  }

  /**
   * Of this process; or, where another program has loaded this one beside its own classes, our jar,
   * which names the libraries.
   */
  private static String classPath() {
    if (WorkerCommand.class.getClassLoader() == ClassLoader.getSystemClassLoader())
      return System.getProperty("java.class.path", "");
    try {
      return Path.of(
              WorkerCommand.class.getProtectionDomain().getCodeSource().getLocation().toURI())
          .toString();
    } catch (URISyntaxException e) {
      return "";
    }
  }

  /** False in an image without the {@code java} program. */
  boolean isThere() {
    return Files.isExecutable(java()) && !classPath().isEmpty();
  }

  /**
   * @param folder for whatever the process writes
   */
  Process start(int jobs, ReadingLimits limits, Path folder) throws IOException {
    List<String> words = new ArrayList<>();
    words.add(java().toString());
    words.addAll(handedOn());
    words.add("-XX:-UsePerfData");
    words.add("-XX:-CreateCoredumpOnCrash");
    words.add("-Djava.awt.headless=true");
    words.add("-Djava.io.tmpdir=" + folder);
    words.add("-cp");
    words.add(classPath());
    words.add(mainClass);
    words.add(Integer.toString(jobs));
    words.add(Long.toString(limits.timeout().toMillis()));
    words.add(Long.toString(limits.stackBytes()));
    return new ProcessBuilder(words)
        .directory(folder.toFile())
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  private static List<String> handedOn() {
    List<String> words = new ArrayList<>();
    for (String word : ManagementFactory.getRuntimeMXBean().getInputArguments()) {
      if (HANDED_ON.stream().anyMatch(word::startsWith)) words.add(word);
    }
    if (words.stream().noneMatch(w -> w.startsWith("-Xmx"))) {
      words.add("-Xmx" + (Runtime.getRuntime().maxMemory() >> 20) + "m");
    }
    return words;
  }
}
