package clearbed.model.value;

/** How close to the entry a value is stated; the closer one governs. */
public enum Scope {
  /** On the entry's own schedule row, or in a clause that names its tag. */
  ENTRY,
  /** In a section article that governs the entry's kind of tile. */
  ARTICLE,
  /** In a general note, or a section for the whole of the works. */
  GENERAL,
  /** A project fact given in a rule file. */
  PROJECT,
  /** The rule set's own assumption. */
  ASSUMED
}
