package clearbed.resolve.product;

import clearbed.model.document.Origin;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Scope;
import clearbed.model.value.Value;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.Likeness;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.TermReader;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.entry.Draft;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Tiles that are as another one but for what is said of them: "GT-2: same as GT-1, except 2 x 2
 * inch". What is said of the other by its mark holds for them, too, where they say nothing
 * themselves.
 */
public final class LikeOthers {
  /** Between the mark of the tile and the words stands what it is, or nothing. */
  private static final int LONGEST_NAME = 40;

  /** Tiles that are like one that is like one. */
  private static final int CHAIN = 4;

  /** Each of these says what the others say: of one that is given the others are not taken over. */
  private static final List<Set<String>> ALIKE =
      List.of(
          Set.of("mortar.standard", "mortar.isoClass", "mortar.chemistry", "mortar.deformability"),
          Set.of("grout.standard", "grout.isoClass", "grout.type"));

  private static final String LOCATION = "location.";
  private static final String ROOM = "location.room";
  private static final List<String> PLACES = List.of("location.surface", "location.exposure");
  private static final Pattern STOPS = Pattern.compile("[,;]\\s+|\\.\\s+(?=\\p{Lu})");

  private static final Set<String> OF_SETTING =
      Set.of("mortar", "grout", "substrate", "membrane", "sealant", "movement");

  /** What is said of one tile and of no other like it. */
  private static final Set<String> OWN = Set.of("location.area", "tile.kind", "notes");

  /**
   * @param differs what is said behind the mark of the other
   * @param setting true where only what it is set with is the same
   */
  private record Like(
      String tag, String of, String differs, boolean setting, Clause clause, ScheduleRow row) {
    Origin origin() {
      return clause == null ? row.origin() : clause.origin();
    }

    String words() {
      return clause == null ? row.evidence() : clause.text();
    }
  }

  private final Vocabulary vocabulary;
  private final TermReader terms;

  /** By the key of the tile that is like another. */
  private final Map<String, Like> likes = new LinkedHashMap<>();

  public LikeOthers(Vocabulary vocabulary, List<Facts> facts) {
    this.vocabulary = vocabulary;
    this.terms = new TermReader(vocabulary);
    for (Facts f : facts) {
      for (ScheduleRow row : f.rows()) if (row.tagged()) note(row.tag(), row.evidence(), null, row);
      for (Section section : f.sections()) section.clauses().forEach(this::clause);
    }
  }

  private void clause(Clause clause) {
    TagFinder.TagsAt own = TagFinder.firstTags(PlainText.of(clause.text()), vocabulary);
    boolean opens = own != null && own.start() == 0 && own.tags().size() == 1;
    if (opens && !clause.listsReferences()) note(own.tags().get(0), clause.text(), clause, null);
  }

  /** Words that open with what the tile is, at most, before they say what it is like. */
  private void note(String tag, String words, Clause clause, ScheduleRow row) {
    String plain = PlainText.of(words);
    String key = Tags.key(tag);
    Likeness like =
        Likeness.in(
            plain,
            vocabulary,
            mark -> Tags.isMark(mark, vocabulary) && !Tags.key(mark).equals(key));
    if (like == null) return;
    String before = plain.substring(0, like.start());
    String name = before.startsWith(tag) ? before.substring(tag.length()) : before;
    String called = name.replaceAll("[\\s,;:.|-]+", " ").strip();
    boolean setting = vocabulary.list("resolves.asSet").in(called);
    boolean names =
        called.isEmpty()
            || called.length() <= LONGEST_NAME
                && (TileWords.tile(called) || vocabulary.glass().describesTile(called))
                && called.chars().noneMatch(Character::isDigit);
    String differs = plain.substring(like.end());
    if (names)
      likes.putIfAbsent(key, new Like(tag, Tags.key(like.mark()), differs, setting, clause, row));
  }

  /** Makes glass of what is like a tile of glass, and an entry of it where it has none. */
  public void add(Map<String, Draft> drafts) {
    for (int i = 0; i < CHAIN; i++)
      likes.forEach(
          (key, like) -> {
            Draft of = drafts.get(like.of);
            Draft draft = drafts.get(key);
            boolean other =
                draft != null
                    && (draft.glass
                        || !draft.asOther.isEmpty()
                        || draft.rows.stream().anyMatch(ScheduleRow::decided));
            if (of == null || !of.glass || other) return;
            if (draft == null && like.clause == null) return;
            if (draft == null) {
              draft = new Draft(like.tag, key, like.clause.origin());
              draft.places.add(like.clause.origin());
              drafts.put(key, draft);
            }
            draft.glass = true;
            draft.evidence = like.words();
            if (like.clause != null) draft.asGlass.add(like.clause);
          });
  }

  /** The surfaces or exposures of "on floor of Guest Bath 314" among what differs. */
  private Set<String> placed(String attribute, String differs) {
    Set<String> out = new LinkedHashSet<>();
    for (String part : STOPS.split(differs))
      // "On floor of Guest Bath 314" is where a tile is.
      if (vocabulary.list("resolves.where").matches(part) && vocabulary.family(part).isEmpty())
        out.addAll(terms.in(attribute, part));
    return out;
  }

  /** The entries, with what holds for them of others. */
  public List<Entry> completed(List<Entry> entries) {
    if (likes.isEmpty()) return entries;
    Map<String, Entry> now = new HashMap<>();
    entries.forEach(entry -> now.put(Tags.key(entry.tag()), entry));
    for (int i = 0; i < CHAIN; i++)
      likes.forEach(
          (key, like) -> {
            Entry own = now.get(key);
            Entry of = now.get(like.of);
            if (own != null && of != null && own.glass() && of.glass())
              now.put(key, with(own, of, like));
          });
    return entries.stream().map(entry -> now.get(Tags.key(entry.tag()))).toList();
  }

  private static boolean isOfSetting(Value value) {
    String attribute = value.attribute();
    return OF_SETTING.contains(attribute.substring(0, Math.max(0, attribute.indexOf('.'))));
  }

  private Entry with(Entry own, Entry of, Like like) {
    Set<String> said = new HashSet<>();
    for (Value value : own.values()) if (value.scope() == Scope.ENTRY) said.add(value.attribute());
    List<Value> values = new ArrayList<>(own.values());
    for (String attribute : PLACES) {
      if (said.contains(attribute) || terms.in(attribute, like.differs).isEmpty()) continue;
      // It is somewhere else, should it not be clear where.
      said.add(attribute);
      for (String term : placed(attribute, like.differs))
        values.add(
            new Value(
                attribute,
                new Content.Term(term),
                false,
                like.words(),
                like.origin(),
                Scope.ENTRY));
    }
    for (Set<String> alike : ALIKE) if (alike.stream().anyMatch(said::contains)) said.addAll(alike);
    // Whose own place is said is not where the other is.
    if (said.stream().anyMatch(attribute -> attribute.startsWith(LOCATION))) said.add(ROOM);
    said.addAll(OWN);
    boolean thick =
        own.values("tile.size").stream()
            .anyMatch(v -> v.content() instanceof Content.Size size && size.sides().size() > 2);
    if (thick) said.add("tile.thickness");
    for (Value value : of.values())
      if (value.scope() == Scope.ENTRY
          && !said.contains(value.attribute())
          && (!like.setting || isOfSetting(value))) values.add(value);
    if (values.size() == own.values().size()) return own;
    values.sort(Comparator.comparing(Value::attribute).thenComparing(Value::scope));
    return new Entry(
        own.tag(),
        own.glass(),
        own.evidence(),
        own.origin(),
        own.places(),
        values,
        own.superseded(),
        own.blanks());
  }
}
