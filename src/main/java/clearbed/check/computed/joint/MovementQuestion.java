package clearbed.check.computed.joint;

import clearbed.calc.joint.MovementDesign;
import clearbed.calc.joint.MovementDesign.UnknownFigure;
import clearbed.check.rules.Stated;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import java.util.List;
import java.util.stream.Collectors;

/** Asks for the figures that a verdict on a movement joint turns on. */
final class MovementQuestion {
  private final Entry entry;
  private final MovementDesign design;

  MovementQuestion(Entry entry, MovementDesign design) {
    this.entry = entry;
    this.design = design;
  }

  private List<UnknownFigure> turning() {
    return design.unknowns().stream().filter(UnknownFigure::changesVerdict).toList();
  }

  /** What the verdict depends on, in words; the stated ranges when nothing is unknown. */
  String dependsOn() {
    List<UnknownFigure> unknown = turning();
    if (unknown.isEmpty()) return "where in the stated ranges it falls";
    boolean unread = unknown.stream().anyMatch(one -> !unread(one).isEmpty());
    return (unread ? "what is not stated or not understood: " : "what is not stated: ")
        + unknown.stream()
            .map(one -> one.label() + " (" + unread(one) + "reckoned with " + one.taken() + ")")
            .collect(Collectors.joining(", "));
  }

  /** The figure that stands there and was not understood; empty when there is none. */
  private String unread(UnknownFigure unknown) {
    String attribute =
        switch (unknown.name()) {
          case "spacing" -> "movement.spacing";
          case "range" -> "location.temperatureRange";
          default -> "";
        };
    String words = Stated.unread(entry, attribute);
    return words.isEmpty() ? "" : words + ", ";
  }

  /** One question for each, then what the answer decides. */
  String text() {
    List<UnknownFigure> unknown = turning();
    String asked =
        unknown.isEmpty()
            ? "Which figure of the stated ranges is to be built for {tag}?"
            : unknown.stream().map(this::ask).collect(Collectors.joining(" "));
    return asked + " The joint is stated as {found}; it needs {expected}.";
  }

  private String ask(UnknownFigure unknown) {
    String place = place();
    return switch (unknown.name()) {
      case "range" ->
          "What is the largest expected temperature range of the tile surface of {tag}"
              + (place.isEmpty() ? "" : " (" + place + ")")
              + "?";
      case "exposure" ->
          "Does {tag} stand indoors, indoors in sun or moisture, outdoors, or on a deck open to the"
              + " sky in a cold region?";
      case "spacing" -> "How far apart are the movement joints of {tag}?";
      case "capability" -> "Which class is the sealant in the movement joints of {tag}?";
      default -> "What is the " + unknown.label() + " of {tag}?";
    };
  }

  /** The room, as the schedule names it. */
  private String place() {
    return entry.governing("location.room").stream()
        .map(Value::content)
        .map(Content::text)
        .filter(text -> text.length() <= 60)
        .distinct()
        .limit(2)
        .collect(Collectors.joining(", "));
  }
}
