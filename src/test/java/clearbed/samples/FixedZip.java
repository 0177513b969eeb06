package clearbed.samples;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/**
 * Archives whose bytes depend on nothing but their content.
 *
 * <p>Entries are stored, not deflated: deflate output differs between zlib builds.
 */
final class FixedZip {
  private static final LocalDateTime TIME = LocalDateTime.of(2026, 1, 15, 9, 0);

  private FixedZip() {}

  /** The same archive with fixed entry times. */
  static byte[] normalise(byte[] archive) {
    Map<String, byte[]> entries = new LinkedHashMap<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(archive))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        if (!entry.isDirectory()) entries.put(entry.getName(), in.readAllBytes());
      }
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
    return of(entries);
  }

  /** An archive of these entries, in their order. */
  static byte[] of(Map<String, byte[]> entries) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, byte[]> each : entries.entrySet()) {
        out.putNextEntry(stored(each.getKey(), each.getValue()));
        out.write(each.getValue());
        out.closeEntry();
      }
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
    return bytes.toByteArray();
  }

  private static ZipEntry stored(String name, byte[] content) {
    CRC32 sum = new CRC32();
    sum.update(content);
    ZipEntry entry = new ZipEntry(name);
    entry.setMethod(ZipEntry.STORED);
    entry.setSize(content.length);
    entry.setCrc(sum.getValue());
    // A local time in DOS form: no time zone enters the bytes.
    entry.setTimeLocal(TIME);
    return entry;
  }
}
