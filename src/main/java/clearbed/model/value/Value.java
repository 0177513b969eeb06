package clearbed.model.value;

import clearbed.model.document.Origin;

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

  /** True when the place leaves the value open ({@code TBD}, bracketed options). */
  public boolean open() {
    return content instanceof Content.Open;
  }
}
