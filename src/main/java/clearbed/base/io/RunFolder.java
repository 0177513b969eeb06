package clearbed.base.io;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.UserPrincipal;
import java.util.UUID;

/**
 * The one folder of a run for everything temporary, whoever makes it: our own files, those of the
 * libraries and of the processes that read. Only its owner can enter it. It is removed at the end
 * of the run and, where that was killed, by the next run: a lock tells whether its process lives.
 */
public final class RunFolder implements AutoCloseable {
  static final String TEMPORARY = "java.io.tmpdir";
  static final String START = "clearbed-run-";
  private static final String LOCK = "lock";
  private static final int TRIES = 10;

  private final Path folder;
  private final FileChannel lock;
  private final Thread stopped = new Thread(this::remove, "temporary files");

  private RunFolder(Path folder, FileChannel lock) {
    this.folder = folder;
    this.lock = lock;
  }

  /**
   * Makes it and has temporary files of this process go there, our own by {@link TemporaryFolder}
   * and those of the libraries that ask for the place; to be called before the first of them. Where
   * no folder can be made, nothing changes, and what needs a temporary file says so.
   */
  public static RunFolder begin() {
    Path around = place();
    for (int i = 0; i < TRIES; i++) {
      try {
        RunFolder run = begin(around);
        if (run == null) continue;
        run.sweep(around);
        System.setProperty(TEMPORARY, run.folder.toString());
        Runtime.getRuntime().addShutdownHook(run.stopped);
        return run;
      } catch (IOException | OverlappingFileLockException e) {
        break;
      }
    }
    return new RunFolder(null, null);
  }

  /** Where temporary files go. */
  static Path place() {
    return Path.of(System.getProperty(TEMPORARY));
  }

  /** A new folder, or null when another run took it for one that was left. */
  private static RunFolder begin(Path around) throws IOException {
    Path folder = OwnFolder.make(around.toAbsolutePath().resolve(START + UUID.randomUUID()));
    Path file = folder.resolve(LOCK);
    try {
      FileChannel lock =
          FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (lock.tryLock() != null && Files.exists(file)) return new RunFolder(folder, lock);
      lock.close();
      return null;
    } catch (IOException e) {
      return gone(folder, e);
    }
  }

  private static RunFolder gone(Path folder, IOException e) throws IOException {
    if (Files.exists(folder)) throw e;
    return null;
  }

  /** Removes what runs of the same user left that were killed. */
  private void sweep(Path around) {
    try (DirectoryStream<Path> runs = Files.newDirectoryStream(around, START + "*")) {
      UserPrincipal owner = Files.getOwner(folder);
      for (Path run : runs) {
        boolean own =
            Files.isDirectory(run, LinkOption.NOFOLLOW_LINKS)
                && Files.getOwner(run, LinkOption.NOFOLLOW_LINKS).equals(owner);
        if (own && !run.equals(folder)) sweepLeft(run);
      }
    } catch (IOException | DirectoryIteratorException unlisted) {
      // The next run tries again.
    }
  }

  private static void sweepLeft(Path run) {
    Path file = run.resolve(LOCK);
    try (FileChannel channel =
            FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        FileLock lock = channel.tryLock()) {
      if (lock != null) OwnFolder.remove(run);
    } catch (IOException | OverlappingFileLockException inUse) {
      // Its process lives, or another run sweeps it.
    }
  }

  private synchronized void remove() {
    try {
      OwnFolder.remove(folder);
    } catch (IOException e) {
      // A thread that was given up may still write there; the next run removes it.
    }
  }

  /** Removes it with all that is in it. */
  @Override
  public void close() {
    if (folder == null) return;
    remove();
    try {
      lock.close();
      Runtime.getRuntime().removeShutdownHook(stopped);
    } catch (IOException | IllegalStateException ending) {
      // The end of the process lets go of the lock, too.
    }
  }
}
