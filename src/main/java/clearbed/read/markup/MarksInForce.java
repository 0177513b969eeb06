package clearbed.read.markup;

import clearbed.read.block.Mark;
import clearbed.read.word.WordText;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumSet;
import java.util.Set;

/** The marks that the next words bear: those of the open elements, and those switched on. */
final class MarksInForce {
  private final Deque<Set<Mark>> outer = new ArrayDeque<>();

  /** Of the elements that are open. */
  private Set<Mark> ofElements = Set.of();

  /** Of words from somewhere to somewhere, whatever elements end between. */
  private Set<Mark> held = Set.of();

  /**
   * @param mark that the element puts on its words, or null
   */
  void startElement(Mark mark) {
    outer.push(ofElements);
    if (mark != null) ofElements = WordText.with(ofElements, mark);
  }

  void endElement() {
    if (!outer.isEmpty()) ofElements = outer.pop();
  }

  /** Words from here on bear the mark, or no longer. */
  void set(Mark mark, boolean on) {
    Set<Mark> now = EnumSet.noneOf(Mark.class);
    now.addAll(held);
    if (on) now.add(mark);
    else now.remove(mark);
    held = now;
  }

  Set<Mark> all() {
    if (held.isEmpty()) return ofElements;
    Set<Mark> all = EnumSet.copyOf(held);
    all.addAll(ofElements);
    return all;
  }
}
