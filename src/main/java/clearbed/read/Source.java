package clearbed.read;

import java.nio.file.Path;
import java.util.Locale;

/**
 * A file to read.
 *
 * @param path name under which the document is reported
 * @param file where the bytes lie; a temporary file for an entry of an archive
 * @param named true when the user named this very file, rather than a folder that holds it
 * @param temporary true when the file is to be deleted once read
 */
record Source(String path, Path file, boolean named, boolean temporary) {

  String name() {
    return path.substring(path.lastIndexOf('/') + 1);
  }

  /** In lower case, without the dot; empty when there is none. */
  String extension() {
    return extensionOf(name());
  }

  static String extensionOf(String name) {
    int dot = name.lastIndexOf('.');
    return dot <= 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
  }
}
