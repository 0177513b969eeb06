package clearbed.recognise;

import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.taught.Lessons;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Marks of a form of their office's own ({@code M-BLU}, {@code POOL/1A}), told by the schedules: a
 * short word in capitals for each row, no two alike. Once they are known the other documents of the
 * set can be read by them.
 */
public final class LearnedMarks {
  /** Capitals and figures in parts, one of them behind a stroke, a stop or a hyphen. */
  private static final Pattern CODE = Pattern.compile("(?=.{3,12}$)(?=.*\\p{Lu})" + Tags.CODE);

  /** "GLM/1 - Vitreous glass mosaic". */
  private static final Pattern OPENING =
      Pattern.compile(
          "\\s*((?=.{3,12}(?!\\S))(?=.*\\p{Lu})"
              + Tags.CODE
              + ")\\s*(?:[-\u2013\u2014:,]\\s*)?(?=\\p{L})");

  private static final Pattern COUNTED = Pattern.compile("(.*\\p{Lu}.*[-./])\\d{1,2}");

  /**
   * As {@link clearbed.recognise.vocabulary.taught.Taught} writes any figure, and as offices do.
   */
  private static final List<String> ANY_NUMBER = List.of("#", "##", "x", "X");

  /** Fewer in one document might be words of any kind. */
  private static final int FEWEST = 2;

  private LearnedMarks() {}

  /**
   * The marks of rows whose tags have no known form, where glass tile is among them, and what each
   * document teaches by itself.
   *
   * @param known has the forms that layers teach
   */
  public static Lessons in(List<Facts> facts, Vocabulary known) {
    List<Lessons> all = new ArrayList<>(facts.stream().map(Facts::lessons).toList());
    all.add(new Lessons(ofRows(facts, known), List.of()));
    return Lessons.joined(all);
  }

  private static List<String> ofRows(List<Facts> facts, Vocabulary known) {
    Set<String> out = new TreeSet<>();
    for (Facts f : facts) {
      List<ScheduleRow> coded = new ArrayList<>();
      Map<String, Integer> times = new HashMap<>();
      for (ScheduleRow row : f.rows()) {
        String mark = mark(row);
        if (!CODE.matcher(mark).matches() || TileWords.tile(mark)) continue;
        if (!TagFinder.tags(mark).isEmpty() || known.taught().isTag(mark)) continue;
        coded.add(row);
        times.merge(mark, 1, Integer::sum);
      }
      Set<String> glass = new HashSet<>();
      for (ScheduleRow row : coded) if (row.glass()) glass.add(mark(row));
      boolean apart = times.values().stream().allMatch(n -> n == 1);
      if (!apart || glass.size() < FEWEST) continue;
      out.addAll(times.keySet());
      out.addAll(alike(glass));
    }
    return List.copyOf(out);
  }

  /** "M4.8" of an office that has M4.1 to M4.7, and "M4.x" for all of them. */
  private static Set<String> alike(Set<String> marks) {
    Map<String, Integer> openings = new HashMap<>();
    for (String mark : marks) {
      Matcher counted = COUNTED.matcher(mark);
      if (counted.matches()) openings.merge(counted.group(1), 1, Integer::sum);
    }
    Set<String> out = new TreeSet<>();
    openings.forEach(
        (opening, times) -> {
          if (times >= FEWEST) for (String end : ANY_NUMBER) out.add(opening + end);
        });
    return out;
  }

  /** The tag, or the code that its description opens with behind the letter of an item. */
  private static String mark(ScheduleRow row) {
    String tag = row.tag().strip();
    if (CODE.matcher(tag).matches()) return tag;
    Matcher opening = OPENING.matcher(row.evidence());
    return opening.lookingAt() ? opening.group(1) : tag;
  }
}
