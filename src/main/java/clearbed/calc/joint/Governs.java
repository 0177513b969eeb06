package clearbed.calc.joint;

/** What the least width of a joint comes of. */
public enum Governs {
  GUIDELINE("the guideline governs"),
  MOVEMENT("the movement governs"),
  /** The maker of the sealant asks for more than both. */
  MAKER("the sealant maker's least width governs");

  private final String words;

  Governs(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
