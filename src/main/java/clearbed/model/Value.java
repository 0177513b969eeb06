package clearbed.model;

import java.util.Objects;

/**
 * What the documents say of one attribute of one entry, in one place.
 *
 * @param attribute name from the vocabulary, such as {@code mortar.standard}
 * @param excluded true when the words forbid the content ({@code organic adhesive is not
 *     permitted})
 * @param asWritten the words
 * @param specific true when the place speaks of this tag or of glass tile by name, not of tile at
 *     large
 */
public record Value(
    String attribute,
    Content content,
    boolean excluded,
    String asWritten,
    Origin origin,
    Scope scope,
    boolean specific) {

  public Value(
      String attribute,
      Content content,
      boolean excluded,
      String asWritten,
      Origin origin,
      Scope scope) {
    this(attribute, content, excluded, asWritten, origin, scope, scope == Scope.ENTRY);
  }

  /** The same said at another place. */
  public Value at(Origin place) {
    return new Value(attribute, content, excluded, asWritten, place, scope, specific);
  }

  // As in Origin: these are sought by the million.
  @Override
  public boolean equals(Object other) {
    return this == other
        || other instanceof Value v
            && excluded == v.excluded
            && specific == v.specific
            && scope == v.scope
            && attribute.equals(v.attribute)
            && Objects.equals(asWritten, v.asWritten)
            && Objects.equals(origin, v.origin)
            && Objects.equals(content, v.content);
  }

  /** Of attribute, words and place, which are nearly always enough. */
  @Override
  public int hashCode() {
    int hash = attribute.hashCode() * 31 + Objects.hashCode(asWritten);
    return hash * 31 + Objects.hashCode(origin);
  }

  /** True when the place leaves the value open ({@code TBD}, bracketed options). */
  public boolean open() {
    return content instanceof Content.Open;
  }
}
