package clearbed.read;

import clearbed.base.io.TemporaryFolder;
import clearbed.model.Document;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Set;

/** Every input under the arguments in order; archives are opened when their turn comes. */
final class Inputs implements Iterator<Input>, AutoCloseable {
  private final List<Input> found;
  private final Iterator<Input> files;
  private final ArchiveLimits limits;
  private final Deque<ArchiveEntries> open = new ArrayDeque<>();
  private final TemporaryFolder folder = new TemporaryFolder();
  private Input next;

  Inputs(List<Path> paths, Set<Path> ownOutputs, ArchiveLimits limits) {
    this.found = new FileWalk(ownOutputs).walk(paths);
    this.files = found.iterator();
    this.limits = limits;
  }

  /** How many files to read there will be, with those in archives but not in archives within. */
  int expected() {
    long files = 0;
    for (Input input : found) {
      if (input instanceof Input.Unread unread) files += ZipKind.countIfPlain(unread.source());
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
  public Input next() {
    if (!hasNext()) throw new NoSuchElementException();
    Input result = next;
    next = null;
    return result;
  }

  /** The input itself, or null when it is an archive, which is then open. */
  private Input enter(Input input) {
    if (!(input instanceof Input.Unread unread)) return input;
    Source source = unread.source();
    if (!source.extension().equals("zip")) return input;
    try {
      if (ZipKind.of(source.file()) != ZipKind.PLAIN) return input;
      if (open.size() >= limits.depth()) return tooDeep(source);
      open.push(new ArchiveEntries(source, limits, folder));
      return null;
    } catch (IOException | RuntimeException e) {
      return new Input.Known(Document.unreadable(source.path(), "zip", Reasons.of(e, null)));
    }
  }

  private Input tooDeep(Source source) {
    String reason = "an archive more than " + limits.depth() + " deep; unpack it";
    return new Input.Known(Document.unreadable(source.path(), "zip", reason));
  }

  @Override
  public void close() {
    while (!open.isEmpty()) open.pop().close();
    folder.close();
  }
}
