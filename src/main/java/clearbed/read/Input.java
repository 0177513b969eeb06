package clearbed.read;

import clearbed.model.Document;

/** Something that was found under the arguments. */
sealed interface Input {
  /** A file to open. */
  record Unread(Source source) implements Input {}

  /** A file whose fate is known without opening it. */
  record Known(Document document) implements Input {}
}
