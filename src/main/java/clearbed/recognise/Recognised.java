package clearbed.recognise;

import clearbed.model.Document;
import java.util.List;

/**
 * A document without its text, and what it says.
 *
 * @param document without its blocks
 * @param facts null when nothing could be read
 */
public record Recognised(Document document, Facts facts) {

  /** Takes the facts of a document; what cannot be analysed makes it unreadable. */
  public static Recognised of(Document document, Recogniser recogniser) {
    boolean read =
        document.status() == Document.Status.READ || document.status() == Document.Status.PARTLY;
    if (!read) return new Recognised(document, null);
    try {
      Facts facts = recogniser.recognise(document);
      boolean partly = document.status() == Document.Status.PARTLY;
      Document.Status status = partly ? Document.Status.PARTLY : Document.statusFor(facts.gaps());
      String reason = document.reason();
      return new Recognised(
          new Document(document.path(), document.format(), status, reason, List.of(), facts.gaps()),
          facts);
    } catch (StackOverflowError | RuntimeException e) {
      String what = e.getClass().getSimpleName();
      String reason = "its text could not be analysed (" + what + "); report this file";
      return new Recognised(Document.unreadable(document.path(), document.format(), reason), null);
    }
  }
}
