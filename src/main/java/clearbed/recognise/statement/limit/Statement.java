package clearbed.recognise.statement.limit;

import clearbed.model.document.Origin;
import clearbed.model.value.Content;
import java.util.List;

/**
 * Something a text says of an attribute.
 *
 * @param excluded true when the words forbid it
 * @param asWritten the words of the part of the text that says it
 * @param limits what it is limited to
 */
public record Statement(
    String attribute,
    Content content,
    boolean excluded,
    String asWritten,
    Origin origin,
    Limits limits) {
  /** True when a value belongs there and stands open. */
  public boolean isOpen() {
    return content instanceof Content.Open;
  }

  /** The part of the work that it is on, "grout" of {@code grout.width}; empty for none. */
  public String family() {
    return attribute.substring(0, Math.max(0, attribute.indexOf('.')));
  }

  public Statement within(Limits outer) {
    return withLimits(limits.within(outer));
  }

  /** The same said elsewhere; the words stay those that were read. */
  Statement at(Origin place) {
    return new Statement(
        attribute, content, excluded, asWritten, place.withText(origin.text()), limits);
  }

  /** What a text says, which depends on no place, said at a place. */
  public static List<Statement> allAt(Origin place, List<Statement> said) {
    return said.stream().map(statement -> statement.at(place)).toList();
  }

  public Statement movedTo(Origin place) {
    return new Statement(attribute, content, excluded, asWritten, place, limits);
  }

  /** The same of another attribute. */
  public Statement of(String other) {
    return new Statement(other, content, excluded, asWritten, origin, limits);
  }

  public Statement withLimits(Limits now) {
    return new Statement(attribute, content, excluded, asWritten, origin, now);
  }
}
