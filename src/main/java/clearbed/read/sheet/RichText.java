package clearbed.read.sheet;

import clearbed.read.block.Mark;
import clearbed.read.block.MarkedText;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** A text of an Excel file whose parts may look different, in the making or done. */
final class RichText {
  private static final Set<Mark> STRUCK = Set.of(Mark.STRUCK);

  private final List<TextRun> runs = new ArrayList<>();

  /**
   * Words that look alike.
   *
   * @param struck null for the look of the cell
   */
  record TextRun(String words, Boolean struck) {}

  static RichText of(String words) {
    RichText text = new RichText();
    text.add(words, null);
    return text;
  }

  void add(String words, Boolean struck) {
    if (!words.isEmpty()) runs.add(new TextRun(words, struck));
  }

  /** True when the look of the cell is not all that matters. */
  boolean hasOwnLook() {
    return runs.stream().anyMatch(run -> run.struck() != null);
  }

  /** All the words, whatever they look like. */
  String plain() {
    if (runs.size() == 1) return runs.get(0).words();
    StringBuilder words = new StringBuilder();
    for (TextRun run : runs) words.append(run.words());
    return words.toString();
  }

  /** The words in a cell of its own look. */
  MarkedText in(boolean struckCell) {
    MarkedText text = new MarkedText();
    for (TextRun run : runs) {
      boolean struck = run.struck() == null ? struckCell : run.struck();
      text.append(run.words(), struck ? STRUCK : Set.of());
    }
    return text;
  }
}
