package clearbed.resolve;

import clearbed.model.Content;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.RowReader;
import clearbed.recognise.schedule.ScheduleRow;
import clearbed.recognise.section.Clause;
import clearbed.recognise.section.Section;
import clearbed.recognise.statement.Citations;
import clearbed.recognise.statement.ClauseNumbers;
import clearbed.recognise.statement.LimitFinder;
import clearbed.recognise.statement.Limits;
import clearbed.recognise.statement.Statement;
import clearbed.recognise.statement.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.Collection;
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
final class Components {
  /** The number of a clause, of the form of a mark. */
  private static final Pattern COUNTED = Pattern.compile("\\s*[A-Z]{1,3}-?\\d{1,2}\\.\\s");

  private static final Set<String> WORKS =
      Set.of("mortar", "grout", "sealant", "movement", "membrane", "substrate");

  /** What is stated of a product itself, behind the part of the work. */
  private static final Set<String> PRODUCTS = Set.of(".standard", ".isoClass");

  /** What a class of an adhesive says of it. */
  private static final Set<String> TOLD_BY_CLASS =
      Set.of("mortar.isoClass", "mortar.chemistry", "mortar.standard", "mortar.deformability");

  /** What is supposed of a mortar where a standard or a resin may be of a grout as well. */
  private static final Set<String> SUPPOSED =
      Set.of("mortar.standard", "mortar.chemistry", "grout.standard", "grout.type");

  private static final Pattern CLASS_CODE = Pattern.compile("\\b[CDRS][12](?![\\w.])");

  /** What is stated of tile alone. */
  private static final Set<String> OF_TILES = Set.of("tile.size", "tile.kind", "tile.mounting");

  /** What a mark stands for is said this close behind it, in characters. */
  private static final int SAID = 80;

  /** No longer is the title of what a mark stands for, in characters. */
  private static final int TITLE = 40;

  /** "Membrane WPM-1": so many characters may stand before the mark. */
  private static final int BEFORE = 30;

  private static final Pattern FOR_ALL =
      Pattern.compile("\\b(?:all|every|each)\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern STANDS_FOR =
      Pattern.compile(
          "^[\\s,\"']*(?:for [^:.;]{2,60}:|(?<=,\\s)(?=[a-z])|[:=(]|[-\u2013\u2014](?=\\s)|(?:is|are|means?|shall be|will be|to be)\\b).*",
          Pattern.DOTALL);

  /** "WM-1, liquid membrane, ANSI A118.10". */
  private static final Pattern COMMA = Pattern.compile("^,\\s+(?=[a-z])");

  private static final Pattern FIRST_STOP =
      Pattern.compile("(?:[,;]|\\.(?=\\s|$)).*$", Pattern.DOTALL);

  private static final Pattern RELATED =
      Pattern.compile(
          "\\b(?:for|of|to|with|behind|under|over|at|in|on|and|or)\\b", Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;
  private final Map<String, Draft> drafts;

  /** The letters of marks of glass tile. */
  private final Set<String> tiles = new HashSet<>();

  /** The part of the work that a mark stands for, by its key. */
  private final Map<String, String> works = new HashMap<>();

  /** Rows that say what a mark stands for, by its key. */
  private final Map<String, Draft> parts = new HashMap<>();

  /** Keys of the tiles that call for a mark, by its key. */
  private final Map<String, Set<String>> users = new HashMap<>();

  /** Parts of the work for which tiles call by a mark, by their keys. */
  private final Map<String, Set<String>> called = new HashMap<>();

  /**
   * @param drafts what schedules have
   */
  Components(Vocabulary vocabulary, List<Facts> facts, Map<String, Draft> drafts) {
    this.vocabulary = vocabulary;
    this.drafts = drafts;
    for (Draft draft : drafts.values()) if (draft.glass) tiles.add(Tags.prefix(draft.key));
    for (Facts f : facts) {
      for (Section section : f.sections()) section.clauses().forEach(this::tiles);
    }
    for (Facts f : facts) {
      for (Section section : f.sections()) {
        section.clauses().forEach(this::define);
        titled(section.clauses());
      }
    }
    for (Facts f : facts) {
      for (Section section : f.sections()) section.clauses().forEach(this::number);
    }
    drafts.values().forEach(this::row);
  }

  /** "A1 | Cement adhesive, C2TE S1": a row on parts of the work alone, and on no finish. */
  private void row(Draft draft) {
    if (!Tags.isMark(draft.key, vocabulary) || isTile(draft.key)) return;
    Set<String> said = new TreeSet<>();
    for (ScheduleRow row : draft.rows) for (Statement s : row.statements()) said.add(family(s));
    if (said.contains("tile")) return;
    said.retainAll(WORKS);
    if (said.isEmpty()) return;
    parts.put(draft.key, draft);
    works.putIfAbsent(draft.key, said.contains("mortar") ? "mortar" : said.iterator().next());
  }

  private static String family(Statement s) {
    return s.attribute().substring(0, Math.max(0, s.attribute().indexOf('.')));
  }

  /**
   * "G1 | Epoxy grout | ANSI A118.3": a standard of two parts of the work is of the one that the
   * row describes, and the chemistry of the other is not said.
   */
  private Optional<Statement> ofItsWork(ScheduleRow row, Statement s) {
    String work = vocabulary.family(row.evidence());
    boolean other = WORKS.contains(work) && !family(s).equals(work);
    if (!other || !SUPPOSED.contains(s.attribute())) return Optional.of(s);
    String meant = work + ".standard";
    boolean both =
        s.content() instanceof Content.Standard standard
            && vocabulary.states(standard.designation(), meant);
    return both ? Optional.of(s.of(meant)) : Optional.empty();
  }

  /** What the rows of the marks state for which a tile calls. */
  List<Statement> called(Draft tile) {
    List<Statement> out = new ArrayList<>();
    parts.forEach(
        (mark, part) -> {
          if (!users.getOrDefault(mark, Set.of()).contains(tile.key)) return;
          for (ScheduleRow row : part.rows)
            for (Statement s : row.statements())
              if (WORKS.contains(family(s))) ofItsWork(row, s).ifPresent(out::add);
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

  /** "W41/340 ADHESIVE: RAPID": a clause on a product is called by its number. */
  private void number(Clause clause) {
    String key = numberOf(clause);
    if (key.isEmpty() || clause.listsReferences() || !clause.limits().tags().isEmpty()) return;
    String work = vocabulary.family(clause.heading());
    if (!WORKS.contains(work)) return;
    boolean product =
        clause.statements().stream()
            .anyMatch(s -> PRODUCTS.stream().anyMatch(of -> s.attribute().equals(work + of)));
    if (product) works.putIfAbsent(key, work);
  }

  /** The key of the number that people call the clause by; empty where it has none. */
  private static String numberOf(Clause clause) {
    String article = clause.article();
    return ClauseNumbers.isOne(article) ? Tags.key(article) : "";
  }

  private void tiles(Clause clause) {
    if (!clause.subject().specified() || !clause.subject().glass()) return;
    // "GT-1: fused glass, 1 x 1 in. Substrate: mortar bed" is a tile, whatever it lies on.
    boolean tile =
        clause.statements().stream().anyMatch(s -> OF_TILES.contains(s.attribute()))
            || !WORKS.contains(vocabulary.family(clause.text()));
    if (!tile) return;
    clause.subject().tags().forEach(tag -> tiles.add(Tags.prefix(Tags.key(tag))));
  }

  /** Finds the tiles that call for the marks, once all tiles are known. */
  void gather(List<Facts> facts) {
    if (works.isEmpty()) return;
    drafts.values().forEach(this::scheduled);
    parts.values().forEach(this::listed);
    for (Facts f : facts) {
      for (Section section : f.sections()) section.clauses().forEach(this::named);
    }
  }

  /** Keys of rows that stand for a part of the work, of letters that tiles call: no tiles. */
  Set<String> called() {
    Set<String> letters = users.keySet().stream().map(Tags::prefix).collect(Collectors.toSet());
    return parts.keySet().stream()
        .filter(key -> letters.contains(Tags.prefix(key)))
        .collect(Collectors.toSet());
  }

  /** Keys of the marks. */
  Set<String> keys() {
    return works.keySet();
  }

  private void define(Clause clause) {
    boolean tagged = !clause.subject().tags().isEmpty() || !clause.limits().tags().isEmpty();
    boolean lettered = !tagged && !vocabulary.taught().tagsIn(clause.text()).isEmpty();
    if (!tagged && !lettered || clause.listsReferences()) return;
    String mark = "";
    for (Sentences.Sentence part : Sentences.of(PlainText.of(clause.text()))) {
      String sentence = mark + part.text().strip();
      // "MB-1. White mortar ...": the stop is no end.
      boolean bare = sentence.endsWith(".") && Tags.isMark(sentence.replaceFirst("\\.$", ""));
      mark = bare ? sentence.replaceFirst("\\.$", ": ") : "";
      if (!bare) define(sentence, clause);
    }
  }

  /** "43.20.010 A1" and "Waterproofing W1" over what the mark stands for. */
  private void titled(List<Clause> clauses) {
    LimitFinder.TagsAt mark = null;
    String around = "";
    for (Clause clause : clauses) {
      String text = PlainText.of(clause.text()).strip();
      LimitFinder.TagsAt at =
          text.length() > TITLE ? null : LimitFinder.firstTags(text, vocabulary);
      // Cells have headings in place of titles.
      boolean title = !clause.number().isEmpty() && clause.origin().cell() == null;
      if (at != null && at.tags().size() == 1 && title) {
        around = (text.substring(0, at.start()) + " " + text.substring(at.end())).strip();
        mark = around.isEmpty() || WORKS.contains(vocabulary.family(around)) ? at : null;
        if (RELATED.matcher(around).find()) mark = null;
        continue;
      }
      if (mark == null) continue;
      String key = Tags.key(mark.tags().get(0));
      Set<String> above = keys(clause.limits().tags());
      above.addAll(keys(clause.subject().tags()));
      String opening = FIRST_STOP.matcher(text).replaceFirst("");
      String work = vocabulary.family(around.isEmpty() ? opening : around);
      if (!WORKS.contains(work)) work = stated(clause);
      boolean under = above.contains(key) && WORKS.contains(work) && !TileWords.tile(opening);
      if (under && !isTile(key)) works.putIfAbsent(key, work);
      mark = null;
    }
  }

  private void define(String sentence, Clause clause) {
    LimitFinder.TagsAt at = LimitFinder.firstTags(sentence, vocabulary);
    if (at == null || at.start() > BEFORE) return;
    String before = sentence.substring(0, at.start());
    if (RELATED.matcher(before).find() || TileWords.tile(before)) return;
    String behind = sentence.substring(at.end(), Math.min(sentence.length(), at.end() + SAID));
    if (!STANDS_FOR.matcher(behind).matches()) return;
    String said = FIRST_STOP.matcher(COMMA.matcher(behind).replaceFirst("")).replaceFirst("");
    // "Grout B: ANSI A118.3": the name says what it is.
    String work = vocabulary.family(before + at.tags().get(0));
    if (!WORKS.contains(work)) work = TileWords.tile(said) ? "" : vocabulary.family(said);
    if (!WORKS.contains(work) && before.isBlank() && !TileWords.tile(said)) {
      work = stated(clause);
      // "2.4 GROUTS. GR-2: epoxy, fine filler": the title says what epoxy is here.
      if (!WORKS.contains(work)) work = vocabulary.family(clause.heading());
    }
    if (!WORKS.contains(work)) return;
    for (String tag : at.tags()) {
      String key = Tags.key(tag);
      if (!isTile(key)) works.putIfAbsent(key, work);
    }
  }

  /** "JS-1: silicone, ASTM C920, Type S": the only part of the work that the clause speaks for. */
  private static String stated(Clause clause) {
    Set<String> works = new TreeSet<>();
    for (Statement s : clause.statements()) {
      String work = family(s);
      if (WORKS.contains(work)) works.add(work);
    }
    return works.size() == 1 ? works.iterator().next() : "";
  }

  /** A mark that a schedule has for some tile stands for nothing else. */
  private boolean isTile(String key) {
    if (tiles.contains(Tags.prefix(key))) return true;
    Draft draft = drafts.get(key);
    return draft != null && (draft.glass || draft.rows.stream().anyMatch(ScheduleRow::decided));
  }

  private void scheduled(Draft draft) {
    if (!draft.glass && draft.rows.stream().anyMatch(ScheduleRow::decided)) return;
    for (ScheduleRow row : draft.rows) {
      for (Statement s : row.statements()) {
        if (s.attribute().equals(RowReader.MARK) && s.content() instanceof Content.Words mark)
          uses(Set.of(draft.key), Tags.key(mark.text()));
      }
    }
  }

  /** "K1 | Cement adhesive | GM 01, GM 05": the tiles that a row on a part of the work is for. */
  private void listed(Draft part) {
    for (ScheduleRow row : part.rows) {
      for (Statement s : row.statements()) {
        boolean mark = s.attribute().equals(RowReader.MARK) && s.content() instanceof Content.Words;
        if (!mark || isExcepted(s.asWritten())) continue;
        Set<String> tile = glass(Set.of(s.content().text()));
        if (!tile.isEmpty()) uses(tile, part.key);
      }
    }
  }

  private boolean isExcepted(String text) {
    return vocabulary.list("except").in(text) || vocabulary.list("negation.before").in(text);
  }

  /** "GT-1: fused glass, set in MB-1". */
  private void named(Clause clause) {
    Set<String> numbers = keys(ClauseNumbers.in(clause.text()));
    if (!clause.subject().specified() && numbers.isEmpty()) return;
    Set<String> tiles = glass(clause.subject().tags());
    if (tiles.isEmpty()) usedBy(clause);
    if (tiles.isEmpty() && numbers.isEmpty()) return;
    for (Sentences.Sentence sentence : Sentences.of(PlainText.of(clause.text()))) {
      Set<String> all = keys(LimitFinder.tags(sentence.text(), vocabulary));
      all.addAll(keys(ClauseNumbers.in(sentence.text())));
      if (all.stream().noneMatch(works::containsKey)) continue;
      Set<String> own = new HashSet<>(all);
      own.retainAll(drafts.keySet());
      own.removeAll(works.keySet());
      // "GT-1: MB-1. GT-2: MB-2" is of one tile in each sentence.
      Set<String> callers = own.isEmpty() ? tiles : own;
      if (!callers.isEmpty()) for (String mark : all) uses(callers, mark);
    }
  }

  /** "MB-1: white mortar; for GT-1, GT-3" calls itself. */
  private void usedBy(Clause clause) {
    Set<String> marks = keys(clause.subject().tags());
    if (marks.size() != 1 || !works.keySet().containsAll(marks)) return;
    String text = PlainText.of(clause.text());
    // "B-2. Deflection ..." is counted so; "MB-1 is white. EP-1 is epoxy, for GT-1" names two.
    if (COUNTED.matcher(text).lookingAt()) return;
    Set<String> tags = LimitFinder.tags(text, vocabulary);
    Set<String> named = keys(tags);
    named.retainAll(works.keySet());
    if (!named.equals(marks)) return;
    Set<String> tiles = glass(tags);
    tiles.removeAll(clause.limits().except());
    boolean refuses = clause.statements().stream().anyMatch(s -> !s.limits().except().isEmpty());
    if (!tiles.isEmpty() && !refuses) uses(tiles, marks.iterator().next());
  }

  private void uses(Set<String> tiles, String mark) {
    String work = works.get(mark);
    if (work == null) return;
    users.computeIfAbsent(mark, any -> new TreeSet<>()).addAll(tiles);
    called.computeIfAbsent(work, any -> new TreeSet<>()).addAll(tiles);
    Draft part = parts.get(mark);
    if (part == null) return;
    for (ScheduleRow row : part.rows)
      for (Statement s : row.statements())
        if (WORKS.contains(family(s)))
          called.computeIfAbsent(family(s), any -> new TreeSet<>()).addAll(tiles);
  }

  /**
   * What a clause states, said of the tiles that call for the marks it names; null where no tile
   * calls for them but for others of their kind.
   */
  Statement followed(Clause clause, Statement s) {
    if (isMarkReadAsClass(s)) return null;
    if (s.limits().tags().isEmpty()) return numbered(clause, s);
    Set<String> named = keys(s.limits().tags());
    boolean stray = named.stream().noneMatch(k -> drafts.containsKey(k) || works.containsKey(k));
    // "Screed CT-C25" below the title of a tile is a class of screed: the title still limits it.
    Set<String> above = stray ? keys(clause.limits().tags()) : Set.of();
    if (above.stream().anyMatch(drafts::containsKey))
      return s.withLimits(s.limits().withTags(above));
    if (works.isEmpty()) return s;
    Set<String> marks = new TreeSet<>(named);
    marks.retainAll(works.keySet());
    if (marks.isEmpty()) return s;
    named.removeAll(marks);
    named.retainAll(drafts.keySet());
    if (!named.isEmpty()) return s.withLimits(s.limits().withTags(named));
    String work = family(s);
    // "The net is compatible with adhesive A1" is said of the tile above it, not of the adhesive.
    Set<String> subject = glass(clause.limits().tags());
    // Below a title the words may open with the adhesive: "Mesh, suits A1" under "GT-1 Mosaic".
    if (subject.isEmpty()) subject = glass(LimitFinder.tags(clause.heading(), vocabulary));
    boolean ofTheTile = work.equals("tile") || work.equals("substrate");
    if (ofTheTile && !subject.isEmpty() && !works.containsValue(work))
      return s.withLimits(s.limits().withTags(subject));
    // "A108.5 (Mortar A). Sheets of all kinds: A108.16": the name goes no further than its
    // sentence.
    boolean ofWork = marks.stream().anyMatch(mark -> work.equals(works.get(mark)));
    if (!ofWork && marks.stream().allMatch(mark -> isCarried(mark, s)))
      return s.withLimits(s.limits().withTags(Set.of()));
    Set<String> tiles = new TreeSet<>();
    for (String mark : marks) tiles.addAll(users.getOrDefault(mark, Set.of()));
    for (String mark : marks) {
      Set<String> others = called.getOrDefault(works.get(mark), Set.of());
      meant(clause).stream().filter(tile -> !others.contains(tile)).forEach(tiles::add);
    }
    boolean forAll = FOR_ALL.matcher(clause.text()).find();
    if (tiles.isEmpty() && forAll && marks.stream().noneMatch(users::containsKey))
      tiles = uncalled(marks);
    if (!tiles.isEmpty()) return s.withLimits(Limits.ofTags(tiles, s.limits().except()));
    return called.containsKey(work) ? null : s;
  }

  /** True of "Mortar A" where the words themselves do not name it. */
  private static boolean isCarried(String mark, Statement s) {
    return mark.indexOf(' ') > 0 && !s.asWritten().toUpperCase(Locale.ROOT).contains(mark);
  }

  /** "K2 is laid on D2", where D2 is a membrane and no dispersion adhesive. */
  private boolean isMarkReadAsClass(Statement s) {
    if (parts.isEmpty() || !TOLD_BY_CLASS.contains(s.attribute())) return false;
    Matcher code = CLASS_CODE.matcher(s.asWritten());
    while (code.find())
      if (parts.containsKey(Tags.key(code.group()))) return !Citations.mayCite(s.asWritten());
    return false;
  }

  /** What a clause states that tiles call by its number; null where they call for others. */
  private Statement numbered(Clause clause, Statement s) {
    String number = numberOf(clause);
    String work = works.getOrDefault(number, "");
    if (work.isEmpty() || !s.attribute().startsWith(work + ".")) return s;
    Set<String> tiles = users.getOrDefault(number, Set.of());
    if (!tiles.isEmpty()) return s.withLimits(Limits.ofTags(tiles, s.limits().except()));
    return called.containsKey(work) ? null : s;
  }

  /** "JS-1: silicone. All wall joints": who calls for no other mark of its kind is left with it. */
  private Set<String> uncalled(Set<String> marks) {
    Set<String> out = new TreeSet<>();
    drafts.values().stream().filter(d -> d.glass).forEach(d -> out.add(d.key));
    for (String mark : marks) out.removeAll(called.getOrDefault(works.get(mark), Set.of()));
    return out;
  }

  /** The tiles that the clause itself says its marks are for: by tag, or all of glass. */
  private Set<String> meant(Clause clause) {
    Set<String> tiles = glass(LimitFinder.tags(PlainText.of(clause.text()), vocabulary));
    if (!tiles.isEmpty() || !clause.subject().glass()) return tiles;
    return drafts.values().stream()
        .filter(d -> d.glass)
        .map(d -> d.key)
        .collect(Collectors.toSet());
  }

  private Set<String> glass(Collection<String> tags) {
    return tags.stream()
        .map(Tags::key)
        .filter(key -> drafts.containsKey(key) && drafts.get(key).glass)
        .collect(Collectors.toSet());
  }

  private static Set<String> keys(Collection<String> tags) {
    return tags.stream().map(Tags::key).collect(Collectors.toCollection(TreeSet::new));
  }
}
