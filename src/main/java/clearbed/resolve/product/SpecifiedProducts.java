package clearbed.resolve.product;

import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.section.clause.Subject;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.part.GlassWords;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.entry.Draft;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Gathers what clauses and titles say that tags are, beside what schedules say: what any document
 * says of a tag counts. Adds glass tiles that no schedule has, with a tag or by the title of their
 * article.
 */
public final class SpecifiedProducts {
  /** Marks of so many glass tiles share their letters before another one is told by them. */
  private static final int ALIKE = 2;

  private static final Pattern LABEL = Pattern.compile("^\\s*\\p{Alnum}{1,3}[.)]\\s+");

  private static final Pattern FIRST_STOP = Pattern.compile(";.*$", Pattern.DOTALL);

  private final Vocabulary vocabulary;
  private final GlassWords glassWords;
  private final List<Facts> facts;
  private final Map<String, Draft> drafts;
  private final Set<String> prefixes;
  private final Set<String> rooms;
  private final Set<String> components;
  private final Set<String> subjects = new TreeSet<>();
  private final ProductArticles articles;
  private final NamelessProducts nameless;

  /**
   * @param drafts what schedules have; products are added to them
   * @param components keys of marks that stand for a mortar or a grout
   */
  public SpecifiedProducts(
      Vocabulary vocabulary, List<Facts> facts, Map<String, Draft> drafts, Set<String> components) {
    this.vocabulary = vocabulary;
    this.glassWords = new GlassWords(vocabulary);
    this.articles = new ProductArticles(vocabulary, glassWords);
    this.nameless = new NamelessProducts(vocabulary, articles, drafts);
    this.facts = facts;
    this.drafts = drafts;
    this.components = components;
    this.prefixes =
        drafts.keySet().stream()
            .map(Tags::prefix)
            .filter(prefix -> !prefix.isEmpty())
            .collect(Collectors.toSet());
    this.rooms = RoomMarks.letters(facts, prefixes);
  }

  public void add() {
    eachClause(this::specified);
    eachClause((section, clause) -> mentioned(clause));
    eachClause(this::underTitle);
    facts.forEach(this::titled);
    Set<String> glass = glassPrefixes();
    eachClause((section, clause) -> alike(section, clause, glass));
    eachClause((section, clause) -> about(clause));
    if (drafts.values().stream().noneMatch(d -> d.glass)) nameless.add(facts);
  }

  private void eachClause(BiConsumer<Section, Clause> taker) {
    for (Facts f : facts) {
      for (Section section : f.sections())
        section.clauses().forEach(clause -> taker.accept(section, clause));
    }
  }

  /** Keys of the tags that clauses specify something of, scheduled or not. */
  public Set<String> subjects() {
    return subjects;
  }

  /** Keys of the tiles without a tag, by the clauses that speak of them and of no other. */
  public Map<Clause, String> owned() {
    return nameless.owned();
  }

  private void specified(Section section, Clause clause) {
    Subject subject = clause.subject();
    if (!subject.specified() || articles.isElsewhere(clause)) return;
    boolean tileWork = section.article() || section.notes();
    boolean adds = Tags.adds(clause.text());
    boolean creates =
        adds
            || tileWork
                && !outsideProducts(section, clause)
                && (!section.notes() || numbered(clause));
    // "MG-01, MG-02: glass mosaic" are two: what the first adds keeps out none beside it.
    List<String> added = new ArrayList<>();
    for (String tag : subject.tags()) {
      String key = Tags.key(tag);
      if (components.contains(key)) continue;
      Draft draft = drafts.get(key);
      if (draft == null && (!isTileMark(tag, section) || namesScheduled(clause, key))) continue;
      if (tileWork && (subject.glass() || !subject.other().isEmpty())) subjects.add(key);
      if (draft != null && subject.glass()) draft.specifyAsGlass(clause);
      else if (draft != null && !subject.other().isEmpty() && subject.own())
        draft.asOther.add(clause);
      else if (draft == null && subject.glass() && (creates || isItem(subject, tag)))
        added.add(tag);
    }
    for (String tag : added) add(tag, clause);
  }

  /** "Type 3 glass, 1 x 1": a text counts what it lists by marks that it teaches. */
  private boolean isItem(Subject subject, String tag) {
    return subject.own() && vocabulary.taught().isTag(tag);
  }

  /** "Q2. Is glass tile TL-09 ...?" is about TL-09. */
  private boolean namesScheduled(Clause clause, String key) {
    return Tags.inOpening(FIRST_STOP.matcher(clause.text()).replaceFirst("")).stream()
        .map(Tags::key)
        .anyMatch(other -> !other.equals(key) && drafts.containsKey(other));
  }

  /**
   * What nobody schedules is a mark of a tile only where it is no number of a drawing, a document
   * or a section, and no word before a figure: "Stage 2".
   */
  private boolean isTileMark(String tag, Section section) {
    boolean asOthers = prefixes.contains(Tags.prefix(Tags.key(tag)));
    boolean taught = vocabulary.taught().isTag(tag);
    if (tag.indexOf(' ') >= 0 && !asOthers && !taught) return false;
    if (rooms.contains(Tags.prefix(Tags.key(tag)))) return false;
    // "Keys M4.x are glass tile" speaks of M4.1 and M4.2.
    String key = Tags.key(tag);
    if (!Tags.meant(key, drafts.keySet()).equals(Set.of(key))) return false;
    return !Tags.key(tag).equals(Tags.key(section.number()))
        && facts.stream().noneMatch(f -> f.document().path().contains(tag));
  }

  /** Notes count what they specify. */
  private static boolean numbered(Clause clause) {
    return !clause.number().isEmpty() || !clause.heading().isEmpty();
  }

  /** Part 1 and Part 3 of a three-part section speak of tiles; only Part 2 specifies them. */
  private static boolean outsideProducts(Section section, Clause clause) {
    return !section.number().isEmpty()
        && !clause.number().startsWith("2.")
        && clause.number().contains(".");
  }

  /**
   * "GLASS TILE" over "A. Type GT-A: clear body, fired colour behind" and "B. Type GT-B: ...": what
   * an article numbers by its marks is what its title says, where no word speaks against it.
   */
  private void underTitle(Section section, Clause clause) {
    Subject subject = clause.subject();
    boolean product =
        subject.specified()
            && subject.other().isEmpty()
            && section.article()
            && articles.mayBeProduct(section, clause)
            && articles.isGlassTitle(clause.heading());
    if (!product || vocabulary.list("otherFinish").in(ProductArticles.opening(clause))) return;
    if (!opensWithMark(clause.text())) return;
    for (String tag : subject.tags()) glassByOthers(tag, section, clause);
  }

  /** A mark is glass by what stands around its clause, where nothing has decided it. */
  private void glassByOthers(String tag, Section section, Clause clause) {
    String key = Tags.key(tag);
    if (components.contains(key)) return;
    Draft draft = drafts.get(key);
    if (draft != null && draft.isUndecided()) draft.specifyAsGlass(clause);
    else if (draft == null && isTileMark(tag, section) && !namesScheduled(clause, key))
      add(tag, clause);
  }

  /** "Type GT-B: ..."; "Product reference: ..., ref SH-2" is of a maker. */
  private boolean opensWithMark(String text) {
    String words = LABEL.matcher(text).replaceFirst("");
    TagFinder.TagsAt first = TagFinder.firstTags(words);
    if (first == null) return false;
    String before = words.substring(0, first.start()).strip().toLowerCase(Locale.ROOT);
    return before.isEmpty() || vocabulary.list("schedule.tag").matches(before);
  }

  /** "Glass mosaics of the pool and the spa, types GM-A to GM-G" tells of tags that lack a word. */
  private void mentioned(Clause clause) {
    Subject subject = clause.subject();
    if (subject.specified() || !subject.glass() || articles.isElsewhere(clause)) return;
    for (String tag : subject.tags()) {
      Draft draft = drafts.get(Tags.key(tag));
      if (draft != null && draft.isUndecided()) draft.specifyAsGlass(clause);
    }
  }

  /**
   * The only tile section of a document, titled after glass tile, tells of the tags of its tables
   * that lack a word. A title is weak: one word to the contrary anywhere and the tag stays open.
   */
  private void titled(Facts f) {
    List<Section> tile = f.sections().stream().filter(s -> s.article() && !s.notes()).toList();
    if (tile.size() != 1 || tile.get(0).clauses().isEmpty()) return;
    String title = tile.get(0).title();
    if (!glassWords.areIn(title) || vocabulary.glass().describesOtherTile(title).isPresent())
      return;
    Set<String> glass =
        drafts.values().stream()
            .filter(d -> d.glass)
            .map(d -> Tags.prefix(d.key))
            .collect(Collectors.toSet());
    for (ScheduleRow row : f.rows()) {
      // Beside GT-1 and GT-2, which are glass, the marks MJ-1 and MJ-2 of joints are not.
      if (!glass.isEmpty() && !glass.contains(Tags.prefix(Tags.key(row.tag())))) continue;
      Draft draft = drafts.get(Tags.key(row.tag()));
      // Rows of marks that later documents cancel make no entry.
      if (draft == null || !Tags.isMark(row.tag()) || row.decided() || !draft.isUndecided())
        continue;
      draft.glass = true;
      draft.evidence = title;
    }
  }

  /** Letters of marks of which several are glass tile and none is anything else. */
  private Set<String> glassPrefixes() {
    Map<String, Integer> glass = new HashMap<>();
    Set<String> others = new TreeSet<>();
    for (Draft d : drafts.values()) {
      String prefix = Tags.prefix(d.key);
      if (d.glass) glass.merge(prefix, 1, Integer::sum);
      else if (!d.isUndecided()) others.add(prefix);
    }
    eachClause((section, clause) -> others.addAll(otherPrefixes(clause.subject())));
    glass.keySet().removeAll(others);
    glass.values().removeIf(count -> count < ALIKE);
    // What is called a tile or a type says nothing by its word.
    glass
        .keySet()
        .removeIf(
            prefix ->
                prefix.length() < 2
                    || vocabulary.list("schedule.tag").matches(prefix.toLowerCase(Locale.ROOT)));
    return glass.keySet();
  }

  /** The letters of "TL.1 Porcelain floor tile", which no schedule has. */
  private Set<String> otherPrefixes(Subject subject) {
    if (!subject.own() || subject.other().isEmpty()) return Set.of();
    return subject.tags().stream()
        .map(Tags::key)
        .filter(key -> !drafts.containsKey(key) || !drafts.get(key).glass)
        .map(Tags::prefix)
        .collect(Collectors.toSet());
  }

  /**
   * "GT-6: 300 x 75 mm, silver foil back" among GT-1 to GT-5 of glass is glass as well, though its
   * own words would be a mirror's.
   */
  private void alike(Section section, Clause clause, Set<String> glass) {
    Subject subject = clause.subject();
    boolean tile =
        subject.specified()
            && subject.other().isEmpty()
            && (section.article() || section.notes())
            && !articles.isElsewhere(clause)
            && clause.statements().stream().anyMatch(s -> s.attribute().startsWith("tile."));
    if (!tile) return;
    for (String tag : subject.tags())
      if (glass.contains(Tags.prefix(Tags.key(tag)))) glassByOthers(tag, section, clause);
  }

  /** Hands each glass tile the clauses that are about it, whose titles and labels place it. */
  private void about(Clause clause) {
    if (!clause.subject().specified() || clause.listsReferences()) return;
    for (String tag : clause.subject().tags()) {
      Draft draft = drafts.get(Tags.key(tag));
      if (draft != null && draft.glass) draft.about.add(clause);
    }
  }

  private void add(String tag, Clause clause) {
    Draft draft = Draft.specified(tag, clause.text(), clause);
    draft.asGlass.add(clause);
    drafts.put(draft.key, draft);
  }
}
