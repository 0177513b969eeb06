package clearbed.corpus;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Temporary folders, taken away again. */
final class Folders {
  private Folders() {}

  static void delete(Path folder) throws IOException {
    List<Path> paths;
    try (Stream<Path> found = Files.walk(folder)) {
      paths = found.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : paths) Files.delete(path);
  }
}
