package clearbed.cache;

import clearbed.base.codec.DamagedRecord;
import clearbed.base.codec.RecordCodec;
import clearbed.base.codec.RecordInput;
import clearbed.base.codec.RecordOutput;
import clearbed.model.Calculation;
import clearbed.model.Document;
import clearbed.model.Entry;
import clearbed.model.Finding;
import clearbed.model.Origin;
import clearbed.model.ReadingAccount;
import clearbed.model.Report;
import clearbed.model.Verdict;
import java.util.List;

/**
 * What came of whole batches. It holds for what every document of a batch says, in their order, and
 * for the rules: a file may be written anew, as long as it says the same in the same places.
 */
public final class ResultCache {
  /** Version of the layout of what is kept. */
  static final int LAYOUT = 0x52530003;

  /** Results on more glass entries are not kept: they would take as long as to work them out. */
  private static final int MOST_ENTRIES = 500;

  private final CacheFolder folder;
  private final String program;
  private final RecordCodec codec = new RecordCodec();

  /**
   * @param program digest of the program and of the files that its rules may come from
   */
  ResultCache(CacheFolder folder, String program) {
    this.folder = folder;
    this.program = program;
  }

  /**
   * The key of what comes of documents, or null when it is not known what one of them says.
   *
   * @param run with the rules; its time and date make no difference
   */
  public String key(List<Known> documents, Report.Run run) {
    RecordOutput out = new RecordOutput();
    codec.write(out, undated(run), Report.Run.class);
    out.number(documents.size());
    for (Known each : documents) {
      if (each.says() == null) return null;
      codec.write(out, each.document(), Document.class);
      out.text(each.says());
    }
    return Fingerprint.of(out.toBytes(LAYOUT), program, "results");
  }

  private static Report.Run undated(Report.Run run) {
    return new Report.Run(
        run.tool(),
        run.version(),
        run.ruleSet(),
        run.ruleSetDigest(),
        "",
        "",
        run.layers(),
        run.facts());
  }

  /**
   * An entry without what was said of it: findings, verdicts and calculations hold what matters.
   */
  private record Tile(String tag, boolean glass, String evidence, Origin origin) {
    static Tile of(Entry entry) {
      return new Tile(entry.tag(), entry.glass(), entry.evidence(), entry.origin());
    }

    Entry entry() {
      return new Entry(tag, glass, evidence, origin, List.of(), List.of());
    }
  }

  private record Result(
      List<Report.DocumentSummary> documents,
      List<Tile> tiles,
      List<Finding> findings,
      List<Verdict> verdicts,
      List<Calculation> calculations,
      List<Report.CheckInfo> checks,
      ReadingAccount reading) {}

  /**
   * What came of a batch.
   *
   * @param report when it was recalled, its entries hold no values and no further places, which
   *     only the JSON file and the marked copies tell
   * @param says digest of all else in it but the run; null when it is too large to be kept
   */
  public record Outcome(Report report, String says) {}

  /** What came of it before, or null. */
  public Outcome recalled(String key, Report.Run run) {
    try {
      byte[] packed = get(key);
      if (packed == null) return null;
      RecordInput inner = RecordInput.open(packed, LAYOUT);
      Result kept = codec.read(inner, Result.class);
      inner.requireEnd();
      Report report =
          new Report(
              run,
              kept.documents,
              kept.tiles.stream().map(Tile::entry).toList(),
              kept.findings,
              kept.verdicts,
              kept.calculations,
              kept.checks,
              kept.reading);
      return new Outcome(report, Fingerprint.of(packed));
    } catch (DamagedRecord | RuntimeException | OutOfMemoryError e) {
      return null;
    }
  }

  /** Keeps what came of a batch. */
  public Outcome keep(String key, Report report) {
    long glass = report.entries().stream().filter(Entry::glass).count();
    if (glass > MOST_ENTRIES) return new Outcome(report, null);
    Result result =
        new Result(
            report.documents(),
            report.entries().stream().map(Tile::of).toList(),
            report.findings(),
            report.verdicts(),
            report.calculations(),
            report.checks(),
            report.reading());
    RecordOutput packed = new RecordOutput();
    codec.write(packed, result, Result.class);
    byte[] bytes = packed.toBytes(LAYOUT);
    put(key, bytes);
    return new Outcome(report, Fingerprint.of(bytes));
  }

  /**
   * The key of a file that was written of what came of a batch.
   *
   * @param more all else that decides what the file holds
   * @return null when there is none
   */
  public String fileKey(Outcome outcome, List<String> more) {
    if (outcome.says == null) return null;
    RecordOutput out = new RecordOutput();
    codec.write(out, undated(outcome.report.run()), Report.Run.class);
    for (String word : more) out.text(word);
    return Fingerprint.of(out.toBytes(LAYOUT), program, outcome.says, "file");
  }

  /** The bytes of the file, or null. */
  public byte[] file(String fileKey) {
    try {
      return get(fileKey);
    } catch (DamagedRecord | OutOfMemoryError e) {
      return null;
    }
  }

  public void keepFile(String fileKey, byte[] bytes) {
    put(fileKey, bytes);
  }

  private void put(String key, byte[] bytes) {
    RecordOutput out = CacheFolder.begun(key);
    out.bytes(bytes);
    folder.put(key, LAYOUT, out);
  }

  /** The bytes that were put under a key, or null. */
  private byte[] get(String key) throws DamagedRecord {
    RecordInput in = folder.open(key, LAYOUT);
    if (in == null) return null;
    byte[] bytes = in.bytes();
    in.requireEnd();
    return bytes;
  }
}
