package clearbed.cli.output;

import clearbed.read.InputFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The files that a batch will find, looked for only when an output might be one of them. */
final class InputPaths {
  private final List<Path> paths;
  private List<InputFile> all;
  private Map<Object, InputFile> byKey;

  InputPaths(List<Path> paths) {
    this.paths = List.copyOf(paths);
  }

  List<InputFile> all() {
    if (all == null) all = InputFile.under(paths);
    return all;
  }

  /** The input that is this very file, by whatever name, or null. */
  InputFile at(Path file) {
    Object key = key(file);
    return key == null ? slowly(file) : byKey().get(key);
  }

  /** Some systems have no keys. */
  private InputFile slowly(Path file) {
    return all().stream().filter(each -> RealPath.same(each.file(), file)).findFirst().orElse(null);
  }

  private Map<Object, InputFile> byKey() {
    if (byKey != null) return byKey;
    byKey = new HashMap<>();
    for (InputFile each : all()) {
      Object key = key(each.file());
      if (key == null) continue;
      byKey.merge(key, each, (one, other) -> one.named() ? one : other);
    }
    return byKey;
  }

  private static Object key(Path file) {
    try {
      return Files.readAttributes(file, BasicFileAttributes.class).fileKey();
    } catch (IOException unreadable) {
      return null;
    }
  }

  /** A document that lies in the folder or below it, or null. */
  InputFile documentIn(Path realFolder) {
    for (InputFile each : all()) {
      if (RealPath.of(each.file()).startsWith(realFolder) && each.isDocument()) return each;
    }
    return null;
  }
}
