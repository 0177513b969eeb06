package clearbed.mark;

/** Words that stand at the top of the page of documents and findings, by which it is known. */
public final class ViewWords {
  public static final String TITLE = "What was read, and what was found";
  public static final String DECIDES =
      "This page is no design. Codes, the makers' written instructions and the licensed professional"
          + " decide.";

  private ViewWords() {}
}
