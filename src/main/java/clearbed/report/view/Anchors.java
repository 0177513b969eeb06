package clearbed.report.view;

import clearbed.model.document.Origin;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** Names for places, of which the page shows some. */
final class Anchors {
  private final Map<PlaceKey, String> names = new HashMap<>();
  private final Map<String, String> documents = new HashMap<>();
  private final Set<String> shown = new HashSet<>();

  /** The name of a document. */
  String document(String path) {
    return documents.computeIfAbsent(path, p -> "d" + (documents.size() + 1));
  }

  /** A place that something leads to. */
  void wanted(Origin origin) {
    if (origin != null) names.computeIfAbsent(PlaceKey.of(origin), k -> "w" + (names.size() + 1));
  }

  /** The name to put at a place that is shown; empty where nothing leads there. */
  String at(Origin origin) {
    String name = names.getOrDefault(PlaceKey.of(origin), "");
    // The same place is shown once; a second name would be an error of the page.
    return !name.isEmpty() && shown.add(name) ? name : "";
  }

  /** Where to lead to: the place itself, or its document; empty for neither. */
  Page.ShownPlace to(Origin origin) {
    if (origin == null || origin.document().isEmpty())
      return new Page.ShownPlace("the whole set", "");
    String name = names.getOrDefault(PlaceKey.of(origin), "");
    String anchor = shown.contains(name) ? name : documents.getOrDefault(origin.document(), "");
    return new Page.ShownPlace(Shown.line(origin.place()), anchor);
  }
}
