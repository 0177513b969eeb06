package clearbed.resolve;

import clearbed.base.Parallel;
import clearbed.model.document.Origin;
import clearbed.model.document.Placed;
import clearbed.model.document.ThinList;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Scope;
import clearbed.model.value.Value;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.entry.Draft;
import clearbed.resolve.entry.Reach;
import clearbed.resolve.entry.Sayings;
import clearbed.resolve.product.CalledProducts;
import clearbed.resolve.product.Components;
import clearbed.resolve.product.LikeOthers;
import clearbed.resolve.product.SpecifiedProducts;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Queue;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Joins schedule rows, room schedules, section clauses and notes into entries. */
public final class Resolver {
  /** Entries that are worked on at a time, on all processors: what each takes is soon packed. */
  private static final int TOGETHER = 256;

  private final Vocabulary vocabulary;

  public Resolver(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * @param facts by document
   * @param known project facts from rule files
   */
  public Project resolve(List<Facts> facts, List<ProjectFact> known) {
    Map<String, Draft> drafts = new LinkedHashMap<>();
    ScheduledTiles.rows(facts, drafts);
    CalledProducts called = new CalledProducts(drafts);
    Components components = new Components(vocabulary, facts, drafts);
    SpecifiedProducts products =
        new SpecifiedProducts(vocabulary, facts, drafts, components.keys());
    products.add();
    LikeOthers likes = new LikeOthers(vocabulary, facts);
    likes.add(drafts);
    components.gather(facts);
    ScheduledTiles.rooms(facts, drafts);
    Set<String> tags = new TreeSet<>(drafts.keySet());
    for (Facts f : facts) f.rooms().forEach(r -> tags.add(Tags.key(r.tag())));
    tags.addAll(products.subjects());
    Reach reach = new Reach(vocabulary, tags, ScheduledTiles.roomsOfGlass(drafts));
    ClauseValues said = new ClauseValues(vocabulary, reach);
    Amendments amendments = new Amendments(vocabulary, facts);
    Sayings sayings =
        new Sayings(
            facts,
            reach,
            products.owned(),
            amendments.taken(),
            (clause, s) -> components.followed(clause, ofGlassAtLarge(called.meant(s), drafts)),
            said::mayState,
            said::value);
    Placed.Packer<Value> packer =
        new Placed.Packer<>(
            new Placed.Placing<>(Value::origin, Value::at),
            facts.stream().mapToInt(f -> f.rows().size()).sum());
    sayings.values(packer::hold);
    List<Entry> entries = new ArrayList<>();
    Queue<Draft> left = new ArrayDeque<>(drafts.values());
    Set<String> parts = components.called();
    left.removeIf(draft -> !draft.glass && parts.contains(draft.key));
    drafts.clear();
    while (!left.isEmpty()) {
      List<Draft> some = new ArrayList<>();
      while (!left.isEmpty() && some.size() < TOGETHER) some.add(left.poll());
      List<Runnable> stating = new ArrayList<>();
      for (Draft draft : some) {
        if (draft.unasked()) continue;
        stating.add(
            () -> {
              state(draft, components, sayings, known, said, amendments);
              draft.values = packer.pack(draft.values);
            });
      }
      Parallel.run(stating);
      for (Draft draft : some) {
        List<Value> values =
            draft.unasked() ? ThinList.late(() -> stated(draft, amendments, packer)) : draft.values;
        entries.add(entry(draft, values));
      }
    }
    return new Project(
        likes.completed(entries),
        facts.stream().map(f -> f.withoutStatements(called::decides)).toList(),
        tags,
        components.keys());
  }

  /** "No acid on glass tile (CP-1 is washed with it before)": the tag is of something else. */
  private static Statement ofGlassAtLarge(Statement s, Map<String, Draft> drafts) {
    Limits limits = s.limits();
    if (!limits.glass() || limits.tags().isEmpty() || !s.attribute().startsWith("process."))
      return s;
    boolean others =
        limits.tags().stream()
            .map(tag -> drafts.get(Tags.key(tag)))
            .allMatch(d -> d != null && !d.glass && d.rows.stream().anyMatch(ScheduleRow::decided));
    return others ? s.withLimits(limits.withTags(Set.of())) : s;
  }

  private void state(
      Draft draft,
      Components components,
      Sayings sayings,
      List<ProjectFact> known,
      ClauseValues said,
      Amendments amendments) {
    open(draft);
    components.called(draft).forEach(s -> draft.add(value(s, Scope.ENTRY, true)));
    if (draft.glass) gather(draft, sayings, known, said);
    sort(draft, amendments);
  }

  /** With what the schedules say of it. */
  private static void open(Draft draft) {
    draft.open();
    ScheduledTiles.scheduled(draft);
    ScheduledTiles.placed(draft);
  }

  /** What is stated of what is no glass tile, for those who ask. */
  private static List<Value> stated(
      Draft draft, Amendments amendments, Placed.Packer<Value> packer) {
    open(draft);
    sort(draft, amendments);
    return packer.pack(draft.values);
  }

  private void gather(Draft draft, Sayings sayings, List<ProjectFact> known, ClauseValues said) {
    project(draft, known.stream().filter(k -> k.attribute().startsWith("location.")).toList());
    Places places = new Places(vocabulary);
    places.derive(draft);
    if (said.addPlaces(sayings, draft)) places.derive(draft);
    said.add(sayings, draft);
    project(draft, known);
    new Materials(vocabulary).contradictions(draft);
  }

  private void project(Draft draft, List<ProjectFact> known) {
    for (ProjectFact fact : known) {
      boolean tag =
          fact.tags().isEmpty()
              || fact.tags().stream().anyMatch(t -> Tags.key(t).equals(draft.key));
      boolean exposure =
          fact.exposures().isEmpty()
              || draft.terms("location.exposure").stream()
                  .anyMatch(
                      e ->
                          fact.exposures().stream()
                              .anyMatch(p -> vocabulary.places().covers(p, e)));
      boolean room =
          fact.rooms().isEmpty()
              || draft.values.stream()
                  .filter(v -> v.attribute().equals("location.room"))
                  .anyMatch(
                      v ->
                          fact.rooms().stream()
                              .anyMatch(
                                  r ->
                                      v.asWritten()
                                          .toLowerCase(Locale.ROOT)
                                          .contains(r.toLowerCase(Locale.ROOT))));
      if (tag && exposure && room) {
        draft.add(
            new Value(
                fact.attribute(),
                fact.content(),
                false,
                fact.words(),
                Origin.ofDocument(fact.file()).withText(fact.words()),
                Scope.PROJECT,
                true));
      }
    }
  }

  static Value value(Statement s, Scope scope, boolean specific) {
    return new Value(
        s.attribute(), s.content(), s.excluded(), s.asWritten(), s.origin(), scope, specific);
  }

  /** As amended, by attribute and by how closely they are meant. */
  private static void sort(Draft d, Amendments amendments) {
    Map<String, Map<Scope, List<Value>>> parts = new HashMap<>();
    Amendments.Amended amended = amendments.applied(d.key, d.values);
    d.superseded = amended.superseded();
    for (Value v : amended.values()) {
      if (calls(v, amended.values())) continue;
      parts
          .computeIfAbsent(v.attribute(), attribute -> new EnumMap<>(Scope.class))
          .computeIfAbsent(v.scope(), scope -> new ArrayList<>())
          .add(v);
    }
    d.values = new ArrayList<>(d.values.size());
    new TreeMap<>(parts).values().forEach(byScope -> byScope.values().forEach(d.values::addAll));
    d.close();
  }

  /** "TS-2, back-buttered" beside what TS-2 stands for says nothing more. */
  private static boolean calls(Value v, List<Value> all) {
    if (!(v.content() instanceof Content.Words words)) return false;
    Set<String> tags = Tags.inOpening(words.text());
    return !tags.isEmpty()
        && words.text().startsWith(tags.iterator().next())
        && all.stream()
            .anyMatch(
                o ->
                    o.attribute().equals(v.attribute())
                        && o.scope() == Scope.ENTRY
                        && !(o.content() instanceof Content.Words));
  }

  private static Entry entry(Draft d, List<Value> values) {
    return new Entry(
        d.tag,
        d.glass,
        d.evidence,
        d.origin,
        new ArrayList<>(new LinkedHashSet<>(d.places)),
        values,
        d.superseded,
        d.blanks == null ? Map.of() : d.blanks);
  }
}
