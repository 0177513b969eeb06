package clearbed.recognise.statement;

import clearbed.model.Account;
import clearbed.model.Fate;
import clearbed.model.Origin;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Gathers what came of each sentence and cell of one document. */
public final class Accounting {
  private final Map<String, Account.SetAside> setAside = new LinkedHashMap<>();
  private final List<Account.TableAccount> tables = new ArrayList<>();
  private final List<Account.Unread> unread = new ArrayList<>();
  private Account.Tally sentences = Account.Tally.NONE;
  private Account.Tally cells = Account.Tally.NONE;

  public void sentence(Fate fate) {
    sentences = sentences.plus(fate);
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
