package clearbed.cache;

import clearbed.base.Memo;
import clearbed.base.codec.DamagedRecord;
import clearbed.base.codec.RecordCodec;
import clearbed.base.codec.RecordInput;
import clearbed.base.codec.RecordOutput;
import clearbed.model.Content;
import clearbed.model.Document;
import clearbed.read.Treatment;
import clearbed.recognise.Facts;
import clearbed.recognise.KeptFacts;
import clearbed.recognise.Limits;
import clearbed.recognise.Recogniser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.function.Supplier;

/**
 * What was recognised of each file. An entry holds for the file's bytes, its path, this very
 * program and its vocabulary.
 */
public final class ReadingCache {
  /** Version of the layout of an entry. */
  static final int LAYOUT = 0x52430005;

  private final CacheFolder folder;
  private final String program;

  /** What is said over and over in one document is written once. */
  private final RecordCodec codec = new RecordCodec(Content.class, Limits.class);

  /** Texts that documents of one project have in common are interned, as when they are read. */
  private final Memo<String, String> texts = Memo.ofTexts();

  private volatile boolean distrusted;

  ReadingCache(CacheFolder folder, String program) {
    this.folder = folder;
    this.program = program;
  }

  /** From now on nothing is recalled, only written anew. */
  public void distrust() {
    distrusted = true;
  }

  /**
   * What is known of a file, and where to keep it.
   *
   * @param recogniser asked for when facts are unpacked
   */
  public Treatment.Memory<Known> memory(
      String path, boolean named, Path file, Supplier<Recogniser> recogniser) {
    try {
      State state = State.of(file);
      String key = Fingerprint.of(file, program, path, Boolean.toString(named));
      return new Entry(key, path, file, state, recogniser);
    } catch (IOException e) {
      // A file that cannot be read says so when it is read.
      return Treatment.Memory.none();
    }
  }

  private record State(FileTime changed, long size) {
    static State of(Path file) throws IOException {
      BasicFileAttributes found = Files.readAttributes(file, BasicFileAttributes.class);
      return new State(found.lastModifiedTime(), found.size());
    }
  }

  private final class Entry implements Treatment.Memory<Known> {
    private final String key;
    private final String path;
    private final Path file;
    private final State state;
    private final Supplier<Recogniser> recogniser;

    Entry(String key, String path, Path file, State state, Supplier<Recogniser> recogniser) {
      this.key = key;
      this.path = path;
      this.file = file;
      this.state = state;
      this.recogniser = recogniser;
    }

    @Override
    public Known recalled() {
      if (distrusted) return null;
      try {
        RecordInput in = folder.open(key, LAYOUT);
        return in == null ? null : decode(in);
      } catch (DamagedRecord | RuntimeException | OutOfMemoryError e) {
        return null;
      }
    }

    /** The facts stay packed until they are asked for: often they came to the same before. */
    private Known decode(RecordInput in) throws DamagedRecord {
      Document document = codec.read(in, Document.class);
      String says = in.text();
      byte[] facts = in.bytes();
      in.requireEnd();
      boolean own = says != null && path.equals(document.path()) && isLasting(document);
      if (!own) throw new DamagedRecord("is of another file");
      return Known.recalled(document, says, () -> unpacked(facts));
    }

    private Facts unpacked(byte[] packed) throws DamagedRecord {
      try {
        RecordInput in =
            RecordInput.open(packed, LAYOUT).interning(text -> texts.get(text, () -> text));
        KeptFacts kept = codec.read(in, KeptFacts.class);
        in.requireEnd();
        if (!path.equals(kept.facts().document())) throw new DamagedRecord("is of another file");
        return kept.facts(recogniser.get());
      } catch (RuntimeException e) {
        throw new DamagedRecord("holds what cannot be: " + e.getMessage());
      }
    }

    @Override
    public Known keep(Known result) {
      if (!isLasting(result.document())) return result;
      RecordOutput packed = new RecordOutput();
      codec.write(packed, KeptFacts.of(result.fresh()), KeptFacts.class);
      byte[] facts = packed.toBytes(LAYOUT);
      Known known = result.saying(Fingerprint.of(facts));
      if (isUnchanged()) folder.put(key, LAYOUT, entry(known, facts));
      return known;
    }

    /** What changed while it was read is not what the key speaks of. */
    private boolean isUnchanged() {
      try {
        return state.equals(State.of(file));
      } catch (IOException e) {
        return false;
      }
    }

    private RecordOutput entry(Known known, byte[] facts) {
      RecordOutput out = CacheFolder.begun(key);
      codec.write(out, known.document(), Document.class);
      out.text(known.says());
      out.bytes(facts);
      return out;
    }
  }

  /** What could not be read may be for the want of time or memory, which another run may have. */
  private static boolean isLasting(Document document) {
    Document.Status status = document.status();
    return status == Document.Status.READ || status == Document.Status.PARTLY;
  }
}
