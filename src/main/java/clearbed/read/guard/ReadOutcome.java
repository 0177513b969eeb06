package clearbed.read.guard;

import clearbed.model.document.Document;
import clearbed.read.source.Reasons;
import clearbed.read.source.Source;

/**
 * How the reading of one document ended.
 *
 * @param document what to report when nothing better comes of it
 */
public record ReadOutcome(ReadEnding ending, Document document) {

  /** In what way, and so what may be made of it. */
  enum ReadEnding {
    /** Read, or refused for a reason of its own. */
    DONE,
    /** Used up its time; the thread may still be running. */
    TIMED_OUT,
    /** Perhaps for what was read beside it. */
    OUT_OF_MEMORY,
    /** A greater stack may do. */
    TOO_DEEP,
    /** A class could not be loaded, as happens for ever after its loading was once interrupted. */
    BROKEN,
    /** The process that read it is gone. */
    ENDED;

    /** True when another try in a process of its own would come to nothing else. */
    boolean isSettled() {
      return this == DONE || this == TIMED_OUT;
    }

    /** True when the process in which it happened should read nothing more. */
    boolean harms() {
      return this != DONE && this != TOO_DEEP;
    }
  }

  static ReadOutcome done(Document document) {
    return new ReadOutcome(ReadEnding.DONE, document);
  }

  static ReadOutcome unreadable(ReadEnding ending, Source source, String reason) {
    return new ReadOutcome(ending, Document.unreadable(source.path(), source.extension(), reason));
  }

  static ReadOutcome interrupted(Source source) {
    return unreadable(ReadEnding.TIMED_OUT, source, "reading was interrupted");
  }

  public static ReadOutcome outOfMemory(Source source) {
    return unreadable(ReadEnding.OUT_OF_MEMORY, source, Reasons.outOfMemory());
  }
}
