package clearbed.recognise;

import clearbed.model.Content;
import clearbed.model.Origin;
import java.util.Objects;

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
  // As in Origin: these are sought by the million.
  @Override
  public boolean equals(Object other) {
    return this == other
        || other instanceof Statement s
            && excluded == s.excluded
            && attribute.equals(s.attribute)
            && Objects.equals(asWritten, s.asWritten)
            && Objects.equals(origin, s.origin)
            && Objects.equals(content, s.content)
            && Objects.equals(limits, s.limits);
  }

  /** Of attribute, words and place, which are nearly always enough. */
  @Override
  public int hashCode() {
    int hash = attribute.hashCode() * 31 + Objects.hashCode(asWritten);
    return hash * 31 + Objects.hashCode(origin);
  }

  /** True when a value belongs there and stands open. */
  boolean isOpen() {
    return content instanceof Content.Open;
  }

  Statement within(Limits outer) {
    return withLimits(limits.within(outer));
  }

  /** The same said elsewhere; the words stay those that were read. */
  Statement at(Origin place) {
    return new Statement(
        attribute, content, excluded, asWritten, place.withText(origin.text()), limits);
  }

  Statement movedTo(Origin place) {
    return new Statement(attribute, content, excluded, asWritten, place, limits);
  }

  Statement withLimits(Limits now) {
    return new Statement(attribute, content, excluded, asWritten, origin, now);
  }
}
