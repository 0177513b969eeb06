package clearbed.read;

import clearbed.model.Document;

final class PdfReader implements FormatReader {
  @Override
  public Document read(Source source) throws Unreadable {
    throw new Unreadable("not yet");
  }
}
