package clearbed.resolve.product;

import clearbed.model.value.Content;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.entry.Draft;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Marks that stand for a mortar, a grout or a membrane: "MB-1 is a white mortar, ANSI A118.15".
 * What is said of one is said of the tiles whose rows or clauses call for it, and of no others.
 */
public final class Components {
  /** What a class of an adhesive says of it. */
  private static final Set<String> TOLD_BY_CLASS =
      Set.of("mortar.isoClass", "mortar.chemistry", "mortar.standard", "mortar.deformability");

  /** What is supposed of a mortar where a standard or a resin may be of a grout as well. */
  private static final Set<String> SUPPOSED =
      Set.of("mortar.standard", "mortar.chemistry", "grout.standard", "grout.type");

  private static final Pattern CLASS_CODE = Pattern.compile("\\b[CDRS][12](?![\\w.])");

  private final Vocabulary vocabulary;
  private final Map<String, Draft> drafts;
  private final ComponentMarks marks;
  private final ComponentUsers users;

  /**
   * @param drafts what schedules have
   */
  public Components(Vocabulary vocabulary, List<Facts> facts, Map<String, Draft> drafts) {
    this.vocabulary = vocabulary;
    this.drafts = drafts;
    this.marks = new ComponentMarks(vocabulary, facts, drafts);
    this.users = new ComponentUsers(vocabulary, drafts, marks);
  }

  /**
   * "G1 | Epoxy grout | ANSI A118.3": a standard of two parts of the work is of the one that the
   * row describes, and the chemistry of the other is not said.
   */
  private Optional<Statement> ofItsWork(ScheduleRow row, Statement s) {
    String work = vocabulary.family(row.evidence());
    boolean other = ComponentMarks.WORKS.contains(work) && !s.family().equals(work);
    if (!other || !SUPPOSED.contains(s.attribute())) return Optional.of(s);
    String meant = work + ".standard";
    boolean both =
        s.content() instanceof Content.Standard standard
            && vocabulary.standards().states(standard.designation(), meant);
    return both ? Optional.of(s.of(meant)) : Optional.empty();
  }

  /** Finds the tiles that call for the marks, once all tiles are known. */
  public void gather(List<Facts> facts) {
    users.gather(facts);
  }

  /** What the rows of the marks state for which a tile calls. */
  public List<Statement> called(Draft tile) {
    List<Statement> out = new ArrayList<>();
    marks.parts.forEach(
        (mark, part) -> {
          if (!users.of(mark).contains(tile.key)) return;
          for (ScheduleRow row : part.rows)
            for (Statement s : row.statements())
              if (ComponentMarks.WORKS.contains(s.family())) ofItsWork(row, s).ifPresent(out::add);
        });
    if (out.isEmpty()) return out;
    // "A1 white" of an adhesive that is made in white and in grey.
    Map<String, Set<Content>> own = new HashMap<>();
    for (ScheduleRow row : tile.rows)
      for (Statement s : row.statements())
        own.computeIfAbsent(s.attribute(), any -> new HashSet<>()).add(s.content());
    Set<String> chosen = new HashSet<>();
    for (Statement s : out)
      if (own.getOrDefault(s.attribute(), Set.of()).contains(s.content()))
        chosen.add(s.attribute());
    out.removeIf(s -> chosen.contains(s.attribute()));
    return out;
  }

  /** Keys of rows that stand for a part of the work, of letters that tiles call: no tiles. */
  public Set<String> called() {
    Set<String> letters = users.letters();
    return marks.parts.keySet().stream()
        .filter(key -> letters.contains(Tags.prefix(key)))
        .collect(Collectors.toSet());
  }

  /** Keys of the marks. */
  public Set<String> keys() {
    return marks.works.keySet();
  }

  /**
   * What a clause states, said of the tiles that call for the marks it names; null where no tile
   * calls for them but for others of their kind.
   */
  public Statement followed(Clause clause, Statement s) {
    if (isMarkReadAsClass(s)) return null;
    if (s.limits().tags().isEmpty()) return numbered(clause, s);
    Set<String> named = ComponentMarks.keys(s.limits().tags());
    boolean stray =
        named.stream().noneMatch(k -> drafts.containsKey(k) || marks.works.containsKey(k));
    // "Screed CT-C25" below the title of a tile is a class of screed: the title still limits it.
    Set<String> above = stray ? ComponentMarks.keys(clause.limits().tags()) : Set.of();
    if (above.stream().anyMatch(drafts::containsKey))
      return s.withLimits(s.limits().withTags(above));
    if (marks.works.isEmpty()) return s;
    Set<String> own = new TreeSet<>(named);
    own.retainAll(marks.works.keySet());
    if (own.isEmpty()) return s;
    named.removeAll(own);
    named.retainAll(drafts.keySet());
    if (!named.isEmpty()) return s.withLimits(s.limits().withTags(named));
    String work = s.family();
    // "The net is compatible with adhesive A1" is said of the tile above it, not of the adhesive.
    Set<String> subject = users.glass(clause.limits().tags());
    // Below a title the words may open with the adhesive: "Mesh, suits A1" under "GT-1 Mosaic".
    if (subject.isEmpty()) subject = users.glass(TagFinder.tags(clause.heading(), vocabulary));
    boolean ofTheTile = work.equals("tile") || work.equals("substrate");
    // "Glue of mesh sheets: compatible with mortar M1" tells of no tile that M1 sets how it is
    // made.
    boolean nature = work.equals("tile") && s.content() instanceof Content.Term;
    if (ofTheTile && (nature || !subject.isEmpty()) && !marks.works.containsValue(work))
      return s.withLimits(s.limits().withTags(subject));
    // "A108.5 (Mortar A). Sheets of all kinds: A108.16": the name goes no further than its
    // sentence.
    boolean ofWork = own.stream().anyMatch(mark -> work.equals(marks.works.get(mark)));
    if (!ofWork && own.stream().allMatch(mark -> isCarried(mark, s)))
      return s.withLimits(s.limits().withTags(Set.of()));
    Set<String> tiles = new TreeSet<>();
    for (String mark : own) tiles.addAll(users.of(mark));
    for (String mark : own) {
      Set<String> others = users.ofWork(marks.works.get(mark));
      meant(clause).stream().filter(tile -> !others.contains(tile)).forEach(tiles::add);
    }
    boolean forAll = vocabulary.list("clause.forAll").in(clause.text());
    if (tiles.isEmpty() && forAll && own.stream().allMatch(mark -> users.of(mark).isEmpty()))
      tiles = uncalled(own);
    if (!tiles.isEmpty()) return s.withLimits(Limits.ofTags(tiles, s.limits().except()));
    return !users.ofWork(work).isEmpty() ? null : s;
  }

  /** True of "Mortar A" where the words themselves do not name it. */
  private static boolean isCarried(String mark, Statement s) {
    return mark.indexOf(' ') > 0 && !s.asWritten().toUpperCase(Locale.ROOT).contains(mark);
  }

  /** "K2 is laid on D2", where D2 is a membrane and no dispersion adhesive. */
  private boolean isMarkReadAsClass(Statement s) {
    if (marks.works.isEmpty() || !TOLD_BY_CLASS.contains(s.attribute())) return false;
    Matcher code = CLASS_CODE.matcher(s.asWritten());
    while (code.find())
      if (marks.works.containsKey(Tags.key(code.group()))) return !Citations.mayCite(s.asWritten());
    return false;
  }

  /** What a clause states that tiles call by its number; null where they call for others. */
  private Statement numbered(Clause clause, Statement s) {
    String number = ComponentMarks.numberOf(clause);
    String work = marks.works.getOrDefault(number, "");
    if (work.isEmpty() || !s.attribute().startsWith(work + ".")) return s;
    Set<String> tiles = users.of(number);
    if (!tiles.isEmpty()) return s.withLimits(Limits.ofTags(tiles, s.limits().except()));
    return !users.ofWork(work).isEmpty() ? null : s;
  }

  /** "JS-1: silicone. All wall joints": who calls for no other mark of its kind is left with it. */
  private Set<String> uncalled(Set<String> own) {
    Set<String> out = new TreeSet<>();
    drafts.values().stream().filter(d -> d.glass).forEach(d -> out.add(d.key));
    for (String mark : own) out.removeAll(users.ofWork(marks.works.get(mark)));
    return out;
  }

  /** The tiles that the clause itself says its marks are for: by tag, or all of glass. */
  private Set<String> meant(Clause clause) {
    Set<String> tiles = users.glass(TagFinder.tags(PlainText.of(clause.text()), vocabulary));
    if (!tiles.isEmpty() || !clause.subject().glass()) return tiles;
    return drafts.values().stream()
        .filter(d -> d.glass)
        .map(d -> d.key)
        .collect(Collectors.toSet());
  }
}
