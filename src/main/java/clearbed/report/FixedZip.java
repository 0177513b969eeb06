package clearbed.report;

import clearbed.model.AtOnce;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.compress.archivers.zip.ScatterZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntryRequest;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;

/** Packs a zip anew with one fixed time for every entry, so that same content is same bytes. */
public final class FixedZip {
  /** The earliest time that a zip entry can carry. */
  private static final LocalDateTime EPOCH = LocalDateTime.of(1980, 1, 1, 0, 0);

  private FixedZip() {}

  /** Makes the content of an entry from what the zip has there. */
  interface Filling {
    InputStream filled(InputStream saved) throws IOException;
  }

  /** Packs the file onto the stream, which stays open; what is compressed stays as it is. */
  public static void copy(Path zip, OutputStream out) throws IOException {
    copy(zip, out, Map.of());
  }

  /** Packs likewise; entries that are to be filled are compressed on all processors before. */
  static void copy(Path zip, OutputStream out, Map<String, Filling> fillings) throws IOException {
    Map<String, ScatterZipOutputStream> filled = new HashMap<>();
    try (ZipFile from = ZipFile.builder().setPath(zip).get()) {
      fill(from, fillings, filled);
      ZipArchiveOutputStream to = new ZipArchiveOutputStream(out);
      for (ZipArchiveEntry entry : Collections.list(from.getEntriesInPhysicalOrder())) {
        ScatterZipOutputStream instead = filled.get(entry.getName());
        if (instead != null) {
          instead.writeTo(to);
          continue;
        }
        try (InputStream in = from.getRawInputStream(entry)) {
          to.addRawArchiveEntry(fixed(entry), in);
        }
      }
      to.finish();
    } finally {
      for (ScatterZipOutputStream each : filled.values()) each.close();
    }
  }

  private static void fill(
      ZipFile from, Map<String, Filling> fillings, Map<String, ScatterZipOutputStream> filled)
      throws IOException {
    List<Runnable> tasks = new ArrayList<>();
    for (Map.Entry<String, Filling> each : fillings.entrySet()) {
      ScatterZipOutputStream to =
          ScatterZipOutputStream.pathBased(Files.createTempFile("clearbed", ".zip"));
      filled.put(each.getKey(), to);
      tasks.add(() -> fill(from, each.getKey(), each.getValue(), to));
    }
    try {
      AtOnce.run(tasks);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static void fill(ZipFile from, String name, Filling filling, ScatterZipOutputStream to) {
    ZipArchiveEntry entry = new ZipArchiveEntry(name);
    entry.setTimeLocal(EPOCH);
    entry.setMethod(ZipArchiveEntry.DEFLATED);
    try (InputStream saved = from.getInputStream(from.getEntry(name));
        InputStream whole = filling.filled(saved)) {
      to.addArchiveEntry(ZipArchiveEntryRequest.createZipArchiveEntryRequest(entry, () -> whole));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
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
