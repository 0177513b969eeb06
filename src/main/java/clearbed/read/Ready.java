package clearbed.read;

import clearbed.model.Document;

/**
 * A document whose turn may come.
 *
 * @param result what came of it, or null when the memory did not suffice
 * @param pending the document while there is no result
 */
record Ready<T>(String path, String format, T result, Document pending) {
  static <T> Ready<T> of(Document document, Treatment<T> treatment) {
    try {
      return new Ready<>(document.path(), document.format(), treatment.of(document), null);
    } catch (OutOfMemoryError e) {
      return new Ready<>(document.path(), document.format(), null, document);
    }
  }

  T result(Treatment<T> treatment) {
    return pending == null ? result : treatment.of(pending);
  }

  /** What to hand on when the memory does not suffice even alone. */
  T lost(Treatment<T> treatment) {
    return treatment.of(Document.unreadable(path, format, Reasons.outOfMemory()));
  }
}
