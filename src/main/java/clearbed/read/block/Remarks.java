package clearbed.read.block;

/** What is said of comments, for they are what people say of a document, not what it says. */
public final class Remarks {
  public static final String COMMENT =
      "a person's comment, no requirement; what it leaves open is open";

  public static final String PLAIN = "a person's comment, no requirement";

  private Remarks() {}

  /**
   * @param author may be null
   * @param done true for one that is marked as settled
   */
  public static String reason(String author, boolean done) {
    String by = author == null || author.isBlank() ? "" : " (" + CleanText.line(author) + ")";
    return (done ? "a comment marked as settled, no requirement" : COMMENT) + by;
  }
}
