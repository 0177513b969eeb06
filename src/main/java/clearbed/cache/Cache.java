package clearbed.cache;

import clearbed.base.Memo;
import clearbed.base.codec.DamagedRecord;
import clearbed.base.codec.RecordCodec;
import clearbed.base.codec.RecordInput;
import clearbed.base.codec.RecordOutput;
import clearbed.model.document.Document;
import clearbed.model.value.Content;
import clearbed.read.source.Source;
import clearbed.recognise.Facts;
import clearbed.recognise.KeptFacts;
import clearbed.recognise.Recogniser;
import clearbed.recognise.statement.limit.Limits;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;

/**
 * A folder that keeps from run to run what each file says. An entry holds for the file's bytes, its
 * path, this very program and its vocabulary; one that is damaged, foreign or of another version is
 * as good as none, and is written anew. Safe for several threads and several runs at once: entries
 * are put into place whole.
 */
public final class Cache implements FactStore, AutoCloseable {
  /** Version of the layout of an entry. */
  static final int LAYOUT = 0x52430006;

  private final CacheFolder folder;
  private final String program;
  private final CompletableFuture<Recogniser> recogniser;

  /** What is said over and over in one document is written once. */
  private final RecordCodec codec = new RecordCodec(Content.class, Limits.class);

  /** Texts that documents of one project have in common are interned, as when they are read. */
  private final Memo<String, String> texts = Memo.ofTexts();

  private Cache(CacheFolder folder, String program, CompletableFuture<Recogniser> recogniser) {
    this.folder = folder;
    this.program = program;
    this.recogniser = recogniser;
  }

  /**
   * Nothing is written before there is something to keep.
   *
   * @param recogniser of the vocabulary of this run; it may still be loading
   * @throws IOException when it is no folder
   */
  public static Cache open(Path folder, CompletableFuture<Recogniser> recogniser)
      throws IOException {
    requireFolder(folder);
    String program = Fingerprint.ofProgram();
    return new Cache(new CacheFolder(folder, program), program, recogniser);
  }

  static void requireFolder(Path folder) throws IOException {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new IOException("is not a folder; name one that may be filled");
    }
  }

  @Override
  public Facts facts(Source source, Supplier<Facts> take) {
    if (source.known() != null) return take.get();
    String key;
    FileStamp stamp;
    try {
      stamp = FileStamp.of(source.file());
      key =
          Fingerprint.of(
              source.file(),
              program,
              recogniser.join().taught(),
              source.path(),
              Boolean.toString(source.named()));
    } catch (IOException e) {
      // A file that cannot be read says so when it is read.
      return take.get();
    }
    Facts kept = recalled(key, source.path());
    if (kept != null) return kept;
    Facts facts = take.get();
    if (isLasting(facts.document()) && stamp.isStillOf(source.file())) keep(key, facts);
    return facts;
  }

  /** The time and size of a file: what changed while it was read is not what the key speaks of. */
  private record FileStamp(FileTime changed, long size) {
    static FileStamp of(Path file) throws IOException {
      BasicFileAttributes found = Files.readAttributes(file, BasicFileAttributes.class);
      return new FileStamp(found.lastModifiedTime(), found.size());
    }

    boolean isStillOf(Path file) {
      try {
        return equals(of(file));
      } catch (IOException e) {
        return false;
      }
    }
  }

  /** What was kept under a key, or null. */
  private Facts recalled(String key, String path) {
    try {
      RecordInput in = folder.open(key, LAYOUT);
      if (in == null) return null;
      KeptFacts kept =
          codec.read(in.interning(text -> texts.get(text, () -> text)), KeptFacts.class);
      in.requireEnd();
      Document document = kept.facts().document();
      boolean own = path.equals(document.path()) && isLasting(document);
      return own ? kept.facts(recogniser.join()) : null;
    } catch (DamagedRecord | RuntimeException | OutOfMemoryError e) {
      return null;
    }
  }

  private void keep(String key, Facts facts) {
    try {
      RecordOutput out = CacheFolder.begun(key);
      codec.write(out, KeptFacts.of(facts), KeptFacts.class);
      folder.put(key, LAYOUT, out);
    } catch (OutOfMemoryError e) {
      // The facts themselves are there; they are read anew in the next run.
    }
  }

  /** What could not be read may be for the want of time or memory, which another run may have. */
  private static boolean isLasting(Document document) {
    Document.Status status = document.status();
    return status == Document.Status.READ || status == Document.Status.PARTLY;
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
