package clearbed.cli.survey;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Links from a workbook to what lies in an archive, and to nothing outside it. */
final class ArchiveLinks {
  private final Path root;
  private final Path folder;
  private final Map<String, Optional<String>> known = new HashMap<>();

  ArchiveLinks(Path archive, Path workbook) {
    root = archive.toAbsolutePath().normalize();
    folder = workbook.toAbsolutePath().normalize().getParent();
  }

  /**
   * The path from the folder of the workbook, {@code /} as separator; null where none leads there.
   *
   * @param below path of a project or a document below the archive
   */
  String to(String below) {
    int archived = below.indexOf("!/");
    String path = archived < 0 ? below : below.substring(0, archived);
    return known.computeIfAbsent(path, p -> Optional.ofNullable(found(p))).orElse(null);
  }

  private String found(String path) {
    try {
      Path file = root.resolve(path).normalize();
      // The documents of a project that is a zip file are named by it once more.
      Path parent = file.getParent();
      if (parent != null && Files.isRegularFile(parent)) file = parent;
      if (!file.startsWith(root) || !Files.exists(file)) return null;
      String link = folder.relativize(file).toString().replace('\\', '/');
      return link.isEmpty() ? "." : link;
    } catch (IllegalArgumentException otherDrive) {
      return null;
    }
  }
}
