package clearbed.recognise.schedule.column;

/** Whether what a heading would make of the columns below it makes sense. */
final class PlausibleHeader {
  /** Score of a column by its cells alone, nearly all of which name a finish. */
  private static final double FINISHES = 1.5;

  /** The score of a column whose heading, cells and unit speak for one another. */
  private static final double CLEAR = 3.5;

  private PlausibleHeader() {}

  /**
   * True where the columns under a heading make sense together.
   *
   * @param headed true where fewer rows are a header already, and one more is asked for
   */
  static boolean is(Header header, boolean headed) {
    long known = 0;
    long named = 0;
    long hinted = 0;
    for (Header.Column c : header.columns().values()) {
      if (!c.text().isEmpty()) named++;
      if (c.evidence().heading() >= HeadingSigns.HINT) hinted++;
      if (c.role() != Header.Role.OTHER
          && c.role() != Header.Role.UNASKED
          && isKnown(c.evidence(), headed)) known++;
    }
    boolean subject = header.has(Header.Role.TAG) || header.has(Header.Role.MATERIAL);
    boolean notesAlone =
        known == 2
            && header.all(Header.Role.ATTRIBUTE).stream()
                .anyMatch(c -> c.attribute().id().equals("notes"));
    boolean byWords = (known >= 3 || known >= 2 && !notesAlone && subject) && known * 2 >= named;
    boolean rooms = header.all(Header.Role.SURFACE).size() >= 2 && known >= 3;
    return byWords
        || rooms
        || isFinishList(header)
        || hinted >= 1 && subject && attributes(header) >= 2;
  }

  /** "FIXING GROUT W (mm)" over "2.0" says less by its words than by what stands below. */
  private static boolean isKnown(Header.Evidence evidence, boolean headed) {
    boolean clear = headed && evidence.heading() >= HeadingSigns.HINT && evidence.score() >= CLEAR;
    return clear || evidence.heading() >= HeadingSigns.PLAIN;
  }

  /** Marks under a plain heading beside cells that nearly all name a tile or another finish. */
  private static boolean isFinishList(Header header) {
    return header.all(Header.Role.TAG).stream()
            .anyMatch(c -> c.evidence().heading() >= HeadingSigns.PLAIN)
        && header.all(Header.Role.MATERIAL).stream()
            .anyMatch(c -> c.evidence().score() >= FINISHES);
  }

  static long attributes(Header header) {
    return header.all(Header.Role.ATTRIBUTE).stream()
        .filter(c -> !c.attribute().id().equals("notes"))
        .map(c -> c.attribute().id())
        .distinct()
        .count();
  }

  static double sum(Header header) {
    return header.columns().values().stream().mapToDouble(c -> c.evidence().score()).sum();
  }
}
