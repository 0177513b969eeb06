package clearbed.recognise.statement.part;

import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.LaterWords;
import clearbed.recognise.statement.limit.LimitFinder;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the values of a part of a text are limited to, each by itself and all together. */
public final class PartLimits {
  /** "(GT-4: ANSI A108.6)" is said of GT-4 and ends with the bracket. */
  private static final Pattern ASIDE = Pattern.compile("\\([^():]{1,40}:[^()]{1,200}\\)");

  private static final Pattern IN_BRACKETS = Pattern.compile("\\([^()]{0,200}\\)");

  /** Behind a comma a tile stands this close to a figure of its own: "72 hours at GT-2". */
  private static final int OWN_FIGURE = 24;

  private final Vocabulary vocabulary;
  private final LimitFinder limitFinder;
  private final NamedFinder named;
  private final TileProperties properties;

  public PartLimits(Vocabulary vocabulary, LimitFinder limitFinder) {
    this.vocabulary = vocabulary;
    this.limitFinder = limitFinder;
    this.named = new NamedFinder(vocabulary, limitFinder);
    this.properties = new TileProperties(vocabulary);
  }

  /** Gives each value its limits; returns what the words of the part as a whole limit it to. */
  public Limits state(List<Statement> out, Passage p, Surroundings around) {
    List<Named> all = p.context.attribute().isEmpty() ? named.in(p) : List.of();
    Limits whole = whole(p);
    for (Named one : all) whole = whole.and(one.limits());
    Map<Said, Limits> own = new Apportionment(p, vocabulary, all).of(around, whole);
    Limits besideAll = besideBrackets(p, whole, bracket -> " ");
    boolean anywhere = p.said().stream().anyMatch(Said::anywhere);
    Limits listed = anywhere ? listed(around) : Limits.NONE;
    Limits besideFigures = anywhere ? besideBrackets(p, whole, PartLimits::apart) : besideAll;
    for (Said value : p.said()) {
      // Of rules of the work, which places do not limit, "at the pool (GT-3)" is of GT-3.
      Limits beside = value.anywhere() ? besideFigures : besideAll;
      if (p.isWhole(value) && beside != whole) own.put(value, around.settle(beside));
      own.compute(value, (v, l) -> LaterWords.ofItsOwn(v.attribute(), l, around.within(beside)));
      if (ofStructures(value, p)) own.computeIfPresent(value, (v, l) -> l.anywhere());
      Limits its = own.get(value);
      Optional<Limits> places =
          value.anywhere() ? Optional.empty() : named.placesBesideTags(p.text, its);
      places.ifPresent(at -> p.state(out, value, at));
      if (places.isPresent()) its = its.anywhere();
      p.state(out, value, value.anywhere() ? its.anywhere().within(listed) : its);
      p.carried.note(value.attribute(), own.get(value));
    }
    boolean aside = !whole.tags().isEmpty() && ASIDE.matcher(p.whole).find();
    if (aside) return limitFinder.of(ASIDE.matcher(p.whole).replaceAll(" "), false);
    return whole;
  }

  /** "Showers, steam room and porch: keep water off": a list of places limits whatever follows. */
  private Limits listed(Surroundings around) {
    String lead = around.part().lead();
    return limitFinder.opensWithPlace(lead) && vocabulary.isVerbless(lead)
        ? around.lead().placesAlone()
        : Limits.NONE;
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
      TagFinder.TagsAt tags = TagFinder.firstTags(behind);
      boolean ownFigure = tags != null && tags.start() <= OWN_FIGURE && hasFigure(behind);
      String first = outside.substring(0, comma);
      // "Keep water off GT-1 for 7 days, and off GT-2, GT-3 for 14 days" names all.
      if (ownFigure && hasFigure(first) && TagFinder.tags(first).isEmpty()) outside = first;
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
  public Limits ofLead(String lead, String family, boolean describesTile) {
    Map<String, Set<String>> with = new LinkedHashMap<>();
    for (TileProperties.PropertyHit hit : properties.in(lead))
      with.computeIfAbsent(hit.attribute(), a -> new TreeSet<>()).add(hit.term());
    Limits limits = limitFinder.of(lead, true).supposing(describesTile ? Map.of() : with);
    // "Mirrors: hung when the grout is dry. Mastic by their maker."
    boolean mirrors = vocabulary.list("notTile").in(lead) && !limits.glass();
    if (mirrors && limits.tags().isEmpty()) limits = limits.ofOtherTile();
    boolean tile = family.isEmpty() || family.equals("tile");
    return tile && Tags.alone(lead) ? limits.ofMarksAlone() : limits;
  }

  private Limits whole(Passage p) {
    Limits own = limitFinder.of(p.whole, false);
    if (p.context.describesTile() || !p.context.attribute().isEmpty()) return own;
    Map<String, Set<String>> with = new LinkedHashMap<>();
    for (TileProperties.PropertyHit hit : properties.in(p.whole))
      with.computeIfAbsent(hit.attribute(), a -> new TreeSet<>()).add(hit.term());
    return own.supposing(with);
  }
}
