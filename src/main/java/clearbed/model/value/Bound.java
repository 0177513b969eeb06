package clearbed.model.value;

/**
 * How a stated figure is meant: {@code 400 psi}, {@code 400 psi minimum}, {@code over 400 psi}, ...
 */
public enum Bound {
  EXACT(""),
  AT_LEAST("at least "),
  ABOVE("above "),
  AT_MOST("at most "),
  BELOW("below ");

  private final String words;

  Bound(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
