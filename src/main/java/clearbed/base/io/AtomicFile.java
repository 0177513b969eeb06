package clearbed.base.io;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/** Writes a file whole or not at all: readers see the old one until the new one is complete. */
public final class AtomicFile {
  private static final int UUID_LENGTH = 36;

  private AtomicFile() {}

  /** Puts the content of the file onto the stream. */
  @FunctionalInterface
  public interface Body {
    void writeTo(OutputStream out) throws IOException;
  }

  /**
   * Writes through a temporary file in the same folder.
   *
   * @throws IOException with one line that names the file and the reason; the old file, if any, is
   *     then as it was
   */
  public static void write(Path file, Body body) throws IOException {
    Path target = resolved(file);
    Path folder = target.toAbsolutePath().getParent();
    if (Files.isDirectory(target)) throw failure(file, "it is a folder; name a file");
    if (Files.isSymbolicLink(target)) throw failure(file, "it is a link that leads nowhere");
    if (Files.exists(target) && !Files.isRegularFile(target))
      throw failure(file, "it is a device or a pipe; name a file");
    if (!Files.isDirectory(folder)) throw failure(file, "the folder " + folder + " is not there");
    sweep(folder, target.getFileName().toString());
    Path part = folder.resolve("." + target.getFileName() + "." + UUID.randomUUID() + ".part");
    try {
      fill(part, body);
      move(part, target);
    } catch (IOException | RuntimeException wrong) {
      throw failure(file, reason(wrong), wrong);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  private static void fill(Path part, Body body) throws IOException {
    try (FileChannel channel =
        FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      hold(channel);
      OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
      body.writeTo(out);
      out.flush();
      channel.force(true);
    }
  }

  /** As long as this process lives, nobody sweeps the file away; where locks fail, none do. */
  private static void hold(FileChannel channel) {
    try {
      channel.tryLock();
    } catch (IOException | OverlappingFileLockException unsupported) {
      // The file is written without.
    }
  }

  /** Takes away what a process that was killed left of the same file. */
  private static void sweep(Path folder, String name) {
    try (DirectoryStream<Path> parts =
        Files.newDirectoryStream(folder, each -> isPart(each.getFileName().toString(), name))) {
      for (Path part : parts) sweep(part);
    } catch (IOException | DirectoryIteratorException unlisted) {
      // What is left over is hidden and passed over as a document.
    }
  }

  private static boolean isPart(String file, String name) {
    String start = "." + name + ".";
    return file.startsWith(start)
        && file.endsWith(".part")
        && file.length() == start.length() + UUID_LENGTH + ".part".length();
  }

  private static void sweep(Path part) {
    try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
      FileLock lock = channel.tryLock();
      if (lock == null) return;
      lock.release();
    } catch (IOException | OverlappingFileLockException inUse) {
      return;
    }
    try {
      Files.deleteIfExists(part);
    } catch (IOException inUse) {
      // Somebody else has it.
    }
  }

  private static void move(Path part, Path target) throws IOException {
    try {
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException unsupported) {
      Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** A link stays a link: what it points to is replaced. */
  private static Path resolved(Path file) throws IOException {
    return Files.isSymbolicLink(file) && Files.exists(file) ? file.toRealPath() : file;
  }

  private static String reason(Exception wrong) {
    if (wrong instanceof NoSuchFileException) return "no such file or folder";
    if (wrong instanceof AccessDeniedException) return "no permission to write there";
    String message = wrong.getMessage();
    return message == null
        ? wrong.getClass().getSimpleName()
        : message.lines().findFirst().orElse("");
  }

  private static IOException failure(Path file, String reason) {
    return new IOException("cannot write " + file + ": " + reason);
  }

  private static IOException failure(Path file, String reason, Exception cause) {
    return new IOException("cannot write " + file + ": " + reason, cause);
  }
}
