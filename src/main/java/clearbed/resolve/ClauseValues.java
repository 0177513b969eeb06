package clearbed.resolve;

import clearbed.model.value.Content;
import clearbed.model.value.Scope;
import clearbed.model.value.Value;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.entry.Draft;
import clearbed.resolve.entry.OfClass;
import clearbed.resolve.entry.Reach;
import clearbed.resolve.entry.Sayings;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/** What clauses say of a tile, the closest of each scope. */
final class ClauseValues {
  /**
   * What a tile is like is its own business: an article on glass tile at large does not contradict
   * a schedule row.
   */
  private static final Set<String> OF_THE_TILE =
      Set.of(
          "tile.size",
          "tile.kind",
          "tile.translucency",
          "tile.backing",
          "tile.mounting",
          "tile.thickness");

  private final Vocabulary vocabulary;
  private final OfClass ofClass;
  private final Reach reach;

  ClauseValues(Vocabulary vocabulary, Reach reach) {
    this.vocabulary = vocabulary;
    this.ofClass = new OfClass(vocabulary);
    this.reach = reach;
  }

  /** Adds what clauses say of where it is, as cards and room sheets do; true if some do. */
  boolean addPlaces(Sayings sayings, Draft draft) {
    List<Candidate> placing = said(sayings, draft, this::placesIt);
    placing.stream().filter(c -> !draft.tells(c.value)).forEach(c -> draft.add(c.value));
    return !placing.isEmpty();
  }

  /** Adds all else that they say. */
  void add(Sayings sayings, Draft draft) {
    // What the tile is like, and what it is set and filled with, decides which clauses speak for
    // it.
    said(sayings, draft, s -> OF_THE_TILE.contains(s.attribute())).forEach(c -> draft.add(c.value));
    closest(said(sayings, draft, s -> classesIt(s) && isMeant(s, draft))).forEach(draft::add);
    Predicate<Statement> taken =
        s -> OF_THE_TILE.contains(s.attribute()) || placesIt(s) || classesIt(s);
    closest(said(sayings, draft, s -> !taken.test(s) && isMeant(s, draft))).forEach(draft::add);
  }

  private boolean isMeant(Statement s, Draft draft) {
    return !ofClass.isAnother(s, draft, reach.namesTag(s.limits()));
  }

  /** True of the class of its adhesive or grout, in words that name the tile. */
  private boolean classesIt(Statement s) {
    return OfClass.tellsClass(s) && reach.namesTag(s.limits());
  }

  /** True of where a tile is that the words name. */
  private boolean placesIt(Statement s) {
    return s.attribute().startsWith("location.") && reach.namesTag(s.limits());
  }

  private List<Candidate> said(Sayings sayings, Draft draft, Predicate<Statement> which) {
    List<Candidate> out = new ArrayList<>();
    for (Sayings.Saying s : sayings.of(draft.key))
      if (which.test(s.statement())) candidate(out, s, draft);
    return out;
  }

  private record Candidate(Value value, int fit) {}

  private void candidate(List<Candidate> out, Sayings.Saying saying, Draft draft) {
    Statement s = saying.statement();
    int fit = reach.of(s.limits(), draft);
    if (fit == Reach.NOT) return;
    boolean ownNature = OF_THE_TILE.contains(s.attribute());
    boolean open = s.content() instanceof Content.Open;
    if (ownNature && !reach.namesTag(s.limits()) && !open && draft.says(s.attribute())) return;
    out.add(new Candidate(saying.value(), fit));
  }

  /** The value that a statement gives to every tile that its section speaks for. */
  Value value(Section section, Statement s) {
    boolean tag = reach.namesTag(s.limits());
    Scope scope = tag ? Scope.ENTRY : section.article() ? Scope.ARTICLE : Scope.GENERAL;
    boolean ownNature = OF_THE_TILE.contains(s.attribute());
    return Resolver.value(s, scope, tag || s.limits().glass() && !ownNature);
  }

  /** Words that name no tile of the set count for what their section is about. */
  boolean mayState(Section section, Statement s) {
    if (section.speaksForAll())
      return section.article()
          || section.notes()
          || s.limits().glass()
          || s.limits().tags().isEmpty();
    return vocabulary
        .attribute(s.attribute())
        .map(a -> section.families().contains(a.family()))
        .orElse(true);
  }

  /**
   * Of clauses of one scope on one attribute, one made for this case displaces one for all cases.
   */
  private static List<Value> closest(List<Candidate> candidates) {
    Map<String, Map<Scope, Integer>> best = new HashMap<>();
    for (Candidate c : candidates) {
      if (displaceable(c.value))
        best.computeIfAbsent(c.value.attribute(), attribute -> new EnumMap<>(Scope.class))
            .merge(c.value.scope(), conditions(c.fit), Math::max);
    }
    List<Value> out = new ArrayList<>(candidates.size());
    for (Candidate c : candidates) {
      boolean displaced =
          displaceable(c.value)
              && conditions(c.fit) < best.get(c.value.attribute()).get(c.value.scope());
      if (!displaced) out.add(c.value);
    }
    return out;
  }

  private static int conditions(int fit) {
    return fit / 10;
  }

  private static boolean displaceable(Value v) {
    boolean union =
        v.attribute().equals("movement.places")
            || v.attribute().startsWith("sealant.")
            || v.attribute().startsWith("membrane.")
            || v.attribute().equals("substrate.type");
    return !(v.content() instanceof Content.Required)
        && !(v.content() instanceof Content.Open)
        && !v.excluded()
        && !union;
  }
}
