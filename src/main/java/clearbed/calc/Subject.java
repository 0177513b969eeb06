package clearbed.calc;

/**
 * What a calculation is made for.
 *
 * @param check name of the check that asks
 * @param tag the entry, or a name for the case
 */
public record Subject(String check, String tag) {

  /** Stable from run to run. */
  public String id() {
    return check + ":" + tag;
  }
}
