package clearbed.read;

import clearbed.model.document.Document;
import clearbed.read.guard.IsolatingReader;
import clearbed.read.guard.ReadOutcome;
import clearbed.read.source.ArchiveLimits;
import clearbed.read.source.ParserLimits;
import clearbed.read.source.ReadOptions;
import clearbed.read.source.ReadingLimits;
import clearbed.read.source.Source;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;

/** Reads files, folders and archives into documents; a file that cannot be read says why. */
public final class DocumentReader implements AutoCloseable {
  static final IsolatingReader.Means STANDARD =
      new IsolatingReader.Means(Readers::of, WorkerMain.COMMAND, IsolatingReader.MANY);

  private final InputSources inputs;
  private final IsolatingReader reader;
  private final ReadingLimits limits;
  private final int expected;

  /** Also sets the limits of the office libraries, which are common to the whole process. */
  public DocumentReader(List<Path> paths, ReadOptions options) {
    this(paths, options, ArchiveLimits.standard(), STANDARD);
  }

  DocumentReader(
      List<Path> paths,
      ReadOptions options,
      ArchiveLimits archiveLimits,
      IsolatingReader.Means means) {
    ParserLimits.apply();
    inputs = new InputSources(paths, options, archiveLimits);
    limits = options.limits();
    expected = inputs.expected();
    reader = new IsolatingReader(options, means, expected);
  }

  /**
   * Every document under the paths, in argument order, then path order; archives are unpacked when
   * their turn comes. A path that does not exist is one, too. To be asked by one thread.
   */
  public Iterator<Source> sources() {
    return inputs;
  }

  /** How many documents there will be, but for archives within archives. */
  public int expected() {
    return expected;
  }

  /** What a source holds; may be called by several threads at a time. */
  public Document read(Source source) {
    return reader.read(source);
  }

  /** What work on one document may use up, whoever does it. */
  public ReadingLimits limits() {
    return limits;
  }

  /** What is reported of a source when the memory does not suffice for what it holds. */
  public static Document outOfMemory(Source source) {
    return ReadOutcome.outOfMemory(source).document();
  }

  @Override
  public void close() {
    reader.close();
    inputs.close();
  }
}
