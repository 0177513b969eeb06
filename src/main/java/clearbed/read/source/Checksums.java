package clearbed.read.source;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.Locale;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * The checksums that a zip file keeps of its parts (CRC-32, PKWARE's APPNOTE 4.4.7). The libraries
 * that open office files do not look at them: a changed byte would be read as what the document
 * says.
 */
public final class Checksums {
  /** Parts that expand further than any text are left to the limits of the readers. */
  private static final long MOST_BYTES = 1L << 30;

  private static final int RATIO = 200;

  private Checksums() {}

  /**
   * Holds the parts of an office file that hold words against their checksums.
   *
   * @throws Unreadable names the first part that is damaged
   */
  public static void require(Path file) throws IOException, Unreadable {
    try (ZipFile zip = new ZipFile(file.toFile())) {
      Enumeration<? extends ZipEntry> parts = zip.entries();
      while (parts.hasMoreElements()) {
        ZipEntry part = parts.nextElement();
        if (holdsWords(part) && isDamaged(zip, part))
          throw new Unreadable(
              "its part " + part.getName() + " is damaged (checksum); open and save it again");
      }
    }
  }

  /** Whether a part's bytes are not those that were packed; a part without a checksum is not. */
  static boolean isDamaged(ZipEntry part, CRC32 sum) {
    return part.getCrc() >= 0 && part.getCrc() != sum.getValue();
  }

  private static boolean holdsWords(ZipEntry part) {
    String name = part.getName().toLowerCase(Locale.ROOT);
    return name.endsWith(".xml") || name.endsWith(".rels") || name.equals("mimetype");
  }

  private static boolean isDamaged(ZipFile zip, ZipEntry part) throws IOException {
    long most = Math.min(MOST_BYTES, RATIO * Math.max(part.getCompressedSize(), 1L << 16));
    CRC32 sum = new CRC32();
    byte[] buffer = new byte[1 << 16];
    try (InputStream in = zip.getInputStream(part)) {
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        sum.update(buffer, 0, n);
        most -= n;
        if (most < 0) return false;
      }
    }
    return isDamaged(part, sum);
  }
}
