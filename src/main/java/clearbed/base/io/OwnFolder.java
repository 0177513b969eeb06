package clearbed.base.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Comparator;
import java.util.stream.Stream;

/** Folders that only their owner can enter, and their removal with all that is in them. */
public final class OwnFolder {
  private OwnFolder() {}

  /**
   * Makes a folder; where the file system knows no permissions, it has those of the folder around.
   *
   * @throws IOException also when anything of that name is there
   */
  public static Path make(Path folder) throws IOException {
    boolean posix = folder.getFileSystem().supportedFileAttributeViews().contains("posix");
    FileAttribute<?> owner =
        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------"));
    return posix ? Files.createDirectory(folder, owner) : Files.createDirectory(folder);
  }

  /** The deepest first; links are removed, never followed. */
  static void remove(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) Files.deleteIfExists(file);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }
}
