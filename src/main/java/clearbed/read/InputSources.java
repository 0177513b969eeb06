package clearbed.read;

import clearbed.base.Deadline;
import clearbed.base.io.TemporaryFolder;
import clearbed.model.document.Document;
import clearbed.read.detect.ZipKind;
import clearbed.read.source.ArchiveEntries;
import clearbed.read.source.ArchiveLimits;
import clearbed.read.source.FileWalk;
import clearbed.read.source.ReadOptions;
import clearbed.read.source.Reasons;
import clearbed.read.source.Source;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;

/** Every input under the arguments in order; archives are opened when their turn comes. */
final class InputSources implements Iterator<Source>, AutoCloseable {
  private final List<Source> found;
  private final Iterator<Source> files;
  private final ArchiveLimits limits;
  private final Deadline deadline;
  private final Deque<ArchiveEntries> open = new ArrayDeque<>();
  private final TemporaryFolder folder = new TemporaryFolder();
  private Source next;

  InputSources(List<Path> paths, ReadOptions options, ArchiveLimits limits) {
    this.found = new FileWalk(options.ownOutputs()).walk(paths);
    this.deadline = options.deadline();
    this.files = found.iterator();
    this.limits = limits;
  }

  /** How many files to read there will be, with those in archives but not in archives within. */
  int expected() {
    long files = 0;
    for (Source source : found) {
      if (source.known() == null) files += ZipKind.countIfPlain(source);
    }
    return (int) Math.min(Integer.MAX_VALUE, files);
  }

  @Override
  public boolean hasNext() {
    while (next == null && (!open.isEmpty() || files.hasNext())) {
      if (open.isEmpty()) next = enter(files.next());
      else if (open.peek().hasNext()) next = enter(open.peek().next());
      else open.pop().close();
    }
    return next != null;
  }

  @Override
  public Source next() {
    if (!hasNext()) throw new NoSuchElementException();
    Source result = next;
    next = null;
    return result;
  }

  /** The source itself, or null when it is an archive, which is then open. */
  private Source enter(Source source) {
    if (source.known() != null || !source.extension().equals("zip")) return source;
    try {
      if (ZipKind.of(source.file()) != ZipKind.PLAIN) return source;
      if (open.size() >= limits.depth()) return tooDeep(source);
      open.push(new ArchiveEntries(source, limits, deadline, folder));
      return null;
    } catch (IOException | RuntimeException e) {
      return Source.of(Document.unreadable(source.path(), "zip", Reasons.of(e, null)));
    }
  }

  private Source tooDeep(Source source) {
    String reason = "an archive more than " + limits.depth() + " deep; unpack it";
    return Source.of(Document.unreadable(source.path(), "zip", reason));
  }

  @Override
  public void close() {
    while (!open.isEmpty()) open.pop().close();
    folder.close();
  }
}
