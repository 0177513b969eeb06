package clearbed.check;

import clearbed.model.document.Placed;
import clearbed.model.document.ThinList;
import clearbed.model.report.Verdict;
import clearbed.model.value.Entry;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;

/**
 * The verdicts of each check on each glass entry, check by check, in little memory: what they say
 * is held once, and their tags are put to them when they are asked for.
 */
final class VerdictTable extends ThinList<Verdict> {
  /** Packed at a time: before that, they take what they take. */
  private static final int CHUNK = 4096;

  private static final BitSet NONE = new BitSet(0);

  private static final Placed.Placing<Verdict> PLACE =
      new Placed.Placing<>(
          Verdict::origin,
          (v, origin) -> new Verdict(v.check(), v.tag(), v.outcome(), v.found(), origin));

  private Placed.Packer<Verdict> packer;
  private final List<Entry> entries;
  private final List<List<Verdict>> chunks = new ArrayList<>();
  private final List<Verdict> open = new ArrayList<>();
  private Map<String, BitSet> shown;

  /**
   * @param entries the glass entries
   */
  VerdictTable(List<Entry> entries) {
    this.entries = entries;
    this.packer = new Placed.Packer<>(PLACE, entries.size());
  }

  /** Takes the verdict on the next entry; every check gives one on each, in their order. */
  @Override
  public boolean add(Verdict v) {
    open.add(new Verdict(v.check(), "", v.outcome(), v.found(), v.origin()));
    if (open.size() == CHUNK) {
      chunks.add(packer.pack(open));
      open.clear();
    }
    return true;
  }

  /**
   * Ends the taking, and tells which findings are shown; the rest are suppressed.
   *
   * @param shown the ordinals of their entries, by check
   */
  void show(Map<String, BitSet> shown) {
    this.shown = shown;
    packer = null;
  }

  @Override
  public Verdict get(int index) {
    int chunk = index / CHUNK;
    Verdict v =
        chunk < chunks.size() ? chunks.get(chunk).get(index % CHUNK) : open.get(index % CHUNK);
    int entry = index % entries.size();
    boolean hidden =
        v.outcome() == Verdict.Outcome.FINDING
            && shown != null
            && !shown.getOrDefault(v.check(), NONE).get(entry);
    Verdict.Outcome outcome = hidden ? Verdict.Outcome.SUPPRESSED : v.outcome();
    return new Verdict(v.check(), entries.get(entry).tag(), outcome, v.found(), v.origin());
  }

  @Override
  public int size() {
    return chunks.size() * CHUNK + open.size();
  }
}
