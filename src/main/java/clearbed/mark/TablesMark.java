package clearbed.mark;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;

/**
 * The mark of tables, which can hold no word that is no row: a file of notes beside them, itself
 * marked, has the digest of each.
 */
public final class TablesMark {
  /** Name of the notes. */
  public static final String NOTES = "about-these-tables.txt";

  private static final long LONGEST_NOTES = 1 << 20;

  private TablesMark() {}

  /** The line of a table in the notes, as {@code sha256sum} would write it. */
  public static String line(String digest, String table) {
    return digest + "  " + table;
  }

  /** What the file is of ours, or null. */
  static OwnOutput of(Path file) throws IOException {
    Path notes = file.resolveSibling(NOTES);
    Path name = file.getFileName();
    if (name == null || !Files.isRegularFile(notes) || Files.size(notes) > LONGEST_NOTES)
      return null;
    OwnOutput own = ClosingLine.of(notes);
    if (own == null || own.kind() != OutputKind.TABLES) return null;
    String ending = "  " + name;
    String text = new String(Files.readAllBytes(notes), StandardCharsets.UTF_8);
    String listed = text.lines().filter(line -> line.endsWith(ending)).findFirst().orElse(null);
    if (listed == null) return null;
    boolean untouched = own.untouched() && listed.equals(line(digest(file), name.toString()));
    return new OwnOutput(OutputKind.TABLES, untouched);
  }

  private static String digest(Path file) throws IOException {
    MessageDigest digest = Sha256.begun();
    try (InputStream in = Files.newInputStream(file)) {
      byte[] part = new byte[1 << 16];
      for (int n = in.read(part); n >= 0; n = in.read(part)) digest.update(part, 0, n);
    }
    return Sha256.hex(digest);
  }
}
