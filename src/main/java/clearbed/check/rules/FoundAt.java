package clearbed.check.rules;

import clearbed.model.document.Origin;
import java.util.List;

/**
 * Where a finding is.
 *
 * @param others besides the first
 */
public record FoundAt(Origin origin, List<Origin> others) {

  /** One place alone. */
  public static FoundAt at(Origin origin) {
    return new FoundAt(origin, List.of());
  }
}
