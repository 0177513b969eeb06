package clearbed.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Finds the file that a document's path stands for. */
record Sources(List<Path> arguments) {

  /** The file on disk, or null for what lies in an archive or is gone. */
  Path of(String document) {
    if (document.isEmpty() || document.contains("!/")) return null;
    for (Path argument : arguments) {
      Path root = argument.toAbsolutePath().normalize();
      boolean itself = Files.isRegularFile(root) && root.getFileName().toString().equals(document);
      if (itself) return root;
      Path inside = root.resolve(document);
      if (Files.isRegularFile(inside)) return inside;
      // Where two arguments hold the same path, the reader puts the argument's own name before it.
      Path beside = root.getParent() == null ? root : root.getParent().resolve(document);
      if (Files.isRegularFile(beside) && beside.startsWith(root)) return beside;
    }
    return null;
  }

  /**
   * The path to a document from the folder of a file that is written, {@code /} as separator; null
   * where none leads there.
   */
  String from(Path written, String document) {
    Path source = of(document);
    Path folder = written.toAbsolutePath().normalize().getParent();
    if (source == null || folder == null) return null;
    try {
      return folder.relativize(source).toString().replace('\\', '/');
    } catch (IllegalArgumentException otherDrive) {
      return null;
    }
  }
}
