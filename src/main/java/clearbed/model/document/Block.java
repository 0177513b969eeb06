package clearbed.model.document;

/** A piece of a document in reading order. */
public sealed interface Block permits Paragraph, Table {
  Origin origin();
}
