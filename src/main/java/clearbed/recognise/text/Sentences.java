package clearbed.recognise.text;

import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Cuts a text at the ends of its sentences. The platform's iterator finds most of them: of 29 texts
 * of the trade it had 20 right, ICU4J 21 at 14 MB more, a trained model of OpenNLP 11. What it gets
 * wrong is mended by two rules on what stands before the stop and behind it.
 */
public final class Sentences {
  /** A piece of a text; offsets are of the text that was cut. */
  public record Sentence(int start, int end, String text) {}

  /** Stopped short forms that a sentence goes on behind, unless a new one plainly begins. */
  private static final Set<String> SHORT =
      Set.of(
          "in", "ft", "min", "max", "approx", "no", "nos", "vs", "etc", "incl", "dim", "fig", "ref",
          "mfr", "mfrs", "mfg", "deg", "typ", "equiv", "sect", "temp", "dwg", "thk", "nom", "wt",
          "co", "st", "mat", "e.g", "i.e", "o.c", "e.w", "u.n.o", "sq", "lin", "cu");

  /** "GT-2, 1/2 in" and "GT-2 and GT-3: 8 ft" behind "1/4 in." begin anew. */
  private static final Pattern ITEM =
      Pattern.compile(
          "[A-Z]{1,5}-(?:\\d{1,3}[A-Z]?|[A-Z])(?:(?:,| and| &|, and) [A-Z]{1,5}-(?:\\d{1,3}[A-Z]?|[A-Z])){0,8}(?: \\([^()]{1,40}\\))?(?:, ?\\d|: ?\\S)");

  /** "35 °C." ends a sentence, as no initial of a name does. */
  private static final Pattern DEGREES = Pattern.compile("(?:°|\\b[Dd]eg(?:rees?|\\.)?) ?[CF]\\.$");

  private static final Pattern LINE_ENDS = Pattern.compile("(?<=\n)");
  private static final int LONGEST = 100_000;

  /**
   * Longer sentences are read in pieces, in characters: what a sentence names and what it says are
   * weighed against each other, pair by pair, and nobody writes longer ones.
   */
  private static final int LONGEST_SENTENCE = 1_000;

  /** Of a shortened word before a stop; the rest of a longer run of letters tells nothing more. */
  private static final int LONGEST_WORD = 40;

  /** A line that long was broken by the page rather than by its writer, in characters. */
  private static final int FULL_LINE = 36;

  /** Stops so near to an end may be seen otherwise with what follows, in characters. */
  private static final int NEAR_AN_END = 40;

  private Sentences() {}

  /**
   * The sentences in order; together they hold every character of the text but blanks between them.
   *
   * @param text in plain form
   */
  public static List<Sentence> of(String text) {
    List<Sentence> out = new ArrayList<>();
    if (text.indexOf('\n') < 0) {
      line(text, 0, out);
      return out;
    }
    int from = 0;
    for (String line : LINE_ENDS.split(unwrapped(text))) {
      line(line, from, out);
      from += line.length();
    }
    return out;
  }

  /** With blanks for the breaks of lines that only the width of a page made; as long as before. */
  private static String unwrapped(String text) {
    StringBuilder out = new StringBuilder(text);
    int start = 0;
    for (int at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) {
      if (at - start >= FULL_LINE && !ends(text, start, at) && !begins(text, at + 1))
        out.setCharAt(at, ' ');
      start = at + 1;
    }
    return out.toString();
  }

  private static boolean ends(String text, int start, int at) {
    int last = at - 1;
    while (last > 0 && text.charAt(last) == ' ') last--;
    // "... leave no voids. Contact:" leads into what the page has broken off.
    if (last > 0 && text.charAt(last) == ':') return text.substring(start, last).indexOf(". ") < 0;
    return last < 0 || ".;!?".indexOf(text.charAt(last)) >= 0;
  }

  /** A list item or an empty line is no continuation. */
  private static boolean begins(String text, int at) {
    int next = at;
    while (next < text.length() && text.charAt(next) == ' ') next++;
    if (next >= text.length() || text.charAt(next) == '\n') return true;
    boolean mark = "-*+•".indexOf(text.charAt(next)) >= 0;
    boolean label =
        Character.isLetterOrDigit(text.charAt(next))
            && next + 1 < text.length()
            && (text.charAt(next + 1) == '.' || text.charAt(next + 1) == ')')
            && next + 2 < text.length()
            && text.charAt(next + 2) == ' ';
    return mark || label;
  }

  private static void line(String line, int offset, List<Sentence> out) {
    if (line.length() > LONGEST || line.indexOf('.') < 0 && line.indexOf('!') < 0) {
      add(line, 0, line.length(), offset, out);
      return;
    }
    BreakIterator ends = BreakIterator.getSentenceInstance(Locale.ENGLISH);
    ends.setText(line);
    int start = 0;
    int looked = 0;
    for (int end = ends.next(); end != BreakIterator.DONE; end = ends.next()) {
      // Of a sentence that goes on behind a stop only the rest is looked at.
      for (int within = stop(line, start, looked, end);
          within > 0;
          within = stop(line, start, start, end)) {
        add(line, start, within, offset, out);
        start = within;
      }
      looked = Math.max(start, end - NEAR_AN_END);
      if (end < line.length() && goesOn(line, start, end)) continue;
      add(line, start, end, offset, out);
      start = end;
    }
    add(line, start, line.length(), offset, out);
  }

  /**
   * "SET IN WHITE MORTAR, ANSI A118.15. 95 PERCENT ...": a stop before a figure that is no decimal.
   */
  private static int stop(String line, int from, int looked, int to) {
    for (int at = line.indexOf(". ", Math.max(from, looked));
        at >= 0 && at + 2 < to;
        at = line.indexOf(". ", at + 1)) {
      int next = at + 1;
      while (next < to && line.charAt(next) == ' ') next++;
      if (next >= to) return 0;
      boolean opens =
          Character.isDigit(line.charAt(next)) || Character.isUpperCase(line.charAt(next));
      String before = wordBefore(line, at);
      boolean ended =
          before.length() > 2 && !SHORT.contains(before)
              || unit(line, at, before)
              || at - 1 > from + 3 && Character.isDigit(line.charAt(at - 1));
      if (opens && ended) return next;
    }
    return 0;
  }

  /** "3 m.", "24 h.", "7 d.": a unit behind a figure ends a sentence. */
  private static boolean unit(String line, int stop, String before) {
    int at = stop - before.length() - 1;
    return before.length() <= 2
        && !before.isEmpty()
        && !SHORT.contains(before)
        && at > 0
        && line.charAt(at) == ' '
        && Character.isDigit(line.charAt(at - 1));
  }

  private static boolean goesOn(String line, int start, int end) {
    int stop = end;
    while (stop > start && line.charAt(stop - 1) == ' ') stop--;
    if (stop <= start || line.charAt(stop - 1) != '.') return false;
    String before = wordBefore(line, stop - 1);
    if (!SHORT.contains(before) && before.length() > 1) return false;
    if (before.length() == 1 && Character.isDigit(before.charAt(0))) return false;
    if (DEGREES.matcher(line.substring(Math.max(start, stop - NEAR_AN_END), stop)).find())
      return false;
    int next = end;
    while (next < line.length() && line.charAt(next) == ' ') next++;
    if (next >= line.length()) return false;
    char c = line.charAt(next);
    if (ITEM.matcher(line).region(next, line.length()).lookingAt()) return false;
    // "12 in. Patch low spots": a word with a small letter behind its capital begins a sentence.
    boolean begins =
        Character.isUpperCase(c)
            && next + 2 < line.length()
            && Character.isLowerCase(line.charAt(next + 1))
            && Character.isLowerCase(line.charAt(next + 2));
    return !begins || before.equals("mfr") || before.equals("deg");
  }

  private static String wordBefore(String line, int stop) {
    int from = stop;
    int least = Math.max(0, stop - LONGEST_WORD);
    while (from > least
        && (Character.isLetter(line.charAt(from - 1)) || line.charAt(from - 1) == '.')) from--;
    return line.substring(from, stop).toLowerCase(Locale.ROOT);
  }

  private static void add(String line, int start, int end, int offset, List<Sentence> out) {
    int from = start;
    int to = end;
    while (from < to && Character.isWhitespace(line.charAt(from))) from++;
    while (to > from && Character.isWhitespace(line.charAt(to - 1))) to--;
    while (to - from > LONGEST_SENTENCE) {
      int least = from + LONGEST_SENTENCE / 2;
      int cut = from + LONGEST_SENTENCE;
      while (cut > least && line.charAt(cut) != ' ') cut--;
      if (cut == least) cut = from + LONGEST_SENTENCE;
      out.add(new Sentence(offset + from, offset + cut, line.substring(from, cut)));
      from = cut;
      while (from < to && Character.isWhitespace(line.charAt(from))) from++;
    }
    if (to > from) out.add(new Sentence(offset + from, offset + to, line.substring(from, to)));
  }
}
