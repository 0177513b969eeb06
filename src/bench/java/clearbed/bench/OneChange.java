package clearbed.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** What happens to one file of a batch between two runs. */
enum OneChange {
  NOTHING("nothing has changed", "MINUTES", ".txt"),
  DATE("nothing has changed but the date", "MINUTES", ".txt"),
  LETTER("a letter has one more line", "MINUTES", ".txt"),
  SECTION("a section has one more clause, of which no finding comes", "JOINT SEALANTS", ".txt"),
  SCHEDULE("a schedule has one more glass tile, with findings", "\nGT-", ".csv");

  private final String words;
  private final String holding;
  private final String extension;

  OneChange(String words, String holding, String extension) {
    this.words = words;
    this.holding = holding;
    this.extension = extension;
  }

  String words() {
    return words;
  }

  /** A file that is changed anew in each round, until it is closed and is as it was. */
  final class Made implements AutoCloseable {
    private final Path file;
    private final String text;

    private Made(Path file) throws IOException {
      this.file = file;
      this.text = Files.readString(file);
    }

    /** Gives what is to be added to the command. */
    List<String> round(int number) throws IOException {
      if (OneChange.this == DATE) return List.of("--date", "2026-01-" + (10 + number));
      if (OneChange.this != NOTHING) Files.writeString(file, changed(number));
      return List.of();
    }

    private String changed(int number) {
      if (OneChange.this != SCHEDULE) return text + "\nOne more line, the " + number + "th.\n";
      int row = text.indexOf(holding) + 1;
      int end = text.indexOf('\n', row) + 1;
      String tile = text.substring(row, end).replaceFirst("GT-\\d+", "GT-" + (900 + number));
      return text.substring(0, end) + tile + text.substring(end);
    }

    @Override
    public void close() throws IOException {
      Files.writeString(file, text);
    }
  }

  Made in(Path folder) throws IOException {
    List<Path> files = BareOpen.files(folder);
    for (Path file : files) {
      boolean fits = file.toString().endsWith(extension);
      if (fits && Files.readString(file).contains(holding)) return new Made(file);
    }
    throw new IOException(folder + ": holds no file for the case that " + words);
  }

  /** Removes all that a folder holds. */
  static void empty(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : all.sorted((a, b) -> b.compareTo(a)).toList()) {
        if (!each.equals(folder)) Files.delete(each);
      }
    }
  }
}
