package clearbed.cli.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Set;

/** Where paths lead, whatever links and spellings they take. */
public final class RealPath {
  private static final Set<PosixFilePermission> WRITE =
      Set.of(
          PosixFilePermission.OWNER_WRITE,
          PosixFilePermission.GROUP_WRITE,
          PosixFilePermission.OTHERS_WRITE);

  private RealPath() {}

  /** The real path of what is there, with the rest of the path behind it. */
  public static Path of(Path path) {
    Path absolute = path.toAbsolutePath().normalize();
    for (Path there = absolute; there != null; there = there.getParent()) {
      try {
        return there.toRealPath().resolve(there.relativize(absolute)).normalize();
      } catch (IOException notThere) {
        // Its parent may be.
      }
    }
    return absolute;
  }

  /**
   * True for one file under two names; of files that are not there yet, capitals do not count, as
   * on some systems they do not.
   */
  static boolean same(Path one, Path other) {
    try {
      if (Files.exists(one) && Files.exists(other)) return Files.isSameFile(one, other);
    } catch (IOException unreadable) {
      // Then the names must tell.
    }
    return of(one).toString().equalsIgnoreCase(of(other).toString());
  }

  /** True when nobody may write to the file, or this user may not. */
  static boolean isProtected(Path file) {
    if (!Files.isWritable(file)) return true;
    try {
      return Files.getPosixFilePermissions(file).stream().noneMatch(WRITE::contains);
    } catch (IOException | UnsupportedOperationException otherSystem) {
      return false;
    }
  }
}
