package clearbed.resolve.product;

import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.ClauseNumbers;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.entry.Draft;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Finds the marks that stand for a part of the work and no tile, in rows, in clauses and in the
 * numbers of clauses.
 */
final class ComponentMarks {
  static final Set<String> WORKS =
      Set.of("mortar", "grout", "sealant", "movement", "membrane", "substrate");

  /** What is stated of a product itself, behind the part of the work. */
  private static final Set<String> PRODUCTS = Set.of(".standard", ".isoClass");

  /** What is stated of tile alone. */
  private static final Set<String> OF_TILES = Set.of("tile.size", "tile.kind", "tile.mounting");

  /** What a mark stands for is said this close behind it, in characters. */
  private static final int SAID = 80;

  /** No longer is the title of what a mark stands for, in characters. */
  private static final int TITLE = 40;

  /** "Membrane WPM-1": so many characters may stand before the mark. */
  private static final int BEFORE = 30;

  /** "WM-1: ...", "WM-1 - ...", "WM-1, liquid membrane". */
  private static final Pattern SIGN =
      Pattern.compile("^[\\s,\"']*(?:(?<=,\\s)(?=[a-z])|[:=(]|[-\u2013\u2014](?=\\s))");

  /** "WM-1, liquid membrane, ANSI A118.10". */
  private static final Pattern COMMA = Pattern.compile("^,\\s+(?=[a-z])");

  private static final Pattern FIRST_STOP =
      Pattern.compile("(?:[,;]|\\.(?=\\s|$)).*$", Pattern.DOTALL);

  private final Vocabulary vocabulary;
  private final Map<String, Draft> drafts;

  /** The letters of marks of glass tile. */
  private final Set<String> tiles = new HashSet<>();

  /** The part of the work that a mark stands for, by its key. */
  final Map<String, String> works = new HashMap<>();

  /** Rows that say what a mark stands for, by its key. */
  final Map<String, Draft> parts = new HashMap<>();

  /**
   * @param drafts what schedules have
   */
  ComponentMarks(Vocabulary vocabulary, List<Facts> facts, Map<String, Draft> drafts) {
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
    for (ScheduleRow row : draft.rows) for (Statement s : row.statements()) said.add(s.family());
    if (said.contains("tile")) return;
    said.retainAll(WORKS);
    if (said.isEmpty()) return;
    parts.put(draft.key, draft);
    works.putIfAbsent(draft.key, said.contains("mortar") ? "mortar" : said.iterator().next());
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

  private void tiles(Clause clause) {
    if (!clause.subject().specified() || !clause.subject().glass()) return;
    // "GT-1: fused glass, 1 x 1 in. Substrate: mortar bed" is a tile, whatever it lies on.
    boolean tile =
        clause.statements().stream().anyMatch(s -> OF_TILES.contains(s.attribute()))
            // "A1 and A2: tensile adhesion on the scheduled glass tile ..." are adhesives.
            || stated(clause).isEmpty() && !WORKS.contains(vocabulary.family(clause.text()));
    if (!tile) return;
    clause.subject().tags().forEach(tag -> tiles.add(Tags.prefix(Tags.key(tag))));
  }

  /** The key of the number that people call the clause by; empty where it has none. */
  static String numberOf(Clause clause) {
    String article = clause.article();
    return ClauseNumbers.isOne(article) ? Tags.key(article) : "";
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
    TagFinder.TagsAt mark = null;
    String around = "";
    for (Clause clause : clauses) {
      String text = PlainText.of(clause.text()).strip();
      TagFinder.TagsAt at = text.length() > TITLE ? null : TagFinder.firstTags(text, vocabulary);
      // Cells have headings in place of titles.
      boolean title = !clause.number().isEmpty() && clause.origin().cell() == null;
      if (at != null && at.tags().size() == 1 && title) {
        around = (text.substring(0, at.start()) + " " + text.substring(at.end())).strip();
        mark = around.isEmpty() || WORKS.contains(vocabulary.family(around)) ? at : null;
        if (isRelated(around)) mark = null;
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
    TagFinder.TagsAt at = TagFinder.firstTags(sentence, vocabulary);
    if (at == null || at.start() > BEFORE) return;
    String before = sentence.substring(0, at.start());
    if (isRelated(before) || TileWords.tile(before)) return;
    String behind = sentence.substring(at.end(), Math.min(sentence.length(), at.end() + SAID));
    boolean stands =
        SIGN.matcher(behind).lookingAt()
            || vocabulary.list("resolves.standsFor").startsAt(behind, 0);
    if (!stands) return;
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

  /** "Grout for GT-1" is of what the mark stands for and no name of it. */
  private boolean isRelated(String words) {
    return vocabulary.list("resolves.related").in(words);
  }

  /** "JS-1: silicone, ASTM C920, Type S": the only part of the work that the clause speaks for. */
  private static String stated(Clause clause) {
    Set<String> works = new TreeSet<>();
    for (Statement s : clause.statements()) {
      String work = s.family();
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

  static Set<String> keys(Collection<String> tags) {
    return tags.stream().map(Tags::key).collect(Collectors.toCollection(TreeSet::new));
  }
}
