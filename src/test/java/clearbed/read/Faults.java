package clearbed.read;

import clearbed.model.document.Document;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.Source;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;

/**
 * Stands in for a parser that misbehaves: a text file that says {@code fault: hang} and the like
 * makes it do so. Other files are read as ever.
 */
public final class Faults {
  private Faults() {}

  public static FormatReader reader(Format format) {
    return format == Format.TXT ? source -> read(format, source) : Readers.of(format);
  }

  private static Document read(Format format, Source source) throws Exception {
    String text = Files.readString(source.file());
    if (text.startsWith("fault: ")) act(text.substring("fault: ".length()).strip());
    return Readers.of(format).read(source);
  }

  private static void act(String fault) throws InterruptedException {
    switch (fault) {
      case "hang" -> spin();
      case "sleep" -> Thread.sleep(Long.MAX_VALUE);
      case "memory" -> fill();
      case "stack" -> dive(Integer.MAX_VALUE);
      // Too deep for a thread of the batch, not for one that has a process to itself.
      case "deep" -> dive(150_000);
      case "exit" -> System.exit(7);
      case "halt" -> Runtime.getRuntime().halt(8);
      case "noise" -> {
        System.out.println("a parser prints what it likes");
        System.err.println("a parser prints what it likes");
        new IllegalStateException("noise").printStackTrace();
      }
      case "class" -> throw new NoClassDefFoundError("was not loaded at the first time");
      case "error" -> throw new AssertionError("a\nb\u001b[31m");
      default -> throw new IllegalArgumentException(fault);
    }
  }

  private static void spin() {
    long n = 0;
    while (n >= 0) n = (n + 1) & Long.MAX_VALUE;
  }

  private static void fill() {
    List<byte[]> all = new ArrayList<>();
    while (true) all.add(new byte[1 << 20]);
  }

  private static int dive(int deep) {
    return deep == 0 ? 0 : 1 + dive(deep - 1);
  }
}
