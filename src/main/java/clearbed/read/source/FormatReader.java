package clearbed.read.source;

import clearbed.model.document.Document;

/** Turns the bytes of one format family into a document. */
public interface FormatReader {

  /**
   * @throws Unreadable with a reason fit for the user
   * @throws Exception whatever a parser throws; {@link Reasons} puts it into words
   */
  Document read(Source source) throws Exception;
}
