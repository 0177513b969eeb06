package clearbed.mark;

/** The first words of a list of findings, by which one is known that was changed. */
public final class ListWords {
  public static final String TITLE = "Findings in ";
  public static final String RULES = "Rule set ";

  private ListWords() {}
}
