package clearbed.read.block;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** The words of a paragraph or a cell in the making, and which of them bear a mark. */
public final class MarkedText {
  private final StringBuilder words = new StringBuilder();
  private final List<OpenWords> pieces = new ArrayList<>();
  private OpenWords last;

  /** True right behind words that were taken away. */
  private boolean seam;

  private boolean unmarked;

  /** Words that bear the same mark without a break. */
  public record MarkedWords(Mark mark, String words) {}

  private record OpenWords(Set<Mark> marks, StringBuilder words) {}

  public void append(CharSequence more, Set<Mark> marks) {
    if (more.length() == 0) return;
    boolean taken = marks.stream().anyMatch(Mark::takesAway);
    if (!marks.isEmpty()) {
      if (last == null || !last.marks.equals(marks)) pieces.add(last = open(marks));
      last.words.append(more);
    } else if (!isBlank(more)) {
      last = null;
      unmarked = true;
    } else if (last != null) {
      // Words parted by nothing but a blank are one piece.
      last.words.append(more);
    }
    if (taken) takeAway(more);
    else keep(more);
  }

  private static OpenWords open(Set<Mark> marks) {
    return new OpenWords(EnumSet.copyOf(marks), new StringBuilder());
  }

  /** What stood on both sides must not grow together. */
  private void takeAway(CharSequence gone) {
    boolean parts = isBlank(gone.charAt(0)) || isBlank(gone.charAt(gone.length() - 1));
    if (parts && !endsBlank()) words.append(' ');
    seam = true;
  }

  private void keep(CharSequence more) {
    int from = 0;
    if (seam && endsBlank()) while (from < more.length() && isSpace(more.charAt(from))) from++;
    words.append(more, from, more.length());
    seam &= from == more.length();
  }

  private boolean endsBlank() {
    return words.length() == 0 || isBlank(last());
  }

  private static boolean isSpace(char c) {
    return c == ' ';
  }

  private static boolean isBlank(char c) {
    return Character.isWhitespace(c);
  }

  private static boolean isBlank(CharSequence text) {
    return text.chars().allMatch(Character::isWhitespace);
  }

  /** For words of the reader's own, such as brackets around a blank to be filled in. */
  public StringBuilder words() {
    return words;
  }

  /** The last character of the words in force, or 0. */
  public char last() {
    return words.length() == 0 ? 0 : words.charAt(words.length() - 1);
  }

  /** True when words were taken away. */
  public boolean isCut() {
    return pieces.stream().anyMatch(piece -> piece.marks.stream().anyMatch(Mark::takesAway));
  }

  public int length() {
    return words.length();
  }

  /** The words that are in force, as stored, to be cleaned. */
  public String raw() {
    return words.toString();
  }

  /** True when there are words, and all of them bear the mark. */
  public boolean isAll(Mark mark) {
    boolean any = false;
    for (OpenWords piece : pieces) {
      if (isBlank(piece.words)) continue;
      if (!piece.marks.contains(mark)) return false;
      any = true;
    }
    return any && !unmarked;
  }

  /** The marked words in order; of words with several marks one piece for each that counts. */
  public List<MarkedWords> pieces() {
    List<MarkedWords> all = new ArrayList<>();
    for (OpenWords piece : pieces) {
      String text = CleanText.line(piece.words.toString());
      if (text.isEmpty()) continue;
      for (Mark mark : piece.marks) {
        all.add(new MarkedWords(mark, text));
        if (mark.takesAway()) break;
      }
    }
    return all;
  }
}
