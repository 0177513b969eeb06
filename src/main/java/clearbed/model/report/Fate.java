package clearbed.model.report;

import java.util.Locale;

/** What came of a sentence or a cell. */
public enum Fate {
  /** It states values. */
  READ,
  /** It gave others their tag, heading, place or unit. */
  CONTEXT,
  /** It is about something else, and the account says what. */
  SET_ASIDE,
  /** It may state something, and nobody knows what. */
  NOT_UNDERSTOOD;

  public String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
