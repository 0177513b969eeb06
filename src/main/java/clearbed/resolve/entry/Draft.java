package clearbed.resolve.entry;

import clearbed.model.document.Origin;
import clearbed.model.value.Content;
import clearbed.model.value.Scope;
import clearbed.model.value.Value;
import clearbed.recognise.schedule.row.RoomUse;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.statement.code.Tags;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * An entry while its values are being gathered. Until it is opened it only knows what speaks of it,
 * as there may be hundreds of thousands.
 */
public final class Draft {
  private static final Pattern WORDS = Pattern.compile("[^\\p{L}]+");

  public final String tag;
  public final String key;
  public Origin origin;
  private ScheduleRow most;
  private Map<String, Set<String>> terms;
  private Set<String> said;
  private Set<Twin> twins;
  public Map<String, Origin> blanks;
  public List<Value> values;
  public List<Value> superseded = List.of();
  public final List<Origin> places = new ArrayList<>(1);
  public final List<ScheduleRow> rows = new ArrayList<>(1);
  public final List<RoomUse> rooms = new ArrayList<>(0);

  /** Clauses under the heading of a tile that no schedule has. */
  public final List<Clause> about = new ArrayList<>(0);

  /** Clauses that make it a glass tile, and such as make it some other tile. */
  public final List<Clause> asGlass = new ArrayList<>(0);

  public final List<Clause> asOther = new ArrayList<>(0);

  public boolean glass;
  public boolean scheduled;
  public String evidence = "";

  public Draft(String tag, String key, Origin origin) {
    this.tag = tag;
    this.key = key;
    this.origin = origin;
  }

  /** A glass tile that a clause specifies and no schedule has. */
  public static Draft specified(String tag, String evidence, Clause clause) {
    Draft draft = new Draft(tag, Tags.key(tag), clause.origin());
    draft.glass = true;
    draft.evidence = evidence;
    draft.places.add(clause.origin());
    return draft;
  }

  /** A clause says that it is glass tile. */
  public void specifyAsGlass(Clause clause) {
    asGlass.add(clause);
    if (glass) return;
    glass = true;
    evidence = clause.text();
    places.add(clause.origin());
  }

  /** Neither a row nor a clause says what it is. */
  public boolean isUndecided() {
    return !glass && asOther.isEmpty() && rows.stream().noneMatch(ScheduleRow::decided);
  }

  /** Makes ready to take values. */
  public void open() {
    terms = new HashMap<>();
    said = new HashSet<>();
    twins = new HashSet<>();
    blanks = new LinkedHashMap<>();
    values = new ArrayList<>();
  }

  /** Lets go what was only needed to take values; of a large set it takes much memory. */
  public void close() {
    terms = null;
    said = null;
    twins = null;
  }

  /** Nothing says what it is, so that only few will ask what its rows state. */
  public boolean unasked() {
    return !glass && rows.stream().anyMatch(row -> !row.decided());
  }

  /** The row that says most of a tile is where people look for it. */
  public void scheduledAt(ScheduleRow row) {
    if (most != null && !saysMore(row, most)) return;
    most = row;
    origin = row.origin();
  }

  /** Of rows that do not say what the tile is the first will do: they make no glass entry. */
  private static boolean saysMore(ScheduleRow row, ScheduleRow than) {
    if (!row.decided() || !than.decided()) return row.decided() && !than.decided();
    return row.statements().size() > than.statements().size();
  }

  public Set<String> terms(String attribute) {
    return Collections.unmodifiableSet(terms.getOrDefault(attribute, Set.of()));
  }

  /**
   * @param room words of a room's name, in lower case
   */
  boolean isIn(String room) {
    Set<String> words = roomWords(room);
    return rooms().anyMatch(name -> roomWords(name).containsAll(words));
  }

  /** False where nothing names the room, so that it may be any. */
  boolean hasRoom() {
    return rooms().findAny().isPresent();
  }

  private Stream<String> rooms() {
    return values.stream()
        .filter(v -> v.attribute().equals("location.room") && !v.excluded())
        .map(Value::asWritten);
  }

  /** In lower case, of one or of many: "Restrooms 101, floor" has "restroom". */
  static Set<String> roomWords(String name) {
    Set<String> words = new HashSet<>();
    for (String word : WORDS.split(name.toLowerCase(Locale.ROOT))) {
      String one = word.endsWith("ies") ? word.substring(0, word.length() - 3) + "y" : word;
      words.add(one.endsWith("s") ? one.substring(0, one.length() - 1) : one);
    }
    return words;
  }

  public boolean says(String attribute) {
    return said.contains(attribute);
  }

  private record Twin(
      String attribute, Content content, boolean excluded, Scope scope, Origin origin) {}

  /** True where the same is said at the same place in other words. */
  public boolean tells(Value value) {
    Origin place = value.origin().withText("");
    return values.stream()
        .anyMatch(
            v ->
                v.attribute().equals(value.attribute())
                    && v.content().equals(value.content())
                    && v.excluded() == value.excluded()
                    && v.origin().withText("").equals(place));
  }

  public void add(Value value) {
    String attribute = value.attribute();
    boolean excluded = value.excluded();
    Twin twin = new Twin(attribute, value.content(), excluded, value.scope(), value.origin());
    if (!twins.add(twin)) return;
    values.add(value);
    if (excluded) return;
    if (!value.open()) said.add(attribute);
    if (value.content() instanceof Content.Term term) {
      terms.computeIfAbsent(attribute, key -> new LinkedHashSet<>()).add(term.text());
    }
  }

  public Value derived(String attribute, String term, Value from) {
    return new Value(
        attribute, new Content.Term(term), false, from.asWritten(), from.origin(), Scope.ENTRY);
  }
}
