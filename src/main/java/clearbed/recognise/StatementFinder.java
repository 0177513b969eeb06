package clearbed.recognise;

import clearbed.base.Memo;
import clearbed.model.Origin;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;

/** Finds what a text says of the attributes of the vocabulary. */
final class StatementFinder {
  private static final Pattern USES =
      Pattern.compile(
          "^(?:(?i:use[ds]?|used for|for use|required|applies|apply|locations?)\\b[^.;]{0,12}|(?:[\\w-]+ ){0,3})"
              + "(?:for|of|at|in|on|:)\\s+(?:tags? |(?i:glass (?:tiles?|mosaics?)) )?[A-Z]{1,5}[-. ]?(?:\\d|[A-Z]\\b)");

  private static final Pattern USED =
      Pattern.compile("^(?:use[ds]?|for use|applies|apply)\\b", Pattern.CASE_INSENSITIVE);

  private record Asked(String text, Context context) {}

  private final Vocabulary vocabulary;
  private final LimitFinder limitFinder;
  private final Memo<Asked, List<Statement>> known = new Memo<>(Asked::text);
  private final OpenItems openItems;
  private final List<Way> ways;
  private final FigurePlaces figurePlaces;

  /**
   * One way in which words state something.
   *
   * @param name what it finds
   */
  record Way(String name, Finds finds) {

    /** Adds what it finds in a part of a text. */
    interface Finds {
      /**
       * @param taken stretches whose figures an earlier way has read; it adds its own
       */
      void addTo(List<Statement> out, Passage passage, List<int[]> taken);
    }
  }

  StatementFinder(Vocabulary vocabulary) {
    this(vocabulary, UnaryOperator.identity());
  }

  /**
   * @param chosen gives those of all ways that are gone, in their order
   */
  StatementFinder(Vocabulary vocabulary, UnaryOperator<List<Way>> chosen) {
    this.vocabulary = vocabulary;
    this.limitFinder = new LimitFinder(vocabulary);
    this.openItems = new OpenItems(vocabulary);
    this.figurePlaces = new FigurePlaces(limitFinder);
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
        new Way("open items", (out, p, taken) -> open.addTo(out, p)),
        new Way("standards", (out, p, taken) -> standards.addTo(out, p)),
        new Way("flatness", (out, p, taken) -> taken.addAll(flatness.addTo(out, p))),
        new Way("deflection", (out, p, taken) -> flatness.addDeflection(out, p)),
        new Way("amounts", amounts::addTo),
        new Way("sizes", amounts::addSize),
        new Way("terms", (out, p, taken) -> terms.addTo(out, p)),
        new Way("requirements", (out, p, taken) -> requirements.addTo(out, p)));
  }

  /** All statements of a text; each carries the limits of its own part. */
  List<Statement> find(String text, Origin origin, Context context) {
    List<Statement> found =
        known.get(new Asked(text, context), () -> List.copyOf(findAnew(text, origin, context)));
    return Statement.allAt(origin, found);
  }

  private List<Statement> findAnew(String text, Origin origin, Context context) {
    List<Statement> out = new ArrayList<>();
    String family = context.family();
    Carried carried = new Carried();
    Set<String> uses = new TreeSet<>();
    Limits leadLimits = Limits.NONE;
    Limits previous = Limits.NONE;
    String spoken = "";
    for (Parts.Part part : Parts.of(PlainText.of(text), vocabulary.list("except"))) {
      String leadFamily = part.lead().isEmpty() ? "" : familyIn(part.lead());
      // "JS-2, interior tile walls: ..." among sealants is still about a sealant.
      if (!leadFamily.isEmpty() && !(leadFamily.equals("tile") && !family.isEmpty()))
        family = leadFamily;
      if (!part.lead().isEmpty()) leadLimits = leadLimits(part.lead(), family);
      Limits limits = limits(part, context).within(leadLimits);
      if (previous.glass()) limits = LimitFinder.behindGlass(limits, part.text());
      Limits said = limits;
      if (part.sentence()) limits = LaterWords.sameSubject(limits, previous, leadFamily.isEmpty());
      if (part.exception()) {
        previous = LaterWords.exceptFrom(out, previous, limitFinder.of(part.text(), false));
      }
      String own = familyIn(part.text());
      // "Except in the pool, grout with CG2; in the pool with RG" is about grout to its end.
      boolean goesOn = own.isEmpty() && !part.sentence() && !spoken.isEmpty();
      int before = out.size();
      read(
          out,
          new Passage(
              vocabulary,
              part,
              openItems.closed(part.text()),
              context.withFamily(goesOn ? spoken : family),
              origin.withText(text),
              limits,
              carried));
      if (part.sentence()) LaterWords.rulesOfTheSite(out, before, said);
      if (USES.matcher(part.text()).find()) {
        // "Used for glass tile GT-1" is said of the mortar.
        String of = own.equals("tile") && USED.matcher(part.text()).find() ? "" : own;
        uses = LaterWords.spreadBack(out, before, uses, leadLimits.tags(), of, limits);
      }
      if (!own.isEmpty()) spoken = own;
      if (!part.exception()) previous = limits;
    }
    return out;
  }

  private void read(List<Statement> out, Passage passage) {
    int before = out.size();
    List<int[]> taken = new ArrayList<>();
    for (Way way : ways) way.finds().addTo(out, passage, taken);
    figurePlaces.spread(out, before, passage);
  }

  /** The part of the work a text speaks of first, or empty. */
  String familyIn(String text) {
    return vocabulary.family(text).orElse("");
  }

  /** "PT-2: porcelain ..." speaks of PT-2 even where no schedule has it; "M-1: ..." is a mortar. */
  private Limits leadLimits(String lead, String family) {
    Limits limits = limitFinder.of(lead, true);
    boolean tile = family.isEmpty() || family.equals("tile");
    return tile && Tags.alone(lead) ? limits.ofMarksAlone() : limits;
  }

  private Limits limits(Parts.Part part, Context context) {
    Limits own = limitFinder.of(part.text(), false);
    if (context.describesTile() || !context.attribute().isEmpty()) return own;
    Map<String, Set<String>> with = new LinkedHashMap<>();
    for (String id : List.of("tile.translucency", "tile.backing", "tile.mounting")) {
      Set<String> terms = supposed(part.text(), id);
      if (!terms.isEmpty()) with.put(id, terms);
    }
    return own.supposing(with);
  }

  private Set<String> supposed(String text, String id) {
    Set<String> terms = new TreeSet<>();
    Attribute attribute = vocabulary.attribute(id).orElseThrow();
    attribute
        .words()
        .terms()
        .forEach(
            (term, phrases) -> {
              if (!term.equals("none") && !term.equals("loose")) {
                for (Phrases.Hit hit : phrases.all(text)) {
                  String tail =
                      text.substring(hit.end(), Math.min(text.length(), hit.end() + 34))
                          .toLowerCase(Locale.ROOT);
                  if (tail.matches(
                          "[\\s-]*(?:(?:or|and|,)\\s*\\w+[\\s-]*){0,2}(?:backing|backed|back|faced|face|mounted|cast |fused |glass|tiles?|mosaics?|sheets?|coat).*")
                      || text.substring(hit.start(), hit.end())
                          .toLowerCase(Locale.ROOT)
                          .matches(".*(?:back|face|mount|see).*")) terms.add(term);
                }
              }
            });
    return terms;
  }
}
