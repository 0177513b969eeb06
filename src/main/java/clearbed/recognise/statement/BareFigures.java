package clearbed.recognise.statement;

import clearbed.recognise.vocabulary.Phrases;
import clearbed.recognise.vocabulary.Vocabulary;

/** Tells figures that have no words of their own: "4.5 m centres, 6 mm". */
final class BareFigures {
  /** Nothing so far off, in characters, is looked at. */
  private static final int NEAR = 80;

  private final Vocabulary vocabulary;

  BareFigures(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * True when nothing stands with the figure between two commas but what bounds it, other figures
   * and places.
   *
   * @param start of the figure in the text of the passage
   */
  boolean stands(Passage p, int start, int end) {
    int first = Math.max(p.leadEnd <= start ? p.leadEnd : 0, start - NEAR);
    int from = first;
    int to = Math.min(p.text.length(), end + NEAR);
    for (Phrases.Hit hit : vocabulary.list("clause.separator").all(p.text.substring(first, to))) {
      if (first + hit.end() <= start) from = Math.max(from, first + hit.end());
      if (first + hit.start() >= end) to = Math.min(to, first + hit.start());
    }
    String rest = p.text.substring(from, start) + " " + p.text.substring(end, to);
    rest = vocabulary.list("clause.besideFigures").without(rest);
    rest = vocabulary.list("clause.elsewhere").without(rest);
    rest = vocabulary.list("clause.complement").without(rest);
    for (Phrases place : vocabulary.exposurePlaces().values()) rest = place.without(rest);
    for (Phrases place : vocabulary.surfacePlaces().values()) rest = place.without(rest);
    return rest.chars().noneMatch(Character::isLetter);
  }
}
