package clearbed.read.block;

import clearbed.model.document.Document.GapFate;

/** What a document says of some of its words beyond the words; the first of several governs. */
public enum Mark {
  DELETED("deleted by a tracked change, not in force", GapFate.NOT_IN_FORCE),
  MOVED("moved away by a tracked change; read where they went", GapFate.PASSED_OVER),
  STRUCK("struck through, not in force", GapFate.NOT_IN_FORCE),
  INSERTED("inserted by a tracked change not yet accepted; read as in force", GapFate.READ),
  HIDDEN("hidden text; read like the rest", GapFate.READ);

  private final String reason;
  private final GapFate fate;

  Mark(String reason, GapFate fate) {
    this.reason = reason;
    this.fate = fate;
  }

  public String reason() {
    return reason;
  }

  public GapFate fate() {
    return fate;
  }

  /** True when the words are no part of the text. */
  boolean takesAway() {
    return fate != GapFate.READ;
  }
}
