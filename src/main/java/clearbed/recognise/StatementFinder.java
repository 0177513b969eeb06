package clearbed.recognise;

import clearbed.model.Origin;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Finds what a text says of the attributes of the vocabulary. */
final class StatementFinder {
  private static final Pattern USES =
      Pattern.compile(
          "^(?:(?i:use[ds]?|used for|for use|required|applies|apply|locations?)\\b[^.;]{0,12}|(?:[\\w-]+ ){0,3})"
              + "(?:for|of|at|in|on|:)\\s+(?:tags? |(?i:glass (?:tiles?|mosaics?)) )?[A-Z]{1,5}[-. ]?(?:\\d|[A-Z]\\b)");

  private static final Pattern USED =
      Pattern.compile("^(?:use[ds]?|for use|applies|apply)\\b", Pattern.CASE_INSENSITIVE);

  private static final String ON_MEMBRANE = "mortar.membraneUse";
  private static final Set<String> OF_MORTAR =
      Set.of("mortar.standard", "mortar.isoClass", "mortar.chemistry");

  private record Asked(String text, Context context) {}

  private final Vocabulary vocabulary;
  private final LimitFinder limitFinder;
  private final Remembered<Asked> remembered = new Remembered<>();
  private final OpenItems openItems;
  private final OpenStatements open;
  private final StandardStatements standards;
  private final FlatnessStatements flatness;
  private final AmountStatements amounts;
  private final TermStatements terms;
  private final Requirements requirements;
  private final NamedFinder named;
  private final TileProperties properties;

  StatementFinder(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.limitFinder = new LimitFinder(vocabulary);
    this.openItems = new OpenItems(vocabulary);
    this.open = new OpenStatements(vocabulary, openItems, this);
    this.standards = new StandardStatements(vocabulary);
    this.flatness = new FlatnessStatements(vocabulary);
    this.amounts = new AmountStatements(vocabulary);
    this.terms = new TermStatements(vocabulary);
    this.requirements = new Requirements(vocabulary);
    this.named = new NamedFinder(vocabulary, limitFinder);
    this.properties = new TileProperties(vocabulary);
  }

  /** All statements of a text; each carries the limits of its own part. */
  List<Statement> find(String text, Origin origin, Context context) {
    return remembered.of(
        new Asked(text, context), text, origin, () -> findAnew(text, origin, context));
  }

  private List<Statement> findAnew(String text, Origin origin, Context context) {
    List<Statement> out = new ArrayList<>();
    String family = context.family();
    Carried carried = new Carried();
    Set<String> uses = new TreeSet<>();
    Limits leadLimits = Limits.NONE;
    Limits previous = Limits.NONE;
    String spoken = "";
    int mainFrom = 0;
    for (Parts.Part part : Parts.of(PlainText.of(text), vocabulary.list("except"))) {
      String leadFamily = part.lead().isEmpty() ? "" : familyIn(part.lead());
      // "JS-2, interior tile walls: ..." among sealants is still about a sealant.
      if (!leadFamily.isEmpty() && !(leadFamily.equals("tile") && !family.isEmpty()))
        family = leadFamily;
      if (!part.lead().isEmpty())
        leadLimits = leadLimits(part.lead(), family, context.describesTile());
      String own = familyIn(part.text());
      // "Except in the pool, grout with CG2; in the pool with RG" is about grout to its end.
      boolean names = !own.isEmpty() && !own.equals("tile");
      boolean goesOn = !names && !part.sentence() && !spoken.isEmpty();
      int before = out.size();
      if (part.exception())
        previous =
            LaterWords.exceptFrom(out, mainFrom, previous, limitFinder.of(part.text(), false));
      else mainFrom = before;
      Surroundings around = new Surroundings(part, leadLimits, previous, leadFamily.isEmpty());
      Passage passage =
          new Passage(
              vocabulary,
              part,
              openItems.closed(part.text()),
              context.withFamily(goesOn ? spoken : family),
              origin.withText(text),
              carried);
      read(passage);
      Limits said = state(out, passage, around);
      if (part.sentence()) LaterWords.rulesOfTheSite(out, before, around.within(said));
      if (!part.exception() && USES.matcher(part.text()).find()) {
        // "Used for glass tile GT-1" is said of the mortar.
        String of = own.equals("tile") && USED.matcher(part.text()).find() ? "" : own;
        uses = LaterWords.spreadBack(out, before, uses, leadLimits.tags(), of, around.settle(said));
      }
      if (names || spoken.isEmpty()) spoken = own;
      if (!part.exception()) previous = around.settle(said);
    }
    return out;
  }

  private void read(Passage passage) {
    open.addTo(passage);
    standards.addTo(passage);
    List<int[]> taken = flatness.addTo(passage);
    flatness.addDeflection(passage);
    amounts.addTo(passage, taken);
    amounts.addSize(passage, taken);
    terms.addTo(passage);
    requirements.addTo(passage);
    // "The adhesives R2T and C2TE are accepted for this membrane" asks for neither.
    boolean asks = vocabulary.list("clause.imperative").in(passage.text);
    if (!asks && passage.said().stream().anyMatch(s -> s.attribute().equals(ON_MEMBRANE)))
      passage.said().removeIf(s -> OF_MORTAR.contains(s.attribute()));
  }

  /** Gives each value its limits; returns what the words of the part as a whole limit it to. */
  private Limits state(List<Statement> out, Passage p, Surroundings around) {
    List<Named> all = p.context.attribute().isEmpty() ? named.in(p) : List.of();
    Limits whole = limits(p);
    for (Named one : all) whole = whole.and(one.limits());
    Map<Said, Limits> own = new Apportionment(p, vocabulary, all).of(around, whole);
    for (Said value : p.said()) {
      p.state(out, value, own.get(value));
      p.carried.note(value.attribute(), own.get(value));
    }
    return whole;
  }

  /** The part of the work a text speaks of first, or empty. */
  String familyIn(String text) {
    String best = "";
    int at = Integer.MAX_VALUE;
    for (Map.Entry<String, Phrases> family : vocabulary.families().entrySet()) {
      Phrases.Hit hit = family.getValue().first(text);
      if (hit != null && (hit.start() < at)) {
        // "Glass tile mortar" speaks of the mortar: the tile is what it is for.
        if (family.getKey().equals("tile") && !best.isEmpty()) continue;
        best = family.getKey();
        at = family.getKey().equals("tile") ? Integer.MAX_VALUE : hit.start();
      }
    }
    return best;
  }

  /** "PT-2: porcelain ..." speaks of PT-2 even where no schedule has it; "M-1: ..." is a mortar. */
  private Limits leadLimits(String lead, String family, boolean describesTile) {
    Map<String, Set<String>> with = new LinkedHashMap<>();
    for (TileProperties.Hit hit : properties.in(lead))
      with.computeIfAbsent(hit.attribute(), a -> new TreeSet<>()).add(hit.term());
    Limits limits = limitFinder.of(lead, true).supposing(describesTile ? Map.of() : with);
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
