package clearbed.model.report;

import clearbed.model.document.Origin;
import clearbed.model.value.Value;
import java.util.List;
import java.util.Map;

/**
 * What came of the words of all documents, beside the findings.
 *
 * @param undecided tags of which nothing says whether they are glass tile
 * @param wholeSet how each check of the whole set came out
 * @param taught words that the office has taught
 * @param labels of attributes, by their names
 */
public record ReadingAccount(
    Account.Tally sentences,
    Account.Tally cells,
    List<Account.TableAccount> tables,
    List<WordsNotUnderstood> notUnderstood,
    List<Account.SetAside> setAside,
    List<UndecidedTile> undecided,
    List<WholeSet> wholeSet,
    List<TaughtWord> taught,
    Map<String, String> labels) {
  public static final ReadingAccount NOTHING =
      new ReadingAccount(
          Account.Tally.NONE,
          Account.Tally.NONE,
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of());

  public ReadingAccount {
    tables = List.copyOf(tables);
    notUnderstood = List.copyOf(notUnderstood);
    setAside = List.copyOf(setAside);
    undecided = List.copyOf(undecided);
    wholeSet = List.copyOf(wholeSet);
    taught = List.copyOf(taught);
    labels = Map.copyOf(labels);
  }

  public ReadingAccount(
      Account.Tally sentences,
      Account.Tally cells,
      List<Account.TableAccount> tables,
      List<WordsNotUnderstood> notUnderstood,
      List<Account.SetAside> setAside,
      List<UndecidedTile> undecided,
      List<WholeSet> wholeSet,
      List<TaughtWord> taught) {
    this(sentences, cells, tables, notUnderstood, setAside, undecided, wholeSet, taught, Map.of());
  }

  public ReadingAccount withLabels(Map<String, String> now) {
    return new ReadingAccount(
        sentences, cells, tables, notUnderstood, setAside, undecided, wholeSet, taught, now);
  }

  /** As people read what a column or a word was taken for. */
  public String label(String name) {
    return labels.getOrDefault(name, name);
  }

  /** The file and line that taught a word by which the value was read; empty for none. */
  public String taughtBy(Value value) {
    return taught.stream()
        .filter(word -> word.marks(value))
        .map(TaughtWord::source)
        .findFirst()
        .orElse("");
  }

  /**
   * @param couldAnswer ids of the checks that the words might answer
   * @param tags of the glass tiles they are about; empty for all
   */
  public record WordsNotUnderstood(
      Account.Unread words, List<String> couldAnswer, List<String> tags) {
    public WordsNotUnderstood {
      couldAnswer = List.copyOf(couldAnswer);
      tags = List.copyOf(tags);
    }
  }

  /**
   * @param speaksFor words that speak for glass tile
   * @param speaksAgainst words that speak against it, or say nothing of it
   */
  public record UndecidedTile(
      String tag, Origin origin, List<String> speaksFor, List<String> speaksAgainst) {}

  /**
   * @param outcome satisfied when nothing was found, unread when words that were not understood
   *     might be what it looks for
   * @param found number of findings
   * @param unread words that it is unread for
   */
  public record WholeSet(String check, Verdict.Outcome outcome, int found, int unread) {}

  /**
   * In how much of the text a check of the whole set looked, in words: what was set aside is about
   * something else, what was not understood could not be looked into.
   */
  public String lookedIn() {
    int missed = sentences.notUnderstood() + cells.notUnderstood();
    String aside =
        sentences.setAside() + cells.setAside() == 0
            ? ""
            : "; set aside: " + counts(sentences.setAside(), cells.setAside());
    return "looked in "
        + of(sentences, "sentence")
        + " and "
        + of(cells, "cell")
        + (missed == 0
            ? ""
            : "; not understood: " + counts(sentences.notUnderstood(), cells.notUnderstood()))
        + aside;
  }

  private static String of(Account.Tally tally, String what) {
    int all = looked(tally) + tally.notUnderstood();
    return looked(tally) + " of " + count(all, what);
  }

  /** How many of them a check of the whole set could look into. */
  public static int looked(Account.Tally tally) {
    return tally.read() + tally.context();
  }

  private static String counts(int sentences, int cells) {
    if (cells == 0) return count(sentences, "sentence");
    if (sentences == 0) return count(cells, "cell");
    return count(sentences, "sentence") + " and " + count(cells, "cell");
  }

  private static String count(int number, String what) {
    return number + " " + what + (number == 1 ? "" : "s");
  }

  public int columnsNotUnderstood() {
    return (int) notUnderstood.stream().filter(n -> !n.words().samples().isEmpty()).count();
  }
}
