package clearbed.model;

import java.util.List;

/**
 * What came of the words of all documents, beside the findings.
 *
 * @param undecided tags of which nothing says whether they are glass tile
 */
public record ReadingAccount(
    Account.Tally sentences,
    Account.Tally cells,
    List<Account.TableAccount> tables,
    List<NotUnderstood> notUnderstood,
    List<Account.SetAside> setAside,
    List<Undecided> undecided) {
  public static final ReadingAccount NOTHING =
      new ReadingAccount(
          Account.Tally.NONE, Account.Tally.NONE, List.of(), List.of(), List.of(), List.of());

  public ReadingAccount {
    tables = List.copyOf(tables);
    notUnderstood = List.copyOf(notUnderstood);
    setAside = List.copyOf(setAside);
    undecided = List.copyOf(undecided);
  }

  /**
   * @param couldAnswer ids of the checks that the words might answer
   * @param tags of the glass tiles they are about; empty for all
   */
  public record NotUnderstood(Account.Unread words, List<String> couldAnswer, List<String> tags) {
    public NotUnderstood {
      couldAnswer = List.copyOf(couldAnswer);
      tags = List.copyOf(tags);
    }
  }

  /**
   * @param speaksFor words that speak for glass tile
   * @param speaksAgainst words that speak against it, or say nothing of it
   */
  public record Undecided(
      String tag, Origin origin, List<String> speaksFor, List<String> speaksAgainst) {}

  public int columnsNotUnderstood() {
    return (int) notUnderstood.stream().filter(n -> !n.words().samples().isEmpty()).count();
  }
}
