package clearbed.report;

import clearbed.mark.PackageMark;
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
import java.util.zip.CRC32;
import java.util.zip.CheckedInputStream;
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
    Map<String, Filled> filled = new HashMap<>();
    try (ZipFile from = ZipFile.builder().setPath(zip).get()) {
      fill(from, fillings, filled);
      ZipArchiveOutputStream to = new ZipArchiveOutputStream(out);
      PackageMark mark = new PackageMark();
      for (ZipArchiveEntry entry : Collections.list(from.getEntriesInPhysicalOrder())) {
        Filled instead = filled.get(entry.getName());
        if (instead != null) {
          instead.packed.writeTo(to);
          mark.add(entry.getName(), instead.size, instead.crc.getValue());
        } else if (!entry.getName().equals(PackageMark.PROPERTIES)) {
          addRaw(from, entry, to);
          mark.add(entry.getName(), entry.getSize(), entry.getCrc());
        }
      }
      seal(from, mark, to);
      to.finish();
    } finally {
      for (Filled each : filled.values()) each.packed.close();
    }
  }

  private static void addRaw(ZipFile from, ZipArchiveEntry entry, ZipArchiveOutputStream to)
      throws IOException {
    try (InputStream in = from.getRawInputStream(entry)) {
      to.addRawArchiveEntry(fixed(entry), in);
    }
  }

  /** The part with the mark comes last, as it speaks of all others. */
  private static void seal(ZipFile from, PackageMark mark, ZipArchiveOutputStream to)
      throws IOException {
    ZipArchiveEntry saved = from.getEntry(PackageMark.PROPERTIES);
    if (saved == null) return;
    ZipArchiveEntry entry = new ZipArchiveEntry(PackageMark.PROPERTIES);
    entry.setTimeLocal(EPOCH);
    to.putArchiveEntry(entry);
    try (InputStream in = from.getInputStream(saved)) {
      to.write(mark.sealed(in.readAllBytes()));
    }
    to.closeArchiveEntry();
  }

  /** An entry that is packed apart, and what the mark wants to know of it. */
  private static final class Filled {
    private final ScatterZipOutputStream packed;
    private final CRC32 crc = new CRC32();
    private long size;

    Filled() throws IOException {
      packed = ScatterZipOutputStream.pathBased(Files.createTempFile("clearbed", ".zip"));
    }

    InputStream counted(InputStream content) {
      return new CheckedInputStream(content, crc) {
        @Override
        public int read() throws IOException {
          int b = super.read();
          if (b >= 0) size++;
          return b;
        }

        @Override
        public int read(byte[] bytes, int from, int length) throws IOException {
          int n = super.read(bytes, from, length);
          if (n > 0) size += n;
          return n;
        }
      };
    }
  }

  private static void fill(ZipFile from, Map<String, Filling> fillings, Map<String, Filled> filled)
      throws IOException {
    List<Runnable> tasks = new ArrayList<>();
    for (Map.Entry<String, Filling> each : fillings.entrySet()) {
      Filled to = new Filled();
      filled.put(each.getKey(), to);
      tasks.add(() -> fill(from, each.getKey(), each.getValue(), to));
    }
    try {
      AtOnce.run(tasks);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static void fill(ZipFile from, String name, Filling filling, Filled to) {
    ZipArchiveEntry entry = new ZipArchiveEntry(name);
    entry.setTimeLocal(EPOCH);
    entry.setMethod(ZipArchiveEntry.DEFLATED);
    try (InputStream saved = from.getInputStream(from.getEntry(name));
        InputStream whole = to.counted(filling.filled(saved))) {
      to.packed.addArchiveEntry(
          ZipArchiveEntryRequest.createZipArchiveEntryRequest(entry, () -> whole));
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
