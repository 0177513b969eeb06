package clearbed.recognise.statement;

import clearbed.base.Cancellation;
import clearbed.base.Memo;
import clearbed.model.document.Origin;
import clearbed.model.value.Content;
import clearbed.recognise.statement.figure.AmountStatements;
import clearbed.recognise.statement.figure.FlatnessStatements;
import clearbed.recognise.statement.figure.SizeStatements;
import clearbed.recognise.statement.limit.LaterWords;
import clearbed.recognise.statement.limit.LimitFinder;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.statement.part.Carried;
import clearbed.recognise.statement.part.Context;
import clearbed.recognise.statement.part.PartLimits;
import clearbed.recognise.statement.part.PartRoles;
import clearbed.recognise.statement.part.Parts;
import clearbed.recognise.statement.part.Passage;
import clearbed.recognise.statement.part.Said;
import clearbed.recognise.statement.part.Surroundings;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;

/** Finds what a text says of the attributes of the vocabulary. */
public final class StatementFinder {
  /** "24.00.09 Z: Jointing." */
  private static final Pattern LABEL = Pattern.compile("^[\\d.]+(?: ?[A-Z])?: ");

  private static final String ON_MEMBRANE = "mortar.membraneUse";
  private static final String ALLOWS_MEMBRANE = "membrane.confirmation";
  private static final Set<String> OF_MORTAR =
      Set.of("mortar.standard", "mortar.isoClass", "mortar.chemistry");

  private record Asked(String text, Context context) {}

  private final Vocabulary vocabulary;
  private final LimitFinder limitFinder;
  private final Memo<Asked, List<Statement>> known = new Memo<>(Asked::text);
  private final OpenItems openItems;
  private final List<Way> ways;
  private final PartRoles roles;
  private final PartLimits limits;

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
    this.limitFinder = new LimitFinder(vocabulary);
    this.openItems = new OpenItems(vocabulary);
    this.roles = new PartRoles(vocabulary);
    this.limits = new PartLimits(vocabulary, limitFinder);
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
      if (part.text().endsWith("?") || roles.tellsWhere(part.text()) || roles.defines(part.text()))
        continue;
      if (part.sentence()
          && !out.isEmpty()
          && vocabulary.list("clause.saidElsewhere").in(part.text())) {
        LaterWords.saidElsewhere(out, limitFinder.of(part.text(), false).tags());
        continue;
      }
      String opening = LABEL.matcher(part.text()).replaceFirst("");
      if (!part.sentence() && out.isEmpty() && roles.isTitle(opening)) carried.title(opening);
      else if (!carried.title().isEmpty() && roles.isDenial(opening)) deny(out, carried.title());
      if (!part.lead().isEmpty()) carried.label(part.lead());
      String leadFamily = part.lead().isEmpty() ? "" : vocabulary.family(part.lead());
      // "JS-2, interior tile walls: ..." among sealants is still about a sealant.
      if (!leadFamily.isEmpty() && !(leadFamily.equals("tile") && !family.isEmpty()))
        family = leadFamily;
      if (!part.lead().isEmpty())
        leadLimits = limits.ofLead(part.lead(), family, context.describesTile());
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
      if (part.sentence() && own.equals("tile") && roles.saysHowMade(part.text())) spoken = "tile";
      boolean goesOn =
          !names && !spoken.isEmpty() && (!part.sentence() || roles.isFragment(part.text()));
      int before = out.size();
      // "Movement capability: Class 50, except Class 100/50 at GT-5" is of the sealant to its end.
      String excepted = part.exception() && own.isEmpty() ? familyOf(out, mainFrom) : "";
      if (part.exception())
        previous =
            LaterWords.exceptFrom(
                out, mainFrom, previous, limitFinder.exceptions(part.text(), false));
      else mainFrom = before;
      Limits carriedOn = part.sentence() && !theyAll ? contrast.carried(previous) : previous;
      // "Sheets of GT-1 are set by ANSI A108.14. Mortar coverage is ..." goes on with all tiles.
      boolean another =
          part.sentence() && names && !own.equals(spoken) && !roles.isFragment(part.text());
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
      Limits said = limits.state(out, passage, around);
      if (vocabulary.list("clause.also").in(part.text())) LaterWords.besides(out, before);
      if (vocabulary.list("clause.inNoCase").in(part.text())) LaterWords.outermost(out, before);
      contrast.note(said.tags());
      if (part.sentence()) LaterWords.rulesOfTheSite(out, before, around.within(said));
      if (!part.exception() && roles.saysWhatFor(part.text())) {
        // "Used for glass tile GT-1" is said of the mortar.
        String of = own.equals("tile") && PartRoles.opensWithUse(part.text()) ? "" : own;
        uses = LaterWords.spreadBack(out, before, uses, leadLimits.tags(), of, around.settle(said));
      }
      if (names || spoken.isEmpty()) spoken = own;
      if (!part.exception()) previous = around.settle(said);
      carried.tagged(!said.tags().isEmpty());
      if (!said.tags().isEmpty()) inPassing = PartRoles.isInPassing(part.text());
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

  /** What the title alone required. */
  private static void deny(List<Statement> out, String title) {
    out.replaceAll(
        s ->
            s.content() instanceof Content.Required && s.asWritten().equals(title)
                ? new Statement(
                    s.attribute(), s.content(), true, s.asWritten(), s.origin(), s.limits())
                : s);
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
}
