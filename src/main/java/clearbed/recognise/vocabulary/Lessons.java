package clearbed.recognise.vocabulary;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;

/**
 * What documents teach of the ways of their office.
 *
 * @param marks of rows and items, letter for letter
 * @param glass short names that a legend explains as glass tile: {@code GLS}, or the {@code V} of
 *     {@code V11}
 */
public record Lessons(List<String> marks, List<String> glass) {
  public static final Lessons NOTHING = new Lessons(List.of(), List.of());

  public Lessons {
    marks = List.copyOf(marks);
    glass = List.copyOf(glass);
  }

  /** All of several documents, each once, in the order of the alphabet. */
  public static Lessons joined(Collection<Lessons> each) {
    TreeSet<String> marks = new TreeSet<>();
    TreeSet<String> glass = new TreeSet<>();
    for (Lessons one : each) {
      marks.addAll(one.marks());
      glass.addAll(one.glass());
    }
    return new Lessons(List.copyOf(marks), List.copyOf(glass));
  }

  public boolean isEmpty() {
    return marks.isEmpty() && glass.isEmpty();
  }

  /** Whatever a document may have to be read anew for. */
  public List<String> words() {
    List<String> out = new ArrayList<>(marks);
    out.addAll(glass);
    return out;
  }
}
