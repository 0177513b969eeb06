package clearbed.recognise.statement.figure;

import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.part.Passage;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.Set;
import java.util.regex.Pattern;

/** Tells figures that have no words of their own: "4.5 m centres, 6 mm". */
final class BareFigures {
  private static final Set<String> NAMED_ALONE = Set.of("movement", "grout");

  private static final Pattern MARK = Pattern.compile("(?<![\\w-])" + Tags.MARK + "(?![\\w-])");

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
    for (Phrases place : vocabulary.places().exposures().values()) rest = place.without(rest);
    for (Phrases place : vocabulary.places().surfaces().values()) rest = place.without(rest);
    // "Movement joints at not more than: GT-1 3 m": their name tells of what; of a sealant, or of a
    // bed, a length by itself is of nobody knows what.
    String family = p.familyNear(start, end);
    if (NAMED_ALONE.contains(family)) {
      rest = vocabulary.families().get(family).without(rest);
      rest = MARK.matcher(rest).replaceAll(" ");
    }
    return rest.chars().noneMatch(Character::isLetter);
  }
}
