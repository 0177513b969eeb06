package clearbed.recognise.statement;

import clearbed.model.document.Origin;
import clearbed.model.report.Account;
import clearbed.model.report.Fate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** Gathers what came of each sentence and cell of one document. */
public final class Accounting {
  private final Map<String, Account.SetAside> setAside = new LinkedHashMap<>();
  private final List<Account.TableAccount> tables = new ArrayList<>();
  private final List<Account.Unread> unread = new ArrayList<>();
  private final Consumer<Account.Ending> endings;
  private Account.Tally sentences = Account.Tally.NONE;
  private Account.Tally cells = Account.Tally.NONE;

  /**
   * @param endings told how each sentence and cell ended, where it stands; null for nobody
   */
  public Accounting(Consumer<Account.Ending> endings) {
    this.endings = endings;
  }

  /** True when somebody is told of every ending. */
  public boolean traces() {
    return endings != null;
  }

  public void sentence(Origin origin, String text, Fate fate, String why) {
    sentences = sentences.plus(fate);
    if (traces()) endings.accept(new Account.Ending(origin, text, fate, why));
  }

  /** A cell that is counted with {@link #cells}. */
  public void cell(Account.Ending ending) {
    if (traces()) endings.accept(ending);
  }

  public void cells(Account.Tally of) {
    cells = cells.plus(of);
  }

  public void table(Account.TableAccount table) {
    tables.add(table);
  }

  public void unread(Account.Unread words) {
    unread.add(words);
  }

  /** One line for each reason and document part, with a count. */
  public void setAside(Origin origin, String under, String why, int count) {
    setAside.merge(
        under + "|" + why,
        new Account.SetAside(origin, why, count),
        (first, next) -> new Account.SetAside(first.origin(), why, first.count() + next.count()));
  }

  public Account account() {
    return new Account(sentences, cells, tables, unread, List.copyOf(setAside.values()));
  }
}
