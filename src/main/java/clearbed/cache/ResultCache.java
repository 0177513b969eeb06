package clearbed.cache;

import clearbed.base.codec.DamagedRecord;
import clearbed.base.codec.RecordInput;
import clearbed.base.codec.RecordOutput;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A folder that keeps from run to run what was made of several files, such as a whole project. Safe
 * for several threads and several runs at once.
 *
 * @param <T> what is kept
 */
public final class ResultCache<T> implements AutoCloseable {
  private final CacheFolder folder;
  private final ResultForm<T> form;

  /** How a result is kept. */
  public interface ResultForm<T> {
    /** Version of the layout of an entry. */
    int layout();

    void write(RecordOutput out, T result);

    T read(RecordInput in) throws DamagedRecord;
  }

  private ResultCache(CacheFolder folder, ResultForm<T> form) {
    this.folder = folder;
    this.form = form;
  }

  /**
   * Nothing is written before there is something to keep.
   *
   * @throws IOException when it is no folder
   */
  public static <T> ResultCache<T> open(Path folder, ResultForm<T> form) throws IOException {
    Cache.requireFolder(folder);
    return new ResultCache<>(new CacheFolder(folder, Fingerprint.ofProgram()), form);
  }

  /** Digest of this program, its vocabulary and the Java it runs on. */
  public static String program() throws IOException {
    return Fingerprint.ofProgram();
  }

  /**
   * What stands for a result of {@link #program()}: all that it depends on.
   *
   * @param words what else it depends on
   * @param files by the names that they have in it, in order; with null for what is no file
   * @throws IOException when one cannot be read
   */
  public static String key(List<String> words, List<NamedFile> files) throws IOException {
    List<String> all = new ArrayList<>(words);
    for (NamedFile named : files) {
      all.add(named.name());
      all.add(named.file() == null ? "" : Fingerprint.of(named.file()));
    }
    return Fingerprint.of(all);
  }

  /** A file and what it is called in the result. */
  public record NamedFile(String name, Path file) {}

  /** What was kept, or null. */
  public T get(String key) {
    RecordInput in = folder.open(key, form.layout());
    if (in == null) return null;
    try {
      return form.read(in);
    } catch (DamagedRecord | RuntimeException | OutOfMemoryError e) {
      return null;
    }
  }

  /** Keeps a result; where that cannot be done, the next run does without. */
  public void put(String key, T result) {
    RecordOutput out = CacheFolder.begun(key);
    form.write(out, result);
    folder.put(key, form.layout(), out);
  }

  /** True when something could not be kept. */
  public boolean failed() {
    return folder.failed();
  }

  /** Removes what other versions left, and the entries that have been of no use for longest. */
  @Override
  public void close() {
    folder.tidy();
  }
}
