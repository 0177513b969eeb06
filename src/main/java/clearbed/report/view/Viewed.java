package clearbed.report.view;

import clearbed.model.document.Document;
import clearbed.model.report.Account;
import java.util.List;

/**
 * A document with its words.
 *
 * @param endings how each of its sentences and cells ended
 */
public record Viewed(Document document, List<Account.Ending> endings) {
  public Viewed {
    endings = List.copyOf(endings);
  }
}
