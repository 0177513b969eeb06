package clearbed.cache;

import clearbed.model.Document;
import clearbed.read.DamagedDocument;
import clearbed.read.PackedInput;
import clearbed.read.PackedOutput;
import clearbed.read.Treatment;
import clearbed.recognise.Recognised;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;

/**
 * A folder that keeps what was recognised of each file from run to run. An entry holds for the
 * file's bytes, its path, this very program and its vocabulary; one that is damaged, foreign or of
 * another version is as good as none, and is written anew. Safe for several threads and several
 * runs at once: entries are put into place whole.
 */
public final class ReadingCache implements AutoCloseable {
  /** Version of the layout of an entry. */
  static final int LAYOUT = 0x52430001;

  /** An entry's time says when it was last of use, to the day. */
  private static final Duration FRESH = Duration.ofDays(1);

  private final CacheFolder folder;
  private final String program;
  private final RecordCodec codec = new RecordCodec();
  private volatile boolean failed;

  private ReadingCache(CacheFolder folder, String program) {
    this.folder = folder;
    this.program = program;
  }

  /**
   * Nothing is written before there is something to keep.
   *
   * @throws IOException when it is no folder
   */
  public static ReadingCache open(Path folder) throws IOException {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new IOException("is not a folder; name one that may be filled");
    }
    String program = Fingerprint.ofProgram();
    return new ReadingCache(new CacheFolder(folder, program), program);
  }

  /** True when something could not be kept. */
  public boolean failed() {
    return failed;
  }

  /** What is known of a file, and where to keep it. */
  public Treatment.Memory<Recognised> memory(String path, boolean named, Path file) {
    try {
      State state = State.of(file);
      String key = Fingerprint.of(file, program, path, Boolean.toString(named));
      return new Entry(key, path, file, state);
    } catch (IOException e) {
      // A file that cannot be read says so when it is read.
      return Treatment.Memory.none();
    }
  }

  /** Removes what other versions left, and the entries that have been of no use for longest. */
  @Override
  public void close() {
    folder.tidy();
  }

  private record State(FileTime changed, long size) {
    static State of(Path file) throws IOException {
      BasicFileAttributes found = Files.readAttributes(file, BasicFileAttributes.class);
      return new State(found.lastModifiedTime(), found.size());
    }
  }

  private final class Entry implements Treatment.Memory<Recognised> {
    private final String key;
    private final String path;
    private final Path file;
    private final State state;

    Entry(String key, String path, Path file, State state) {
      this.key = key;
      this.path = path;
      this.file = file;
      this.state = state;
    }

    @Override
    public Recognised recalled() {
      Path place = folder.entry(key);
      try {
        Recognised recalled = decode(Files.readAllBytes(place));
        touch(place);
        return recalled;
      } catch (IOException | DamagedDocument | RuntimeException | OutOfMemoryError e) {
        return null;
      }
    }

    private Recognised decode(byte[] bytes) throws DamagedDocument {
      PackedInput in = PackedInput.open(bytes, LAYOUT);
      if (!key.equals(in.text())) throw new DamagedDocument("is of another file");
      Recognised found = (Recognised) codec.read(in, Recognised.class);
      in.requireEnd();
      boolean own = found != null && path.equals(found.document().path()) && isLasting(found);
      if (!own) throw new DamagedDocument("is of another file");
      return found;
    }

    private void touch(Path place) throws IOException {
      Instant now = Instant.now();
      FileTime last = Files.getLastModifiedTime(place);
      if (last.toInstant().isBefore(now.minus(FRESH))) {
        Files.setLastModifiedTime(place, FileTime.from(now));
      }
    }

    @Override
    public void keep(Recognised result) {
      if (!isLasting(result)) return;
      try {
        // What changed while it was read is not what the key speaks of.
        if (!state.equals(State.of(file))) return;
      } catch (IOException e) {
        return;
      }
      PackedOutput out = new PackedOutput();
      out.text(key);
      codec.write(out, result, Recognised.class);
      try {
        folder.put(key, out.sealed(LAYOUT));
      } catch (IOException e) {
        failed = true;
      }
    }
  }

  /** What could not be read may be for the want of time or memory, which another run may have. */
  private static boolean isLasting(Recognised result) {
    Document.Status status = result.document().status();
    return result.facts() != null
        && (status == Document.Status.READ || status == Document.Status.PARTLY);
  }
}
