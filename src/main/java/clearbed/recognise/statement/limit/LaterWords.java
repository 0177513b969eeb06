package clearbed.recognise.statement.limit;

import clearbed.model.value.Content;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** What later words of a text say of its earlier statements. */
public final class LaterWords {
  private static final Set<String> SITE =
      Set.of(
          "process.cleaning",
          "process.cuttingSafety",
          "process.instructions",
          "process.temperature");

  private static final Pattern IN_PASSING =
      Pattern.compile("\\b(?:to|of|behind|between) (?:the )?glass\\b", Pattern.CASE_INSENSITIVE);

  private LaterWords() {}

  /**
   * "Epoxy grout: ANSI A118.3. Use for GT-2." says afterwards for which tile the standard is.
   *
   * @param family part of the work that the later words name, or empty: "Let mortar cure. Epoxy
   *     grout at GT-2: ..." says nothing of the mortar
   * @param lead tags of the lead-in, which may be the mark of the mortar itself
   */
  public static Set<String> spreadBack(
      List<Statement> out,
      int before,
      Set<String> earlier,
      Set<String> lead,
      String family,
      Limits said) {
    if (said.tags().isEmpty()) return earlier;
    Set<String> all = new TreeSet<>(earlier);
    all.addAll(said.tags());
    all.addAll(lead);
    for (int i = 0; i < before; i++) {
      Statement s = out.get(i);
      if (!family.isEmpty() && !s.attribute().startsWith(family + ".")) continue;
      Limits l = s.limits();
      boolean others = !l.tags().equals(earlier) && !l.tags().equals(lead);
      if (!l.tags().isEmpty() && others) continue;
      // "Substrates for glass tile: 6 mm in 3 m. Substrates for P-31: 3 mm in 3 m."
      boolean saidOfGlass = l.tags().isEmpty() && l.glass() && !family.isEmpty();
      boolean saidAgain =
          out.subList(before, out.size()).stream()
              .anyMatch(own -> own.attribute().equals(s.attribute()));
      if (saidOfGlass || saidAgain) continue;
      out.set(i, s.withLimits(l.withTags(all)));
    }
    return all;
  }

  /**
   * "Sealant: ISO 11600. In GT-1 it is also to ASTM C920": what was said before holds there as
   * well.
   *
   * @param from the first statement of the later part
   */
  public static void besides(List<Statement> out, int from) {
    List<Statement> more = new ArrayList<>();
    for (Statement now : out.subList(from, out.size())) {
      if (!(now.content() instanceof Content.Standard) || now.limits().tags().isEmpty()) continue;
      for (Statement before : out.subList(0, from)) {
        boolean same = before.attribute().equals(now.attribute()) && !before.excluded();
        if (same && before.limits().tags().isEmpty()) more.add(alongside(before, now));
      }
    }
    out.addAll(more);
  }

  /**
   * "Joints are at least 3/8 in in GT-5 and 1/4 in elsewhere. In no case is one narrower than 1/8
   * in": the last bounds what was said, and is no second width.
   *
   * @param from the first statement of the later part
   */
  public static void outermost(List<Statement> out, int from) {
    List<Statement> earlier = List.copyOf(out.subList(0, from));
    out.subList(from, out.size())
        .removeIf(now -> earlier.stream().anyMatch(before -> isWithin(before, now)));
  }

  private static boolean isWithin(Statement before, Statement now) {
    if (!before.attribute().equals(now.attribute()) || before.excluded()) return false;
    if (!(before.content() instanceof Content.Amount inner)
        || !(now.content() instanceof Content.Amount outer)) return false;
    if (inner.low().unit().dimension() != outer.low().unit().dimension()) return false;
    return switch (outer.bound()) {
      case AT_LEAST, ABOVE -> inner.low().compareTo(outer.low()) >= 0;
      case AT_MOST, BELOW -> inner.high().compareTo(outer.high()) <= 0;
      default -> false;
    };
  }

  /** In the words of both, as neither takes the place of the other. */
  private static Statement alongside(Statement before, Statement now) {
    return new Statement(
        before.attribute(),
        before.content(),
        false,
        now.asWritten(),
        before.origin(),
        now.limits());
  }

  /**
   * A sentence that names no tile speaks of the tile of the sentence before; so does one that names
   * "bond to glass tile" in passing.
   */
  public static Limits sameSubject(Limits l, Limits previous, boolean sameWork, String sentence) {
    boolean passing = !previous.tags().isEmpty() && IN_PASSING.matcher(sentence).find();
    boolean glass = l.glass() && !passing;
    if (glass || !l.tags().isEmpty() || !l.otherTile().isEmpty()) return l;
    // "Except at pools, set in ...  Shear bond: ..." makes the exception for the figure too.
    boolean excepts = sameWork && l.exposures().isEmpty() && l.except().isEmpty();
    return new Limits(
        previous.tags(),
        previous.glass(),
        previous.otherTile(),
        l.exposures(),
        excepts ? previous.except() : l.except(),
        l.surfaces(),
        l.with());
  }

  /**
   * "Cover GF-1 against rain. No acid." forbids acid on every tile: rules of the site are limited
   * by their own sentence alone.
   *
   * @param from the first statement of the sentence
   * @param said what the sentence itself is limited to
   */
  public static void rulesOfTheSite(List<Statement> out, int from, Limits said) {
    for (int i = from; i < out.size(); i++) {
      Statement s = out.get(i);
      if (SITE.contains(s.attribute())) out.set(i, s.withLimits(said.anywhere()));
    }
  }

  /**
   * "Keep GF-1 dry for a week. Fill the pool after 28 days": of rules of the work neither sentence
   * speaks of the other's tile.
   *
   * @param said what the sentence itself is limited to, within its lead-in
   */
  public static Limits ofItsOwn(String attribute, Limits limits, Limits said) {
    boolean carried = ofTheWork(attribute) && !said.tags().containsAll(limits.tags());
    return carried ? limits.withTags(Set.of()) : limits;
  }

  private static boolean ofTheWork(String attribute) {
    return attribute.startsWith("process.cure") || attribute.equals("grout.reach");
  }

  /** Tiles that a text tells apart, sentence by sentence or item by item. */
  public static final class Contrast {
    private final Set<String> first = new TreeSet<>();
    private boolean told;

    public void note(Set<String> tags) {
      if (tags.isEmpty()) return;
      if (first.isEmpty()) first.addAll(tags);
      else told |= tags.stream().noneMatch(first::contains);
    }

    /** Of several tiles told apart before it a sentence that names none means no single one. */
    public Limits carried(Limits previous) {
      return told ? previous.withTags(Set.of()) : previous;
    }
  }

  /**
   * @param from the first statement of the part that the exception follows
   * @param previous limits of that part
   */
  public static Limits exceptFrom(
      List<Statement> out, int from, Limits previous, List<Limits> exceptions) {
    Exclusions except = left(exceptions);
    boolean glass = exceptions.stream().anyMatch(e -> e.glass() && e.tags().isEmpty());
    if (except.isEmpty() && glass) glassLeftOut(out, from);
    if (except.isEmpty()) return previous;
    for (int i = 0; i < out.size(); i++) {
      Statement s = out.get(i);
      Limits l = s.limits();
      // Of what is carried by walls, slabs and decks alike the places were left out.
      boolean same =
          l == previous || l.equals(previous) || i >= from && l.equals(previous.anywhere());
      if (!same) continue;
      out.set(i, s.withLimits(l.withExcept(except)));
    }
    return previous.withExcept(except);
  }

  /** "Joints 20 ft apart in dry rooms. For GT-14 see the notes": what was said is not for GT-14. */
  public static void saidElsewhere(List<Statement> out, Set<String> tags) {
    for (int i = 0; i < out.size(); i++) {
      Statement s = out.get(i);
      Limits l = s.limits();
      if (l.tags().isEmpty()) out.set(i, s.withLimits(l.withExcept(l.except().andTags(tags))));
    }
  }

  /** "Comply with ANSI A137.1, the exception is glass tile." */
  private static void glassLeftOut(List<Statement> out, int from) {
    for (int i = from; i < out.size(); i++) {
      Statement s = out.get(i);
      Limits l = s.limits();
      boolean named = !l.tags().isEmpty();
      if (!named) out.set(i, s.withLimits(l.ofOtherTile().notGlass()));
    }
  }

  /** What is left out where these are: of several limits at once nothing, as one may be apart. */
  public static Exclusions left(List<Limits> named) {
    return named.stream().map(LaterWords::left).reduce(Exclusions.NOTHING, Exclusions::and);
  }

  private static Exclusions left(Limits l) {
    Set<String> terms = new TreeSet<>(l.surfaces());
    l.with().values().forEach(terms::addAll);
    long kinds =
        Stream.concat(Stream.of(l.tags(), l.exposures(), l.surfaces()), l.with().values().stream())
            .filter(kind -> !kind.isEmpty())
            .count();
    return kinds == 1 ? new Exclusions(l.tags(), l.exposures(), terms) : Exclusions.NOTHING;
  }
}
