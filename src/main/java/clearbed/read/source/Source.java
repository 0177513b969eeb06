package clearbed.read.source;

import clearbed.model.document.Document;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Something to read that was found under the arguments.
 *
 * @param path name under which the document is reported
 * @param file where the bytes lie; a temporary file for an entry of an archive, null for one that
 *     could not be unpacked
 * @param named true when the user named this very file, rather than a folder that holds it
 * @param temporary true when the file is to be deleted once read
 * @param known what is to be reported of it where that is known without opening it, or null
 */
public record Source(String path, Path file, boolean named, boolean temporary, Document known) {

  /** A file to open. */
  public Source(String path, Path file, boolean named, boolean temporary) {
    this(path, file, named, temporary, null);
  }

  /** Something that need not be opened. */
  public static Source of(Document known) {
    return new Source(known.path(), null, false, false, known);
  }

  public String name() {
    return path.substring(path.lastIndexOf('/') + 1);
  }

  /** In lower case, without the dot; empty when there is none. */
  public String extension() {
    return extensionOf(name());
  }

  /** Of the name of a file, in lower case, without the dot; empty when there is none. */
  public static String extensionOf(String name) {
    int dot = name.lastIndexOf('.');
    return dot <= 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
  }

  /** Lets the file go, when it is a temporary one; for when nobody reads it any more. */
  public void discard() {
    if (!temporary) return;
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      // An abandoned thread may still hold it; the folder is cleared at the end of the run.
    }
  }
}
