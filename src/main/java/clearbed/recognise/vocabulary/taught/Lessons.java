package clearbed.recognise.vocabulary.taught;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What documents teach of the ways of their office.
 *
 * @param marks of rows and items, letter for letter
 * @param glass short names that a legend explains as glass tile: {@code GLS}, or the {@code V} of
 *     {@code V11}
 * @param explained short forms of headings and cells
 */
public record Lessons(List<String> marks, List<String> glass, List<Explained> explained) {
  public static final Lessons NOTHING = new Lessons(List.of(), List.of());

  public Lessons {
    marks = List.copyOf(marks);
    glass = List.copyOf(glass);
    explained = List.copyOf(explained);
  }

  public Lessons(List<String> marks, List<String> glass) {
    this(marks, glass, List.of());
  }

  /**
   * A short form that a legend explains.
   *
   * @param form letter for letter
   * @param heads true where it may head a column, false where it may stand in a cell
   * @param family part of the work below whose headings it stands for this; empty below all
   */
  public record Explained(String form, String meaning, boolean heads, String family) {
    private String key() {
      return form + heads + family;
    }
  }

  /** All of several documents, each once, in the order of the alphabet. */
  public static Lessons joined(Collection<Lessons> each) {
    TreeSet<String> marks = new TreeSet<>();
    TreeSet<String> glass = new TreeSet<>();
    List<Explained> explained = new ArrayList<>();
    for (Lessons one : each) {
      marks.addAll(one.marks());
      glass.addAll(one.glass());
      explained.addAll(one.explained());
    }
    return new Lessons(List.copyOf(marks), List.copyOf(glass), undisputed(explained));
  }

  /** What two legends explain in two ways is explained by none. */
  private static List<Explained> undisputed(List<Explained> all) {
    Map<String, Set<String>> meanings = new TreeMap<>();
    for (Explained e : all)
      meanings
          .computeIfAbsent(e.key(), any -> new TreeSet<>())
          .add(e.meaning().toLowerCase(Locale.ROOT));
    return all.stream()
        .filter(e -> meanings.get(e.key()).size() == 1)
        .collect(Collectors.toMap(e -> e.key(), e -> e, (a, b) -> a, TreeMap::new))
        .values()
        .stream()
        .toList();
  }

  public boolean isEmpty() {
    return marks.isEmpty() && glass.isEmpty() && explained.isEmpty();
  }

  /** Whatever a document may have to be read anew for. */
  public List<String> words() {
    List<String> out = new ArrayList<>(marks);
    out.addAll(glass);
    explained.forEach(e -> out.add(e.form()));
    return out;
  }
}
