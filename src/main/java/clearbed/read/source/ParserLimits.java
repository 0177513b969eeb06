package clearbed.read.source;

import java.util.zip.ZipEntry;
import org.apache.poi.openxml4j.util.ZipSecureFile;

/**
 * Limits of the office libraries, which keep them in static fields: set here, by the constructor of
 * whoever opens a batch, and nowhere else.
 *
 * <p>The size limits of single records in the libraries are left as they are: they are chosen for
 * each record, and one common figure would lift them all.
 */
public final class ParserLimits {
  /** Schedules of many like rows reach 300 to 1; deflate itself ends near 1030 to 1. */
  private static final double MOST_INFLATION = 500;

  private static final long LARGEST_PART = 1L << 30;
  private static final int MOST_PARTS = 20_000;

  private ParserLimits() {}

  /** For archives that are opened without the office library. */
  public static boolean isBomb(ZipEntry entry) {
    long packed = Math.max(1, entry.getCompressedSize());
    long size = entry.getSize();
    return size > LARGEST_PART
        || size > ArchiveLimits.FREE_BYTES && (double) size / packed > MOST_INFLATION;
  }

  public static void apply() {
    ZipSecureFile.setMinInflateRatio(1 / MOST_INFLATION);
    ZipSecureFile.setMaxEntrySize(LARGEST_PART);
    ZipSecureFile.setMaxFileCount(MOST_PARTS);
  }
}
