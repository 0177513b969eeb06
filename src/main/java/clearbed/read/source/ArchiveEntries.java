package clearbed.read.source;

import clearbed.base.Deadline;
import clearbed.base.DisplayText;
import clearbed.base.io.TemporaryFolder;
import clearbed.model.document.Document;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/** The files in a zip archive by name, each unpacked when its turn comes. */
public final class ArchiveEntries implements Iterator<Source>, AutoCloseable {
  /** What file systems take (Linux: PATH_MAX, NAME_MAX); no packer of files has longer ones. */
  private static final int LONGEST_PATH = 4_096;

  private static final int LONGEST_NAME = 255;

  private final Source archive;
  private final ArchiveLimits limits;
  private final Deadline deadline;
  private final TemporaryFolder folder;
  private final ZipFile zip;
  private final Iterator<ListedFile> entries;
  private long unpacked;

  private record ListedFile(String name, ZipEntry zipEntry, String refusal) {}

  public ArchiveEntries(
      Source archive, ArchiveLimits limits, Deadline deadline, TemporaryFolder folder)
      throws IOException {
    this.archive = archive;
    this.limits = limits;
    this.deadline = deadline;
    this.folder = folder;
    this.zip = open(archive.file());
    this.entries = list().iterator();
  }

  /** Older packers write names in the code page of the machine. */
  private static ZipFile open(Path file) throws IOException {
    try {
      return new ZipFile(file.toFile(), StandardCharsets.UTF_8);
    } catch (ZipException e) {
      Charset old = Charset.isSupported("IBM437") ? Charset.forName("IBM437") : null;
      if (old == null) throw e;
      return new ZipFile(file.toFile(), old);
    }
  }

  private List<ListedFile> list() {
    List<ListedFile> found = new ArrayList<>();
    if (overlaps()) {
      found.add(new ListedFile("", null, "its files share their bytes; not read for safety"));
      return found;
    }
    Set<String> names = new HashSet<>();
    zip.stream()
        .filter(e -> !e.isDirectory())
        .limit(limits.entries())
        .forEach(e -> found.add(entry(e, names)));
    found.sort(Comparator.comparing(ListedFile::name));
    if (zip.stream().filter(e -> !e.isDirectory()).count() > limits.entries()) {
      found.add(new ListedFile("", null, "more than " + limits.entries() + " files; unpack it"));
    }
    if (found.isEmpty()) found.add(new ListedFile("", null, "an archive without files"));
    return found;
  }

  /** Small archives unpack to any size when many names stand for the same bytes. */
  private boolean overlaps() {
    long packed = zip.stream().mapToLong(e -> Math.max(0, e.getCompressedSize())).sum();
    return packed > archive.file().toFile().length();
  }

  private static ListedFile entry(ZipEntry entry, Set<String> names) {
    String name = entry.getName().replace('\\', '/');
    String safe =
        name.replaceFirst("^([A-Za-z]:)?/+", "_/").replaceAll("(^|/)\\.\\.(?=/|$)", "$1_");
    if (!safe.equals(name)) {
      return new ListedFile(
          safe,
          null,
          "an unsafe name in the archive (" + DisplayText.path(name) + "); pack it again");
    }
    if (name.length() > LONGEST_PATH || longestPart(name) > LONGEST_NAME) {
      String shown = DisplayText.path(name);
      return new ListedFile(
          shown, null, "a name too long for a file; pack it again with a shorter one");
    }
    // The zip library finds an entry by its name, so that a second of that name is out of reach.
    if (!names.add(name))
      return new ListedFile(name, null, "a second file of this name in the archive");
    return new ListedFile(name, entry, null);
  }

  private static int longestPart(String name) {
    return Arrays.stream(name.split("/")).mapToInt(String::length).max().orElse(0);
  }

  @Override
  public boolean hasNext() {
    return entries.hasNext();
  }

  @Override
  public Source next() {
    ListedFile entry = entries.next();
    String path = entry.name().isEmpty() ? archive.path() : archive.path() + "!/" + entry.name();
    if (entry.refusal() != null) return unreadable(path, entry.refusal());
    String name = path.substring(path.lastIndexOf('/') + 1);
    String passedOver =
        entry.name().startsWith("__MACOSX/") ? "hidden file" : PassedOver.reason(name, false);
    if (passedOver != null) return ignored(path, passedOver);
    if (deadline.isPast()) return unreadable(path, Reasons.overdue(deadline));
    try {
      return new Source(path, unpack(entry.zipEntry(), name), false, true);
    } catch (Unreadable e) {
      return unreadable(path, e.getMessage());
    } catch (FileSystemException e) {
      String why = e.getReason() == null ? "no reason given" : e.getReason();
      return unreadable(path, "not unpacked (" + why + "); make room in the temporary folder");
    } catch (IOException | RuntimeException e) {
      return unreadable(path, "damaged in the archive; pack it again");
    }
  }

  private static Source unreadable(String path, String reason) {
    return Source.of(Document.unreadable(path, Source.extensionOf(path), reason));
  }

  private static Source ignored(String path, String reason) {
    return Source.of(Document.ignored(path, Source.extensionOf(path), reason));
  }

  private Path unpack(ZipEntry entry, String name) throws IOException, Unreadable {
    Path file = folder.newFile(Source.extensionOf(name));
    try (InputStream in = zip.getInputStream(entry);
        OutputStream out = Files.newOutputStream(file)) {
      copy(in, out, entry);
      return file;
    } catch (IOException | Unreadable | RuntimeException e) {
      Files.deleteIfExists(file);
      throw e;
    }
  }

  private void copy(InputStream in, OutputStream out, ZipEntry entry)
      throws IOException, Unreadable {
    byte[] buffer = new byte[1 << 16];
    long size = 0;
    CRC32 sum = new CRC32();
    for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
      size += n;
      unpacked += n;
      check(size, entry);
      sum.update(buffer, 0, n);
      write(out, buffer, n);
    }
    if (Checksums.isDamaged(entry, sum))
      throw new Unreadable("damaged in the archive (checksum); pack it again");
  }

  /** A full disk is no damage of the archive. */
  private static void write(OutputStream out, byte[] buffer, int n) throws FileSystemException {
    try {
      out.write(buffer, 0, n);
    } catch (IOException e) {
      throw new FileSystemException(null, null, e.getMessage());
    }
  }

  private void check(long size, ZipEntry entry) throws Unreadable {
    if (size > limits.entryBytes() || unpacked > limits.totalBytes()) {
      throw new Unreadable("unpacks to more than is taken from an archive; unpack it");
    }
    long packed = Math.max(1, entry.getCompressedSize());
    if (size > ArchiveLimits.FREE_BYTES && size / packed > limits.ratio()) {
      throw new Unreadable(Reasons.BOMB);
    }
  }

  @Override
  public void close() {
    try {
      zip.close();
      if (archive.temporary()) Files.deleteIfExists(archive.file());
    } catch (IOException e) {
      // Only read from; the temporary folder is cleared at the end.
    }
  }
}
