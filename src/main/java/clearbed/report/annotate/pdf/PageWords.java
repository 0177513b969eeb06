package clearbed.report.annotate.pdf;

import clearbed.model.value.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Finds words on a page. */
final class PageWords {
  /** A unit behind a figure. */
  private static final Pattern UNIT =
      Arrays.stream(Unit.values())
          .map(unit -> Pattern.quote(unit.symbol().replace("\u00b2", "2")))
          .filter(quoted -> !quoted.equals("\\Q\\E"))
          .sorted(Comparator.reverseOrder())
          .collect(
              Collectors.collectingAndThen(
                  Collectors.joining("|"),
                  units -> Pattern.compile("(?<=\\d) ?(?:" + units + ")(?![\\p{L}\\d])")));

  private final LetterString drawn;
  private final LetterString read;

  PageWords(List<PageLetter> letters) {
    drawn = new LetterString(letters);
    read = new LetterString(inReadingOrder(letters));
  }

  /**
   * Words found.
   *
   * @param letters none when they are not on the page
   * @param guessed true when the words stand more than once and nothing tells which are meant
   */
  record FoundWords(List<PageLetter> letters, boolean guessed) {}

  /**
   * @param near words that stand in the same paragraph or row
   */
  FoundWords find(String words, Set<String> near) {
    String plain = LetterString.plain(words);
    List<List<PageLetter>> all = occurrences(words);
    if (all.isEmpty()) return new FoundWords(plain.isEmpty() ? List.of() : pieces(plain), false);
    if (all.size() == 1) return new FoundWords(all.get(0), false);
    List<List<List<PageLetter>>> marks = new ArrayList<>();
    for (String other : near) {
      boolean same = LetterString.plain(other).equals(plain);
      List<List<PageLetter>> found = same ? List.of() : occurrences(other);
      if (!found.isEmpty()) marks.add(found);
    }
    if (marks.isEmpty()) return new FoundWords(all.get(0), true);
    List<PageLetter> best =
        all.stream().min(Comparator.comparingDouble(one -> distance(one, marks))).orElseThrow();
    return new FoundWords(best, false);
  }

  /** A figure under a heading that names its unit carries the unit in our words alone. */
  private List<List<PageLetter>> occurrences(String words) {
    List<List<PageLetter>> found = whole(LetterString.plain(words));
    String bare = UNIT.matcher(words).replaceAll("");
    return found.isEmpty() && !bare.equals(words) ? whole(LetterString.plain(bare)) : found;
  }

  private List<List<PageLetter>> whole(String plain) {
    List<List<PageLetter>> found = drawn.find(plain);
    return found.isEmpty() ? read.find(plain) : found;
  }

  private List<PageLetter> pieces(String plain) {
    List<PageLetter> found = drawn.pieces(plain);
    return found.isEmpty() ? read.pieces(plain) : found;
  }

  /** Words of one row or line are level with each other: height counts more than breadth. */
  private static double distance(List<PageLetter> one, List<List<List<PageLetter>>> marks) {
    PageLetter here = one.get(0);
    double sum = 0;
    for (List<List<PageLetter>> mark : marks) {
      sum +=
          mark.stream()
              .flatMap(List::stream)
              .mapToDouble(
                  l ->
                      Math.abs(here.above(l.x(), l.y()))
                          + 0.02 * Math.abs(here.along(l.x(), l.y())))
              .min()
              .orElse(0);
    }
    return sum;
  }

  /** Line by line from the top, as the text of the page's first letter runs. */
  private static List<PageLetter> inReadingOrder(List<PageLetter> letters) {
    if (letters.isEmpty()) return letters;
    PageLetter first = letters.get(0);
    double line = 0.5 * first.size();
    List<PageLetter> sorted = new ArrayList<>(letters);
    sorted.sort(
        Comparator.<PageLetter>comparingLong(l -> -Math.round(first.above(l.x(), l.y()) / line))
            .thenComparingDouble(l -> first.along(l.x(), l.y())));
    return sorted;
  }
}
