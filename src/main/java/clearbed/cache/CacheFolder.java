package clearbed.cache;

import clearbed.base.codec.DamagedRecord;
import clearbed.base.codec.RecordInput;
import clearbed.base.codec.RecordOutput;
import clearbed.base.io.OwnFolder;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The files of a cache: {@code clearbed-<program>/<two digits>/<key>}. Only files of these names
 * are ever removed.
 */
final class CacheFolder {
  /** Entries take at most so many bytes together; the longest unused go first. */
  static final long MOST_BYTES = 1L << 30;

  /** Entries of no use for so long go. */
  static final Duration LONGEST_UNUSED = Duration.ofDays(60);

  /** A part that is older was left by a run that was ended. */
  private static final Duration STALE_PART = Duration.ofMinutes(10);

  private static final Pattern PROGRAM = Pattern.compile("clearbed-[0-9a-f]{16}");
  private static final Pattern DRAWER = Pattern.compile("[0-9a-f]{2}");
  private static final Pattern ENTRY = Pattern.compile("[0-9a-f]{64}(?:\\.[0-9a-f-]{36}\\.part)?");

  /** Tells programs that make backups to pass the folder over: bford.info/cachedir. */
  private static final String TAG = "CACHEDIR.TAG";

  private static final String SIGNATURE = "Signature: 8a477f597d28d172789f06886806bc55\n";

  /** An entry's time says when it was last of use, to the day. */
  private static final Duration FRESH = Duration.ofDays(1);

  private final Path root;
  private final Path own;
  private volatile boolean failed;

  CacheFolder(Path root, String program) {
    this.root = root;
    this.own = root.resolve("clearbed-" + program.substring(0, 16));
  }

  Path entry(String key) {
    return own.resolve(key.substring(0, 2)).resolve(key);
  }

  /** True when something could not be kept. */
  boolean failed() {
    return failed;
  }

  /** An entry, to be written on behind its key. */
  static RecordOutput begun(String key) {
    RecordOutput out = new RecordOutput();
    out.text(key);
    return out;
  }

  /** An entry, to be read on behind its key; null when it is not there, damaged or another's. */
  RecordInput open(String key, int layout) {
    byte[] bytes = get(key);
    if (bytes == null) return null;
    try {
      RecordInput in = RecordInput.open(bytes, layout);
      return key.equals(in.text()) ? in : null;
    } catch (DamagedRecord e) {
      return null;
    }
  }

  private byte[] get(String key) {
    Path place = entry(key);
    try {
      byte[] bytes = Files.readAllBytes(place);
      touch(place);
      return bytes;
    } catch (IOException | OutOfMemoryError e) {
      return null;
    }
  }

  private static void touch(Path place) throws IOException {
    Instant now = Instant.now();
    FileTime last = Files.getLastModifiedTime(place);
    if (last.toInstant().isBefore(now.minus(FRESH))) {
      Files.setLastModifiedTime(place, FileTime.from(now));
    }
  }

  /** Keeps an entry; where that cannot be done, the next run does without. */
  void put(String key, int layout, RecordOutput entry) {
    try {
      place(key, entry.toBytes(layout));
    } catch (IOException e) {
      failed = true;
    }
  }

  /** Puts an entry into place whole, over whatever lies there. */
  private void place(String key, byte[] bytes) throws IOException {
    Path place = entry(key);
    if (!Files.isDirectory(place.getParent())) {
      Files.createDirectories(root);
      makeOwn();
      Files.createDirectories(place.getParent());
      Path tag = root.resolve(TAG);
      if (!Files.exists(tag)) Files.writeString(tag, SIGNATURE);
    }
    Path part = place.resolveSibling(key + "." + UUID.randomUUID() + ".part");
    try {
      Files.write(part, bytes);
      Files.move(part, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /** What documents say is for nobody but who runs the program. */
  private void makeOwn() throws IOException {
    try {
      if (!Files.isDirectory(own)) OwnFolder.make(own);
    } catch (FileAlreadyExistsException besideAnother) {
      // Another thread or run has made it.
    }
  }

  private record Kept(Path file, Instant used, long size) {}

  void tidy() {
    if (!Files.isDirectory(root)) return;
    for (Path program : list(root, PROGRAM)) {
      if (!program.equals(own)) remove(program);
    }
    Instant now = Instant.now();
    List<Kept> kept = new ArrayList<>();
    for (Path drawer : list(own, DRAWER)) {
      for (Path file : list(drawer, ENTRY)) {
        Kept entry = look(file);
        if (entry == null) continue;
        boolean part = file.getFileName().toString().endsWith(".part");
        Duration longest = part ? STALE_PART : LONGEST_UNUSED;
        if (entry.used().isBefore(now.minus(longest))) remove(file);
        else if (!part) kept.add(entry);
      }
    }
    shrink(kept);
  }

  private static void shrink(List<Kept> kept) {
    long bytes = kept.stream().mapToLong(Kept::size).sum();
    if (bytes <= MOST_BYTES) return;
    kept.sort(Comparator.comparing(Kept::used).thenComparing(Kept::file));
    for (Kept entry : kept) {
      if (bytes <= MOST_BYTES) return;
      remove(entry.file());
      bytes -= entry.size();
    }
  }

  private static Kept look(Path file) {
    try {
      BasicFileAttributes found = Files.readAttributes(file, BasicFileAttributes.class);
      return new Kept(file, found.lastModifiedTime().toInstant(), found.size());
    } catch (IOException e) {
      return null;
    }
  }

  private static List<Path> list(Path folder, Pattern names) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> names.matcher(f.getFileName().toString()).matches()).toList();
    } catch (IOException | UncheckedIOException e) {
      return List.of();
    }
  }

  /** With all of ours that is in it; what others put there stays. */
  private static void remove(Path place) {
    if (Files.isDirectory(place, LinkOption.NOFOLLOW_LINKS)) {
      boolean program = PROGRAM.matcher(place.getFileName().toString()).matches();
      list(place, program ? DRAWER : ENTRY).forEach(CacheFolder::remove);
    }
    try {
      Files.deleteIfExists(place);
    } catch (IOException e) {
      // Another run is at it, or it may not be removed; it does no harm.
    }
  }
}
