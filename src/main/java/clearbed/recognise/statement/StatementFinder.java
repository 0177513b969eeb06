package clearbed.recognise.statement;

import clearbed.base.Cancellation;
import clearbed.base.Memo;
import clearbed.model.Content;
import clearbed.model.Origin;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds what a text says of the attributes of the vocabulary. */
public final class StatementFinder {
  /** "Use NT on GT-1": a class of the sealant. */
  private static final Pattern USE_CLASS = Pattern.compile("Uses?:? (?:NT|[TIMGAO]\\d?)\\b");

  private static final Pattern USES =
      Pattern.compile(
          "^(?:(?i:use[ds]?|used for|for use|required|applies|apply|locations?)\\b[^.;]{0,12}|(?:(?!(?:(?:maker|manufacturer|supplier|producer)s?|that|those)\\b)[\\w-]+ ){0,5})"
              + "(?:(?i:for|of|at|in|on)|:)\\s+(?:tags? |(?i:glass (?:tiles?|mosaics?)) )?[A-Z]{1,5}[-. ]?(?:\\d|[A-Z]\\b)");

  private static final Pattern USED =
      Pattern.compile("^(?:use[ds]?|for use|applies|apply)\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern IS_USED =
      Pattern.compile(
          "\\b(?:used?|required?|locations?)\\b|:(?![^:]*\\d+(?:[./]\\d+)? ?(?:mm|m|in|ft|%|psi|N/mm))",
          Pattern.CASE_INSENSITIVE);

  /** "(GT-4: ANSI A108.6)" is said of GT-4 and ends with the bracket. */
  private static final Pattern ASIDE = Pattern.compile("\\([^():]{1,40}:[^()]{1,200}\\)");

  private static final Pattern BEHIND_TAGS =
      Pattern.compile("(?: [\\w-]+){0,2}\\W*|[^\\w ].*", Pattern.DOTALL);

  private static final Pattern OF_TAGS =
      Pattern.compile("\\p{L}{3,} of (?:the )?(?:\\p{Ll}+ ){0,2}$");

  private static final Pattern IN_BRACKETS = Pattern.compile("\\([^()]{0,200}\\)");

  private static final int LONGEST_FRAGMENT = 90;

  private static final int LONGEST_TITLE = 60;

  /** Behind a comma a tile stands this close to a figure of its own: "72 hours at GT-2". */
  private static final int OWN_FIGURE = 24;

  /** "24.00.09 Z: Jointing." */
  private static final Pattern LABEL = Pattern.compile("^[\\d.]+(?: ?[A-Z])?: ");

  private static final String ON_MEMBRANE = "mortar.membraneUse";
  private static final String ALLOWS_MEMBRANE = "membrane.confirmation";
  private static final Set<String> OF_MORTAR =
      Set.of("mortar.standard", "mortar.isoClass", "mortar.chemistry");

  private record Asked(String text, Context context) {}

  private static final Pattern JOINED = Pattern.compile(",? (?:and|or) |, ");

  private final Vocabulary vocabulary;
  private final Attribute kind;
  private final LimitFinder limitFinder;
  private final Memo<Asked, List<Statement>> known = new Memo<>(Asked::text);
  private final OpenItems openItems;
  private final List<Way> ways;
  private final NamedFinder named;
  private final TileProperties properties;

  /**
   * One way in which words state something.
   *
   * @param name what it finds
   */
  public record Way(String name, Finds finds) {

    /** Adds what it finds in a part of a text. */
    interface Finds {
      /**
       * @param taken stretches whose figures an earlier way has read; it adds its own
       */
      void addTo(Passage passage, List<int[]> taken);
    }
  }

  public StatementFinder(Vocabulary vocabulary) {
    this(vocabulary, UnaryOperator.identity());
  }

  /**
   * @param chosen gives those of all ways that are gone, in their order
   */
  public StatementFinder(Vocabulary vocabulary, UnaryOperator<List<Way>> chosen) {
    this.vocabulary = vocabulary;
    this.kind = vocabulary.attribute("tile.kind").orElse(null);
    this.limitFinder = new LimitFinder(vocabulary);
    this.openItems = new OpenItems(vocabulary);
    this.named = new NamedFinder(vocabulary, limitFinder);
    this.properties = new TileProperties(vocabulary);
    this.ways = List.copyOf(chosen.apply(ways()));
  }

  /** All ways, in the order that they depend on. */
  private List<Way> ways() {
    OpenStatements open = new OpenStatements(vocabulary, openItems, this);
    StandardStatements standards = new StandardStatements(vocabulary);
    FlatnessStatements flatness = new FlatnessStatements(vocabulary);
    AmountStatements amounts = new AmountStatements(vocabulary);
    TermStatements terms = new TermStatements(vocabulary);
    Requirements requirements = new Requirements(vocabulary);
    return List.of(
        new Way("open items", (p, taken) -> open.addTo(p)),
        new Way("standards", (p, taken) -> standards.addTo(p)),
        new Way("flatness", (p, taken) -> taken.addAll(flatness.addTo(p))),
        new Way("deflection", (p, taken) -> flatness.addDeflection(p)),
        new Way("amounts", amounts::addTo),
        new Way("sizes", new SizeStatements(vocabulary)::addTo),
        new Way("terms", (p, taken) -> terms.addTo(p)),
        new Way("requirements", (p, taken) -> requirements.addTo(p)));
  }

  /** All statements of a text; each carries the limits of its own part. */
  public List<Statement> find(String text, Origin origin, Context context) {
    Cancellation.check();
    List<Statement> found =
        known.get(new Asked(text, context), () -> List.copyOf(findAnew(text, origin, context)));
    return Statement.allAt(origin, found);
  }

  private List<Statement> findAnew(String text, Origin origin, Context context) {
    List<Statement> out = new ArrayList<>();
    String family = context.family();
    Carried carried = new Carried();
    Set<String> uses = new TreeSet<>();
    Set<String> named = new TreeSet<>();
    boolean parted = false;
    Limits leadLimits = Limits.NONE;
    Limits previous = Limits.NONE;
    LaterWords.Contrast contrast = new LaterWords.Contrast();
    String spoken = "";
    boolean inPassing = false;
    int mainFrom = 0;
    for (Parts.Part part : Parts.of(PlainText.of(text), vocabulary.list("except"))) {
      if (part.text().endsWith("?") || tellsWhere(part.text()) || defines(part.text())) continue;
      String opening = LABEL.matcher(part.text()).replaceFirst("");
      if (!part.sentence() && out.isEmpty() && isTitle(opening)) carried.title = opening;
      else if (!carried.title.isEmpty() && isDenial(opening)) deny(out, carried.title);
      if (!part.lead().isEmpty()) carried.label = part.lead();
      String leadFamily = part.lead().isEmpty() ? "" : vocabulary.family(part.lead());
      // "JS-2, interior tile walls: ..." among sealants is still about a sealant.
      if (!leadFamily.isEmpty() && !(leadFamily.equals("tile") && !family.isEmpty()))
        family = leadFamily;
      if (!part.lead().isEmpty())
        leadLimits = leadLimits(part.lead(), family, context.describesTile());
      // "GT-1 and GT-2: 8 ft. All: at perimeters."
      if (vocabulary.list("clause.everyOne").matches(part.lead().toLowerCase(Locale.ROOT)))
        previous = Limits.NONE;
      // "GT-1 and GT-2 every 8 ft; GT-3 every 16 ft. They are also needed at corners."
      boolean theyAll =
          parted && part.sentence() && vocabulary.list("clause.theyAll").in(part.text());
      if (theyAll) previous = previous.withTags(new TreeSet<>(named));
      String own = vocabulary.family(part.text());
      // "Except in the pool, grout with CG2; in the pool with RG" is about grout to its end.
      boolean names = !own.isEmpty() && !own.equals("tile");
      // "Glass tile in thin bed. Fused glass, opaque": what is made so is the tile again.
      if (part.sentence() && own.equals("tile") && saysHowMade(part.text())) spoken = "tile";
      boolean goesOn = !names && !spoken.isEmpty() && (!part.sentence() || isFragment(part.text()));
      int before = out.size();
      // "Movement capability: Class 50, except Class 100/50 at GT-5" is of the sealant to its end.
      String excepted = part.exception() && own.isEmpty() ? familyOf(out, mainFrom) : "";
      if (part.exception())
        previous = LaterWords.exceptFrom(out, mainFrom, previous, exceptions(part.text()));
      else mainFrom = before;
      Limits carriedOn = part.sentence() && !theyAll ? contrast.carried(previous) : previous;
      // "Sheets of GT-1 are set by ANSI A108.14. Mortar coverage is ..." goes on with all tiles.
      boolean another = part.sentence() && names && !own.equals(spoken) && !isFragment(part.text());
      if (another && inPassing) carriedOn = carriedOn.withTags(Set.of());
      Surroundings around = new Surroundings(part, leadLimits, carriedOn, leadFamily.isEmpty());
      Passage passage =
          new Passage(
              vocabulary,
              part,
              openItems.closed(part.text()),
              context.withFamily(!excepted.isEmpty() ? excepted : goesOn ? spoken : family),
              origin.withText(text),
              carried);
      read(passage);
      carried.heard(part.text(), vocabulary.families().get("membrane"));
      Limits said = state(out, passage, around);
      if (vocabulary.list("clause.also").in(part.text())) LaterWords.besides(out, before);
      if (vocabulary.list("clause.inNoCase").in(part.text())) LaterWords.outermost(out, before);
      contrast.note(said.tags());
      if (part.sentence()) LaterWords.rulesOfTheSite(out, before, around.within(said));
      if (!part.exception() && saysWhatFor(part.text())) {
        // "Used for glass tile GT-1" is said of the mortar.
        String of = own.equals("tile") && USED.matcher(part.text()).find() ? "" : own;
        uses = LaterWords.spreadBack(out, before, uses, leadLimits.tags(), of, around.settle(said));
      }
      if (names || spoken.isEmpty()) spoken = own;
      if (!part.exception()) previous = around.settle(said);
      carried.tagged |= !said.tags().isEmpty();
      if (!said.tags().isEmpty()) inPassing = isInPassing(part.text());
      parted |=
          !named.isEmpty() && !said.tags().isEmpty() && Collections.disjoint(named, said.tags());
      named.addAll(said.tags());
    }
    return out;
  }

  /** The part of the work that all statements from there on are of, or empty. */
  private static String familyOf(List<Statement> out, int from) {
    List<String> families =
        out.subList(from, out.size()).stream()
            .map(Statement::attribute)
            .filter(attribute -> attribute.indexOf('.') > 0)
            .map(attribute -> attribute.substring(0, attribute.indexOf('.')))
            .distinct()
            .toList();
    return families.size() == 1 ? families.get(0) : "";
  }

  /** "Except at pools and GT-4" leaves out both; "except at exterior walls" what is both. */
  private List<Limits> exceptions(String text) {
    List<Limits> each = new ArrayList<>();
    for (String one : JOINED.split(text)) each.add(limitFinder.of(one, !each.isEmpty()));
    boolean told = each.stream().noneMatch(l -> LaterWords.left(List.of(l)).isEmpty());
    return told ? each : List.of(limitFinder.of(text, false));
  }

  /** "Face-mounted sheets of GT-1": what the sentence is about is not the tile. */
  private static boolean isInPassing(String text) {
    LimitFinder.TagsAt at = LimitFinder.firstTags(text);
    return at != null && OF_TAGS.matcher(text.substring(0, at.start())).find();
  }

  private boolean saysHowMade(String text) {
    return kind != null && kind.words().anyTerm().in(text);
  }

  /** "Not used." and "None required." behind a title. */
  private boolean isDenial(String text) {
    return text.length() <= LONGEST_TITLE && vocabulary.list("negation.notRequired").in(text);
  }

  /** What the title alone required. */
  private static void deny(List<Statement> out, String title) {
    out.replaceAll(
        s ->
            s.content() instanceof Content.Required && s.asWritten().equals(title)
                ? new Statement(
                    s.attribute(), s.content(), true, s.asWritten(), s.origin(), s.limits())
                : s);
  }

  /** "The schedule gives size, see-through grade and back" names columns and fills none. */
  private boolean tellsWhere(String text) {
    return vocabulary.list("clause.tellsWhere").in(text)
        && Quantities.find(text).isEmpty()
        && Citations.find(text).isEmpty();
  }

  /** "CG1 and CG2 are classes of EN 13888" asks for neither. */
  private boolean defines(String text) {
    return vocabulary.list("clause.defines").in(text);
  }

  /** "Mortar to ANSI A118.15. White for GT-1, gray for GT-2.": words without a verb go on. */
  private boolean isFragment(String text) {
    return text.length() <= LONGEST_FRAGMENT
        && text.indexOf(':') < 0
        && vocabulary.isVerbless(text);
  }

  /** "For GT-2." and "Used at GT-2"; not "In GT-2 the sealant is rated for immersion". */
  private boolean saysWhatFor(String text) {
    return USES.matcher(text).find()
        && !USE_CLASS.matcher(text).lookingAt()
        && !opensWithFigure(text)
        && (USED.matcher(text).find()
            || IS_USED.matcher(USE_CLASS.matcher(text).replaceAll(" ")).find()
            || isFragment(text) && BEHIND_TAGS.matcher(behindTags(text)).matches());
  }

  /** "Winter work on GT-1 needs a heated enclosure" goes on, and says something of its own. */
  private static String behindTags(String text) {
    List<String> tags = LimitFinder.written(text);
    if (tags.isEmpty()) return "";
    String last = tags.get(tags.size() - 1);
    return text.substring(text.lastIndexOf(last) + last.length());
  }

  /** "7 days for GT-3" behind "48 hours" takes nothing from the other tiles. */
  private static boolean opensWithFigure(String text) {
    List<Quantities.Found> figures = Quantities.find(text);
    return !figures.isEmpty() && figures.get(0).start() == 0;
  }

  /** "Spacing and width." runs in before what it is about. */
  private boolean isTitle(String text) {
    return text.endsWith(".")
        && text.length() <= LONGEST_TITLE
        && Quantities.find(text).isEmpty()
        && isFragment(text);
  }

  private void read(Passage passage) {
    List<int[]> taken = new ArrayList<>();
    for (Way way : ways) way.finds().addTo(passage, taken);
    placeAlone(passage);
    // "The adhesives R2T and C2TE are accepted for this membrane" asks for neither.
    boolean asks = vocabulary.list("clause.imperative").in(passage.text);
    boolean named = asks || passage.context.describesTile();
    if (!named && passage.said().stream().anyMatch(s -> s.attribute().equals(ON_MEMBRANE)))
      passage.said().removeIf(s -> OF_MORTAR.contains(s.attribute()));
    // "The tile makers allow a membrane to ANSI A118.10 behind their tile" asks for none.
    if (!named && passage.said().stream().anyMatch(s -> s.attribute().equals(ALLOWS_MEMBRANE)))
      passage
          .said()
          .removeIf(s -> s.attribute().equals("membrane.standard") && allowed(passage, s));
  }

  /** "Under water: polyurethane, Use NT": the place says for what, the words behind it which. */
  private void placeAlone(Passage passage) {
    int end = passage.leadEnd;
    if (end == 0 || limitFinder.of(passage.whole.substring(0, end), true).exposures().isEmpty())
      return;
    List<Said> behind = passage.said().stream().filter(s -> s.start() >= end).toList();
    passage.said().removeIf(s -> s.end() <= end && behind.stream().anyMatch(s::differs));
  }

  /** Not so "a membrane to ANSI A118.10, which the tile makers allow". */
  private boolean allowed(Passage passage, Said value) {
    String before = passage.text.substring(0, value.start());
    return vocabulary.list("clause.maker").in(before);
  }

  /** Gives each value its limits; returns what the words of the part as a whole limit it to. */
  private Limits state(List<Statement> out, Passage p, Surroundings around) {
    List<Named> all = p.context.attribute().isEmpty() ? named.in(p) : List.of();
    Limits whole = limits(p);
    for (Named one : all) whole = whole.and(one.limits());
    Map<Said, Limits> own = new Apportionment(p, vocabulary, all).of(around, whole);
    Limits besideAll = besideBrackets(p, whole, bracket -> " ");
    boolean anywhere = p.said().stream().anyMatch(Said::anywhere);
    Limits besideFigures = anywhere ? besideBrackets(p, whole, StatementFinder::apart) : besideAll;
    for (Said value : p.said()) {
      // Of rules of the work, which places do not limit, "at the pool (GT-3)" is of GT-3.
      Limits beside = value.anywhere() ? besideFigures : besideAll;
      if (p.isWhole(value) && beside != whole) own.put(value, around.settle(beside));
      own.compute(value, (v, l) -> LaterWords.ofItsOwn(v.attribute(), l, around.within(beside)));
      if (ofStructures(value, p)) own.computeIfPresent(value, (v, l) -> l.anywhere());
      p.state(out, value, own.get(value));
      p.carried.note(value.attribute(), own.get(value));
    }
    boolean aside = !whole.tags().isEmpty() && ASIDE.matcher(p.whole).find();
    if (aside) return limitFinder.of(ASIDE.matcher(p.whole).replaceAll(" "), false);
    return whole;
  }

  /** "Studs, slab and pool wall: L/480" lists what bends, and is of the tile on all of it. */
  private boolean ofStructures(Said value, Passage p) {
    return value.attribute().equals("substrate.deflection") && limitFinder.listsStructures(p.whole);
  }

  /**
   * "Not sooner than 48 hours (72 hours for GT-2)" and "after 48 hours, GT-2 after 7 days" are
   * required of GT-1 as well.
   */
  private Limits besideBrackets(Passage p, Limits whole, Function<MatchResult, String> without) {
    if (whole.tags().isEmpty()) return whole;
    String outside = IN_BRACKETS.matcher(p.whole).replaceAll(without);
    int comma = outside.lastIndexOf(", ");
    if (comma > 0) {
      String behind = outside.substring(comma + 2);
      LimitFinder.TagsAt tags = LimitFinder.firstTags(behind);
      boolean ownFigure = tags != null && tags.start() <= OWN_FIGURE && hasFigure(behind);
      String first = outside.substring(0, comma);
      // "Keep water off GT-1 for 7 days, and off GT-2, GT-3 for 14 days" names all.
      if (ownFigure && hasFigure(first) && LimitFinder.tags(first).isEmpty()) outside = first;
    }
    return outside.equals(p.whole) ? whole : limitFinder.of(outside, false);
  }

  /** A bracket behind a place tells which tile is there, and is no case of its own: "(GT-3)". */
  private static String apart(MatchResult bracket) {
    String words = bracket.group().substring(1, bracket.group().length() - 1);
    return Tags.alone(words) ? Matcher.quoteReplacement(bracket.group()) : " ";
  }

  private static boolean hasFigure(String text) {
    return !Quantities.find(text).isEmpty();
  }

  /** "PT-2: porcelain ..." speaks of PT-2 even where no schedule has it; "M-1: ..." is a mortar. */
  private Limits leadLimits(String lead, String family, boolean describesTile) {
    Map<String, Set<String>> with = new LinkedHashMap<>();
    for (TileProperties.Hit hit : properties.in(lead))
      with.computeIfAbsent(hit.attribute(), a -> new TreeSet<>()).add(hit.term());
    Limits limits = limitFinder.of(lead, true).supposing(describesTile ? Map.of() : with);
    // "Mirrors: hung when the grout is dry. Mastic by their maker."
    boolean mirrors = vocabulary.list("notTile").in(lead) && !limits.glass();
    if (mirrors && limits.tags().isEmpty()) limits = limits.ofOtherTile();
    boolean tile = family.isEmpty() || family.equals("tile");
    return tile && Tags.alone(lead) ? limits.ofMarksAlone() : limits;
  }

  private Limits limits(Passage p) {
    Limits own = limitFinder.of(p.whole, false);
    if (p.context.describesTile() || !p.context.attribute().isEmpty()) return own;
    Map<String, Set<String>> with = new LinkedHashMap<>();
    for (TileProperties.Hit hit : properties.in(p.whole))
      with.computeIfAbsent(hit.attribute(), a -> new TreeSet<>()).add(hit.term());
    return own.supposing(with);
  }
}
