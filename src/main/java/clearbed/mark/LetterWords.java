package clearbed.mark;

/**
 * Words that the writers of the letter of questions use, by which a letter that was changed is
 * known.
 */
public final class LetterWords {
  public static final String TITLE = "Questions on the glass tile documents";
  public static final String PLACE = "Place";
  public static final String FOUND = "What was found";
  public static final String WHY = "Why it matters";
  public static final String WORDING = "Suggested wording";
  public static final String QUESTION = "Question";
  public static final String FINDING = "Finding";
  public static final String ANSWER = "Answer";
  public static final String OPENING = "The documents were read for glass tile work";

  private LetterWords() {}
}
