package clearbed.report.annotate;

import clearbed.mark.OwnMark;
import clearbed.mark.OwnOutput;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;

/** The folder that the copies go to: nothing is written outside it, nor over a source. */
final class CopyFolder {
  private final Path folder;
  private final boolean overwrite;
  private final Set<Path> sources = new HashSet<>();
  private final Set<Path> taken = new HashSet<>();

  /**
   * @param overwrite true when files may be replaced that are no untouched copies of ours
   */
  CopyFolder(Path folder, boolean overwrite) {
    this.folder = folder.toAbsolutePath().normalize();
    this.overwrite = overwrite;
  }

  /** Guards a source file from being written over. */
  void guard(Path source) {
    sources.add(real(source));
  }

  /**
   * The file for a copy, its folders made.
   *
   * @param relative path with {@code /} as separator
   * @throws IOException with one line that says why nothing may be written there
   */
  Path file(String relative) throws IOException {
    Path target = folder;
    String[] names = relative.split("/", -1);
    Files.createDirectories(folder);
    for (int i = 0; i < names.length; i++) {
      target = target.resolve(name(relative, names[i]));
      if (Files.isSymbolicLink(target)) {
        throw new IOException(target + " is a link; take it away or name another folder");
      }
      if (i < names.length - 1) makeFolder(target);
    }
    if (sources.contains(real(target))) {
      throw new IOException(
          target + " is a source document; name a folder that holds none of the documents");
    }
    if (!overwrite && Files.exists(target) && !isUntouched(target)) {
      throw new IOException(
          target + " is no copy of ours or was changed since; name another folder");
    }
    if (!taken.add(real(target))) {
      throw new IOException(target + " is the copy of another document already");
    }
    return target;
  }

  private static boolean isUntouched(Path target) throws IOException {
    OwnOutput own = Files.isRegularFile(target) ? OwnMark.of(target) : null;
    return own != null && own.untouched();
  }

  private static Path name(String relative, String name) throws IOException {
    try {
      Path path = Path.of(name);
      boolean plain =
          !name.isBlank()
              && !name.equals(".")
              && !name.equals("..")
              && !name.contains("\\")
              && !path.isAbsolute()
              && path.getNameCount() == 1;
      if (plain) return path;
    } catch (InvalidPathException e) {
      // Refused like any other name that is none.
    }
    throw new IOException("the path " + relative + " leads out of the folder; no copy was made");
  }

  private static void makeFolder(Path folder) throws IOException {
    if (Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) return;
    if (Files.exists(folder)) throw new IOException(folder + " is a file; name another folder");
    Files.createDirectory(folder);
  }

  private static Path real(Path path) {
    try {
      return path.toRealPath();
    } catch (IOException e) {
      return path.toAbsolutePath().normalize();
    }
  }
}
