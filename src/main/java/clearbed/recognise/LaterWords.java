package clearbed.recognise;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** What later words of a text say of its earlier statements. */
final class LaterWords {
  private LaterWords() {}

  /** "Epoxy grout: ANSI A118.3. Use for GT-2." says afterwards for which tile the standard is. */
  static Set<String> spreadBack(List<Statement> out, int before, Set<String> earlier, Limits said) {
    if (said.tags().isEmpty()) return earlier;
    Set<String> all = new TreeSet<>(earlier);
    all.addAll(said.tags());
    for (int i = 0; i < before; i++) {
      Statement s = out.get(i);
      Limits l = s.limits();
      if (!l.tags().isEmpty() && !l.tags().equals(earlier)) continue;
      out.set(i, s.withLimits(l.withTags(all)));
    }
    return all;
  }

  /** A sentence that names no tile speaks of the tile of the sentence before. */
  static Limits sameSubject(Limits l, Limits previous) {
    boolean named = l.glass() || !l.tags().isEmpty() || !l.otherTile().isEmpty();
    if (named) return l;
    return new Limits(
        previous.tags(),
        previous.glass(),
        previous.otherTile(),
        l.exposures(),
        l.except(),
        l.surfaces(),
        l.with());
  }

  static void exceptFrom(List<Statement> out, Limits previous, Limits exception) {
    Set<String> except = new TreeSet<>(exception.exposures());
    except.addAll(exception.tags());
    if (except.isEmpty()) return;
    for (int i = 0; i < out.size(); i++) {
      Statement s = out.get(i);
      if (s.limits() != previous && !s.limits().equals(previous)) continue;
      Limits l = s.limits();
      out.set(i, s.withLimits(l.withExcept(except)));
    }
  }
}
