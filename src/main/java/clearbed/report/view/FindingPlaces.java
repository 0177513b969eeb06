package clearbed.report.view;

import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The findings by the place that each stands at, taken out as the places are shown. */
final class FindingPlaces {
  private final Map<PlaceKey, List<Integer>> byPlace = new LinkedHashMap<>();

  /**
   * @param findings to be shown, numbered from 1
   */
  FindingPlaces(List<Finding> findings) {
    for (int i = 0; i < findings.size(); i++)
      byPlace
          .computeIfAbsent(PlaceKey.of(findings.get(i).origin()), p -> new ArrayList<>())
          .add(i + 1);
  }

  /** The numbers of those at a place, which are shown there and nowhere else. */
  List<Integer> taken(Origin origin) {
    List<Integer> there = byPlace.remove(PlaceKey.of(origin));
    return there == null ? List.of() : there;
  }

  /** The numbers of those that stand at no place shown so far. */
  List<Integer> left() {
    return byPlace.values().stream().flatMap(List::stream).sorted().toList();
  }
}
