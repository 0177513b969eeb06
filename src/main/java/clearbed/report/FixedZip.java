package clearbed.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Enumeration;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/** Packs a zip anew with one fixed time for every entry, so that same content is same bytes. */
public final class FixedZip {
  /** The earliest time that a zip entry can carry. */
  private static final LocalDateTime EPOCH = LocalDateTime.of(1980, 1, 1, 0, 0);

  private FixedZip() {}

  /** Packs the file onto the stream, which stays open. */
  public static void copy(Path zip, OutputStream out) throws IOException {
    try (ZipFile from = new ZipFile(zip.toFile())) {
      ZipOutputStream to = new ZipOutputStream(out);
      Enumeration<? extends ZipEntry> entries = from.entries();
      while (entries.hasMoreElements()) {
        ZipEntry entry = entries.nextElement();
        ZipEntry fixed = new ZipEntry(entry.getName());
        fixed.setTimeLocal(EPOCH);
        to.putNextEntry(fixed);
        try (InputStream in = from.getInputStream(entry)) {
          in.transferTo(to);
        }
        to.closeEntry();
      }
      to.finish();
    }
  }
}
