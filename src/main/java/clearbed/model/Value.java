package clearbed.model;

/**
 * What the documents say of one attribute of one entry, in one place.
 *
 * @param attribute name from the vocabulary, such as {@code mortar.standard}
 * @param excluded true when the words forbid the content ({@code organic adhesive is not
 *     permitted})
 * @param asWritten the words
 */
public record Value(
    String attribute,
    Content content,
    boolean excluded,
    String asWritten,
    Origin origin,
    Scope scope) {}
