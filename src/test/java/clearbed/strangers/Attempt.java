package clearbed.strangers;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * One thing that a stranger may send, and the command line that meets it.
 *
 * @param kind the line of the table that it counts for
 * @param wanted what must come of it
 * @param files lays the files out
 */
record Attempt(String kind, String name, Wanted wanted, Files files) {
  enum Wanted {
    /** Any answer that is one: read, named or refused. */
    ANSWER,
    /** The same, and it says nothing of tile, so that no finding of the neighbours may change. */
    ANSWER_ALONE,
    /** It must not pass for sound. */
    NAMED
  }

  /** Puts the files into an empty folder and gives the words of the command, without outputs. */
  interface Files {
    List<String> lay(Path good, Path folder) throws IOException;
  }

  /** A document that lies beside good ones. */
  static Attempt document(String kind, String name, Wanted wanted, Content content) {
    return new Attempt(
        kind,
        name,
        wanted,
        (good, folder) -> {
          Path strange = java.nio.file.Files.createDirectories(folder.resolve("strange"));
          java.nio.file.Files.write(strange.resolve(name), content.bytes());
          return List.of("check", good.toString(), strange.toString());
        });
  }

  /** Bytes that are made when they are wanted. */
  interface Content {
    byte[] bytes() throws IOException;
  }
}
