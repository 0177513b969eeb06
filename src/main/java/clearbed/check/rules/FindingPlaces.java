package clearbed.check.rules;

import clearbed.model.document.Origin;
import java.util.List;

/**
 * Where a finding is.
 *
 * @param others besides the first
 */
public record FindingPlaces(Origin origin, List<Origin> others) {

  /** One place alone. */
  public static FindingPlaces at(Origin origin) {
    return new FindingPlaces(origin, List.of());
  }
}
