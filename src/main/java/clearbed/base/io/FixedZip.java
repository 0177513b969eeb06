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

  /** An entry that speaks of all others, and so comes last. */
  public interface LastEntry {
    String name();

    /** Takes note of an entry that is packed, with its size in bytes and its CRC-32. */
    void add(String name, long size, long crc);

    /**
     * The content, once all others are packed.
     *
     * @param saved what the entry holds in the zip that is packed anew
     */
    byte[] content(byte[] saved);
  }

  /**
   * Packs the file onto the stream, which stays open; what is compressed stays as it is.
   *
   * @param last made anew where the zip holds an entry of its name
   */
  public static void copy(Path zip, OutputStream out, LastEntry last) throws IOException {
    try (ZipFile from = ZipFile.builder().setPath(zip).get()) {
      ZipArchiveOutputStream to = new ZipArchiveOutputStream(out);
      for (ZipArchiveEntry entry : Collections.list(from.getEntriesInPhysicalOrder())) {
        if (entry.getName().equals(last.name())) continue;
        try (InputStream in = from.getRawInputStream(entry)) {
          to.addRawArchiveEntry(fixed(entry), in);
        }
        last.add(entry.getName(), entry.getSize(), entry.getCrc());
      }
      add(last, from, to);
      to.finish();
    }
  }

  private static void add(LastEntry last, ZipFile from, ZipArchiveOutputStream to)
      throws IOException {
    ZipArchiveEntry saved = from.getEntry(last.name());
    if (saved == null) return;
    ZipArchiveEntry entry = new ZipArchiveEntry(last.name());
    entry.setTimeLocal(EPOCH);
    to.putArchiveEntry(entry);
    try (InputStream in = from.getInputStream(saved)) {
      to.write(last.content(in.readAllBytes()));
    }
    to.closeArchiveEntry();
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
