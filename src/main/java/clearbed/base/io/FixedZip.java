package clearbed.base.io;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Collections;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;

/** Packs a zip anew with one fixed time for every entry, so that same content is same bytes. */
public final class FixedZip {
  /** The earliest time that a zip entry can carry. */
  private static final LocalDateTime EPOCH = LocalDateTime.of(1980, 1, 1, 0, 0);

  private FixedZip() {}

  /** Packs the file onto the stream, which stays open; what is compressed stays as it is. */
  public static void copy(Path zip, OutputStream out) throws IOException {
    try (ZipFile from = ZipFile.builder().setPath(zip).get()) {
      ZipArchiveOutputStream to = new ZipArchiveOutputStream(out);
      for (ZipArchiveEntry entry : Collections.list(from.getEntriesInPhysicalOrder())) {
        try (InputStream in = from.getRawInputStream(entry)) {
          to.addRawArchiveEntry(fixed(entry), in);
        }
      }
      to.finish();
    }
  }

  private static ZipArchiveEntry fixed(ZipArchiveEntry entry) {
    ZipArchiveEntry fixed = new ZipArchiveEntry(entry.getName());
    fixed.setTimeLocal(EPOCH);
    fixed.setMethod(entry.getMethod());
    fixed.setSize(entry.getSize());
    fixed.setCompressedSize(entry.getCompressedSize());
    fixed.setCrc(entry.getCrc());
    return fixed;
  }
}
