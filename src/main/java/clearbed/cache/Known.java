package clearbed.cache;

import clearbed.base.codec.DamagedRecord;
import clearbed.model.Document;
import clearbed.recognise.Facts;
import clearbed.recognise.Recognised;

/** What is known of a document, from this run or from an earlier one. */
public final class Known {
  private final Document document;
  private final String says;
  private Facts facts;
  private Packed packed;

  /** Facts as they were kept. */
  interface Packed {
    Facts unpacked() throws DamagedRecord;
  }

  private Known(Document document, String says, Facts facts, Packed packed) {
    this.document = document;
    this.says = says;
    this.facts = facts;
    this.packed = packed;
  }

  /** Of this run. */
  public static Known of(Recognised recognised) {
    Facts facts = recognised.facts();
    return new Known(recognised.document(), facts == null ? "" : null, facts, null);
  }

  /** Of an earlier run. */
  static Known recalled(Document document, String says, Packed packed) {
    return new Known(document, says, null, packed);
  }

  Known saying(String digest) {
    return new Known(document, digest, facts, packed);
  }

  /** Without its blocks. */
  public Document document() {
    return document;
  }

  /**
   * Digest of its facts: two documents of the same say the same in the same places. Empty when
   * nothing could be read, null when the digest was not taken.
   */
  String says() {
    return says;
  }

  /** What this run has taken from it, or null. */
  Facts fresh() {
    return facts;
  }

  /**
   * Its facts, or null when nothing could be read. They are handed over, not held any longer: to be
   * asked for once.
   *
   * @throws DamagedRecord when what was kept is not what was written
   */
  public Facts facts() throws DamagedRecord {
    Facts held = facts;
    Packed kept = packed;
    facts = null;
    packed = null;
    return kept == null ? held : kept.unpacked();
  }
}
