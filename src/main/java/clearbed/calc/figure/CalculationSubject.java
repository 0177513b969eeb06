package clearbed.calc.figure;

/**
 * What a calculation is made for.
 *
 * @param check name of the check that asks
 * @param tag the entry, or a name for the case
 * @param metric true where nothing is to be shown in inches
 */
public record CalculationSubject(String check, String tag, boolean metric) {

  /** One that is shown in both systems of units. */
  public CalculationSubject(String check, String tag) {
    this(check, tag, false);
  }

  /** Stable from run to run. */
  public String id() {
    return check + ":" + tag;
  }
}
