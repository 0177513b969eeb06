package clearbed.read.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number or a letter by itself, such as stands before each note of a list.
 *
 * @param letter true for {@code A}, false for {@code 1}
 * @param place in its list, from 1
 */
public record ListMark(boolean letter, int place) {
  private static final Pattern BARE =
      Pattern.compile("^[(\\[<]?(?:(\\d{1,3})|(\\p{Lu}{1,2}|\\p{Ll}))[)\\]>.]?$");

  private static final Pattern ARTICLE =
      Pattern.compile("^\\d{1,2}(?:\\.\\d{1,2}){0,2}\\.(\\d{1,2})(?:\\s+\\p{Lu}.{3,})?$");

  /** Lists leave out letters that look like figures, and notes that were taken out. */
  private static final int STEP = 3;

  private static final int LETTERS = 26;

  /** Null when the words are no mark. */
  public static ListMark of(String words) {
    Matcher bare = BARE.matcher(words);
    if (!bare.matches()) return null;
    if (bare.group(1) != null) return new ListMark(false, Integer.parseInt(bare.group(1)));
    String letters = bare.group(2);
    char first = Character.toUpperCase(letters.charAt(0));
    if (first > 'Z' || letters.length() == 2 && letters.charAt(1) != first) return null;
    return new ListMark(true, first - 'A' + 1 + LETTERS * (letters.length() - 1));
  }

  /** The last figure of {@code 2.1}, with or without the title of the article; else null. */
  public static ListMark ofArticle(String words) {
    Matcher article = ARTICLE.matcher(words);
    return article.matches() ? new ListMark(false, Integer.parseInt(article.group(1))) : null;
  }

  /** The titles of drawings beside each other, each with its number; else the line itself. */
  public static List<Line> titles(Line line) {
    List<Integer> starts = new ArrayList<>();
    ListMark last = null;
    for (int k = 0; k < line.segments().size(); k++) {
      ListMark mark = titleMark(line, k);
      if (mark != null && (last == null || mark.follows(last))) {
        starts.add(k);
        last = mark;
      }
    }
    if (starts.size() < 2 || starts.get(0) != 0) return List.of(line);
    List<Line> titles = new ArrayList<>();
    for (int i = 0; i < starts.size(); i++) {
      int end = i + 1 < starts.size() ? starts.get(i + 1) : line.segments().size();
      titles.add(Line.apart(line.segments().subList(starts.get(i), end)));
    }
    return titles;
  }

  private static ListMark titleMark(Line line, int segment) {
    if (HangingMarks.isMark(line, segment)) return of(line.segments().get(segment).text());
    String text = line.segments().get(segment).text();
    int blank = text.indexOf(' ');
    return blank < 0 ? null : of(text.substring(0, blank));
  }

  boolean follows(ListMark last) {
    int step = place - last.place();
    return last.letter() == letter && step > 0 && step <= STEP;
  }

  /** Whether two marks or more count up; a list may begin anew under another heading. */
  public static boolean isSequence(List<ListMark> marks) {
    int steps = 0;
    int breaks = 0;
    for (int i = 1; i < marks.size(); i++) {
      ListMark last = marks.get(i - 1);
      ListMark mark = marks.get(i);
      if (mark.follows(last)) steps++;
      else if (mark.place() != 1) breaks++;
    }
    return steps > 0 && breaks * 4 <= steps;
  }
}
