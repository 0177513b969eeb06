package clearbed.cli.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;

/**
 * A file at one moment, to tell whether it was touched since.
 *
 * @param size -1 when there is none
 * @param key null where the system has none
 */
record FileState(long size, FileTime changed, Object key) {

  static FileState of(Path file) {
    try {
      BasicFileAttributes found = Files.readAttributes(file, BasicFileAttributes.class);
      return new FileState(found.size(), found.lastModifiedTime(), found.fileKey());
    } catch (IOException notThere) {
      return new FileState(-1, null, null);
    }
  }

  boolean isThere() {
    return changed != null;
  }
}
