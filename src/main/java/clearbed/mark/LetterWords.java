package clearbed.mark;

/**
 * Words that the writers of the letter of questions use, by which a letter that was changed is
 * known.
 */
public final class LetterWords {
  public static final String TITLE = "Questions on the glass tile documents";
  public static final String PLACE = "Place";
  public static final String WHY = "Why it matters";
  public static final String WORDING = "Suggested wording";

  private LetterWords() {}
}
