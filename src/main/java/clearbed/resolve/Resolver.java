package clearbed.resolve;

import clearbed.base.Parallel;
import clearbed.model.Content;
import clearbed.model.Entry;
import clearbed.model.Origin;
import clearbed.model.Placed;
import clearbed.model.Scope;
import clearbed.model.ThinList;
import clearbed.model.Value;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.RoomUse;
import clearbed.recognise.schedule.RowReader;
import clearbed.recognise.schedule.ScheduleRow;
import clearbed.recognise.section.Section;
import clearbed.recognise.statement.Limits;
import clearbed.recognise.statement.Statement;
import clearbed.recognise.statement.Tags;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Queue;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Joins schedule rows, room schedules, section clauses and notes into entries. */
public final class Resolver {
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

  private static final Pattern SIZE_BEHIND =
      Pattern.compile(
          "(?:,? in)? ?\\(?(\\d[\\d.,/ -]{0,8}(?:mm|cm|in\\.?|\"|')? ?[x\u00d7] ?\\d[^;()]{0,24})");

  /** Entries that are worked on at a time, on all processors: what each takes is soon packed. */
  private static final int TOGETHER = 256;

  private final Vocabulary vocabulary;
  private final OfClass ofClass;

  public Resolver(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.ofClass = new OfClass(vocabulary);
  }

  /**
   * @param facts by document
   * @param known project facts from rule files
   */
  public Project resolve(List<Facts> facts, List<ProjectFact> known) {
    Map<String, Draft> drafts = new LinkedHashMap<>();
    rows(facts, drafts);
    CalledProducts called = new CalledProducts(drafts);
    Components components = new Components(vocabulary, facts, drafts);
    SpecifiedProducts products =
        new SpecifiedProducts(vocabulary, facts, drafts, components.keys());
    products.add();
    LikeOthers likes = new LikeOthers(vocabulary, facts);
    likes.add(drafts);
    components.gather(facts);
    rooms(facts, drafts);
    Set<String> tags = new TreeSet<>(drafts.keySet());
    for (Facts f : facts) f.rooms().forEach(r -> tags.add(Tags.key(r.tag())));
    tags.addAll(products.subjects());
    Reach reach = new Reach(vocabulary, tags, roomsOfGlass(drafts));
    Amendments amendments = new Amendments(vocabulary, facts);
    Sayings sayings =
        new Sayings(
            facts,
            reach,
            products.owned(),
            amendments.taken(),
            (clause, s) -> components.followed(clause, ofGlassAtLarge(called.meant(s), drafts)),
            this::mayState,
            (s, st) -> value(s, st, reach));
    Placed.Packer<Value> packer =
        new Placed.Packer<>(
            new Placed.Place<>(Value::origin, Value::at),
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
              state(draft, components, sayings, known, reach, amendments);
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
        facts.stream().map(Facts::withoutStatements).toList(),
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
      Reach reach,
      Amendments amendments) {
    open(draft);
    components.called(draft).forEach(s -> draft.add(value(s, Scope.ENTRY, true)));
    if (draft.glass) gather(draft, sayings, known, reach);
    sort(draft, amendments);
  }

  /** With what the schedules say of it. */
  private static void open(Draft draft) {
    draft.open();
    scheduled(draft);
    placed(draft);
  }

  /** What is stated of what is no glass tile, for those who ask. */
  private static List<Value> stated(
      Draft draft, Amendments amendments, Placed.Packer<Value> packer) {
    open(draft);
    sort(draft, amendments);
    return packer.pack(draft.values);
  }

  private void gather(Draft draft, Sayings sayings, List<ProjectFact> known, Reach reach) {
    project(draft, known.stream().filter(k -> k.attribute().startsWith("location.")).toList());
    Places places = new Places(vocabulary);
    places.derive(draft);
    // Cards and room sheets say where a tile is in sentences, too.
    List<Candidate> placing = said(sayings, draft, reach, s -> placesIt(s, reach));
    placing.stream().filter(c -> !draft.tells(c.value)).forEach(c -> draft.add(c.value));
    if (!placing.isEmpty()) places.derive(draft);
    clauses(sayings, draft, reach);
    project(draft, known);
    new Materials(vocabulary).contradictions(draft);
  }

  private static void rows(List<Facts> facts, Map<String, Draft> drafts) {
    Map<ScheduleRow, Set<String>> notes = keynotes(facts);
    for (Facts f : facts) {
      for (ScheduleRow row : f.rows()) {
        if (notes.containsKey(row)) continue;
        Draft draft =
            drafts.computeIfAbsent(
                Tags.key(row.tag()), key -> new Draft(row.tag(), key, row.origin()));
        draft.scheduled = true;
        draft.glass |= row.glass();
        if (draft.evidence.isEmpty() || row.glass() || row.decided())
          draft.evidence = row.evidence();
        draft.places.add(row.origin());
        draft.scheduledAt(row);
        draft.rows.add(row);
      }
    }
    notes.forEach(
        (row, keys) -> {
          for (String key : keys) {
            Draft draft = drafts.get(key);
            if (draft == null) continue;
            draft.rows.add(row);
            draft.glass |= row.glass();
            draft.places.add(row.origin());
          }
        });
  }

  /**
   * "A4 | Glass tile GT-104 at the showers" is a keynote on GT-104, which other rows schedule, and
   * A4 no tile.
   */
  private static Map<ScheduleRow, Set<String>> keynotes(List<Facts> facts) {
    Map<String, Integer> scheduled = new HashMap<>();
    Set<String> glass = new HashSet<>();
    for (Facts f : facts) {
      for (ScheduleRow row : f.rows()) {
        scheduled.merge(Tags.key(row.tag()), 1, Integer::sum);
        if (row.glass()) glass.add(Tags.key(row.tag()));
      }
    }
    Map<ScheduleRow, Set<String>> notes = new LinkedHashMap<>();
    for (Facts f : facts) {
      for (ScheduleRow row : f.rows()) {
        if (!row.tagged() || !Tags.isMark(row.tag())) continue;
        String own = Tags.key(row.tag());
        // "GT-01 | SL3" in a table of joints calls a sealant and describes nothing; "K2 | GT-01" is
        // on the tile.
        String only = row.evidence().strip();
        boolean ofTile = glass.contains(Tags.key(only)) && !glass.contains(own);
        if (Tags.isMark(only) && !ofTile) continue;
        Set<String> named = new TreeSet<>();
        for (String tag : Tags.inOpening(row.evidence())) {
          String key = Tags.key(tag);
          boolean other = !Tags.prefix(key).equals(Tags.prefix(own));
          if (other && scheduled.containsKey(key)) named.add(key);
        }
        if (!named.isEmpty()) notes.put(row, named);
      }
    }
    return notes;
  }

  private static void scheduled(Draft draft) {
    for (ScheduleRow row : draft.rows) {
      row.blanks().forEach(draft.blanks::putIfAbsent);
      for (Statement s : row.statements())
        if (!s.attribute().equals(RowReader.MARK)) draft.add(value(s, Scope.ENTRY, true));
    }
  }

  private static void rooms(List<Facts> facts, Map<String, Draft> drafts) {
    for (Facts f : facts) {
      for (RoomUse use : f.rooms()) {
        Draft draft = drafts.get(Tags.key(use.tag()));
        if (draft != null) draft.rooms.add(use);
      }
    }
  }

  private static void placed(Draft draft) {
    for (RoomUse use : draft.rooms) {
      sized(draft, use);
      if (!use.room().isBlank())
        draft.add(
            new Value(
                "location.room",
                new Content.Words(use.room()),
                false,
                use.room(),
                use.origin(),
                Scope.ENTRY));
      if (!use.exposure().isBlank())
        draft.add(
            new Value(
                "location.exposure",
                new Content.Words(use.exposure()),
                false,
                use.exposure(),
                use.origin(),
                Scope.ENTRY));
      draft.add(
          new Value(
              "location.surface",
              new Content.Term(use.surface()),
              false,
              use.origin().text(),
              use.origin(),
              Scope.ENTRY));
    }
  }

  /** As the schedules and the lists of rooms name them. */
  private static Set<String> roomsOfGlass(Map<String, Draft> drafts) {
    Set<String> out = new TreeSet<>();
    for (Draft draft : drafts.values()) {
      if (!draft.glass) continue;
      draft.rooms.forEach(use -> out.add(use.room()));
      for (ScheduleRow row : draft.rows)
        for (Statement s : row.statements())
          if (s.attribute().equals("location.room")) out.add(s.asWritten());
    }
    return out;
  }

  /** "GF-01 (100 x 250 mm) in shower": what a list of rooms says of the size of its tile. */
  private static void sized(Draft draft, RoomUse use) {
    String text = use.origin().text();
    int at = text == null ? -1 : text.indexOf(use.tag());
    if (at < 0) return;
    Matcher size = SIZE_BEHIND.matcher(text).region(at + use.tag().length(), text.length());
    if (!size.lookingAt()) return;
    Quantities.size(size.group(1), null)
        .filter(found -> found.sides().size() > 1)
        .ifPresent(
            found ->
                draft.add(new Value("tile.size", found, false, text, use.origin(), Scope.ENTRY)));
  }

  private void clauses(Sayings sayings, Draft draft, Reach reach) {
    // Two passes: what the tile is like decides which clauses speak for it.
    said(sayings, draft, reach, s -> OF_THE_TILE.contains(s.attribute()))
        .forEach(c -> draft.add(c.value));
    List<Candidate> second =
        said(
            sayings,
            draft,
            reach,
            s ->
                !OF_THE_TILE.contains(s.attribute())
                    && !placesIt(s, reach)
                    && !ofClass.isAnother(s, draft, reach.namesTag(s.limits())));
    closest(second).forEach(draft::add);
  }

  /** True of where a tile is that the words name. */
  private static boolean placesIt(Statement s, Reach reach) {
    return s.attribute().startsWith("location.") && reach.namesTag(s.limits());
  }

  private static List<Candidate> said(
      Sayings sayings, Draft draft, Reach reach, Predicate<Statement> which) {
    List<Candidate> out = new ArrayList<>();
    for (Sayings.Saying s : sayings.of(draft.key))
      if (which.test(s.statement())) candidate(out, s, draft, reach);
    return out;
  }

  private record Candidate(Value value, int fit) {}

  private static void candidate(
      List<Candidate> out, Sayings.Saying saying, Draft draft, Reach reach) {
    Statement s = saying.statement();
    int fit = reach.of(s.limits(), draft);
    if (fit == Reach.NOT) return;
    boolean ownNature = OF_THE_TILE.contains(s.attribute());
    boolean open = s.content() instanceof Content.Open;
    if (ownNature && !reach.namesTag(s.limits()) && !open && draft.says(s.attribute())) return;
    out.add(new Candidate(saying.value(), fit));
  }

  private static Value value(Section section, Statement s, Reach reach) {
    boolean tag = reach.namesTag(s.limits());
    Scope scope = tag ? Scope.ENTRY : section.article() ? Scope.ARTICLE : Scope.GENERAL;
    boolean ownNature = OF_THE_TILE.contains(s.attribute());
    return value(s, scope, tag || s.limits().glass() && !ownNature);
  }

  /** Words that name no tile of the set count for what their section is about. */
  private boolean mayState(Section section, Statement s) {
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

  private void project(Draft draft, List<ProjectFact> known) {
    for (ProjectFact fact : known) {
      boolean tag =
          fact.tags().isEmpty()
              || fact.tags().stream().anyMatch(t -> Tags.key(t).equals(draft.key));
      boolean exposure =
          fact.exposures().isEmpty()
              || draft.terms("location.exposure").stream()
                  .anyMatch(e -> fact.exposures().stream().anyMatch(p -> vocabulary.covers(p, e)));
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
    Amendments.Result amended = amendments.applied(d.key, d.values);
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
