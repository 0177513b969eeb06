package clearbed.model;

/** A piece of a document in reading order. */
public sealed interface Block permits Paragraph, Table {
  Origin origin();
}
