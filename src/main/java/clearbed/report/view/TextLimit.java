package clearbed.report.view;

/** How much text the page takes before it grows too large for a browser. */
final class TextLimit {
  /** Characters of all documents; what is more is named, and not shown. */
  private static final long MOST_TEXT = 24_000_000;

  private long text;

  void count(int characters) {
    text += characters;
  }

  boolean isReached() {
    return text >= MOST_TEXT;
  }
}
