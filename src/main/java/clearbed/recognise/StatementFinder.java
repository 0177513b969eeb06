package clearbed.recognise;

import clearbed.model.Bound;
import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Origin;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds what a text says of the attributes of the vocabulary. */
final class StatementFinder {
  private static final Pattern SPAN_RATIO =
      Pattern.compile(
          "(?:\\bL|\\bspan)\\s*/\\s*(\\d{2,4})\\b|\\b1/(\\d{3})\\s+(?:of\\s+)?(?:the\\s+)?span",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern FLATNESS =
      Pattern.compile(
          "("
              + Numbers.PATTERN
              + "\\s*"
              + UnitWords.PATTERN
              + ")\\s*(?:\\([^)]*\\)\\s*|\\[[^\\]]*\\]\\s*)?(?:in|per|over|within|under|beneath|along|at|from|below)\\s+(?:a\\s+|any\\s+)?("
              + Numbers.PATTERN
              + "[ -]*"
              + UnitWords.PATTERN
              + ")(?!\\s*(?:wide|thick|c))",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern PLAIN_RATIO =
      Pattern.compile(
          "(?<![\\d./-])([01]?\\.\\d{1,2})(?!\\d|\\.\\d|\\s*(?:in\\b|mm|\"|%|percent))");
  private static final Pattern TESTED =
      Pattern.compile(
          "(?:tested|test(?:ing)?|determined|measured|method)\\b[^.;,]{0,40}$",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern USES =
      Pattern.compile(
          "^(?:(?i:use[ds]?|for use|required|applies|apply|locations?)\\b[^.;]{0,12}|(?:[\\w-]+ ){0,3})"
              + "(?:for|of|at|in|on|:)\\s+(?:tags? )?[A-Z]{1,5}[-. ]?(?:\\d|[A-Z]\\b)");
  private static final int NEAR = 90;
  private static final int OPEN_NEAR = 24;
  // A lead-in names what its paragraph is about, however far the figure stands behind it.
  private static final int IN_LEAD = 6;

  private final Vocabulary vocabulary;
  private final LimitFinder limitFinder;
  private final OpenItems openItems;

  StatementFinder(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.limitFinder = new LimitFinder(vocabulary);
    this.openItems = new OpenItems(vocabulary);
  }

  /** All statements of a text; each carries the limits of its own part. */
  List<Statement> find(String text, Origin origin, Context context) {
    List<Statement> out = new ArrayList<>();
    String family = context.family();
    Carried carried = new Carried();
    Set<String> uses = new TreeSet<>();
    Limits leadLimits = Limits.NONE;
    Limits previous = Limits.NONE;
    for (Parts.Part part : Parts.of(PlainText.of(text), vocabulary.list("except"))) {
      String leadFamily = part.lead().isEmpty() ? "" : familyIn(part.lead());
      // "JS-2, interior tile walls: ..." among sealants is still about a sealant.
      if (!leadFamily.isEmpty() && !(leadFamily.equals("tile") && !family.isEmpty()))
        family = leadFamily;
      if (!part.lead().isEmpty()) leadLimits = limitFinder.of(part.lead(), true);
      Limits limits = limits(part, context).within(leadLimits);
      if (part.sentence()) limits = sameSubject(limits, previous);
      if (part.exception()) {
        exceptFrom(out, previous, limitFinder.of(part.text(), false));
      }
      Reader reader =
          new Reader(part, context.withFamily(family), origin.withText(text), limits, carried);
      int before = out.size();
      reader.read(out);
      if (USES.matcher(part.text()).find()) {
        uses = spreadBack(out, before, uses, limits);
      }
      previous = limits;
    }
    return out;
  }

  /**
   * What the parts before have spoken of: "coverage: 100 percent behind clear tile; 95 percent
   * elsewhere".
   */
  private static final class Carried {
    private Attribute amount;
    private boolean flatness;
  }

  /** "Epoxy grout: ANSI A118.3. Use for GT-2." says afterwards for which tile the standard is. */
  private static Set<String> spreadBack(
      List<Statement> out, int before, Set<String> earlier, Limits said) {
    if (said.tags().isEmpty()) return earlier;
    Set<String> all = new TreeSet<>(earlier);
    all.addAll(said.tags());
    for (int i = 0; i < before; i++) {
      Statement s = out.get(i);
      Limits l = s.limits();
      if (!l.tags().isEmpty() && !l.tags().equals(earlier)) continue;
      Limits now =
          new Limits(
              all, l.glass(), l.otherTile(), l.exposures(), l.except(), l.surfaces(), l.with());
      out.set(
          i,
          new Statement(s.attribute(), s.content(), s.excluded(), s.asWritten(), s.origin(), now));
    }
    return all;
  }

  /** A sentence that names no tile speaks of the tile of the sentence before. */
  private static Limits sameSubject(Limits l, Limits previous) {
    boolean named = l.glass() || !l.tags().isEmpty() || !l.otherTile().isEmpty();
    if (named) return l;
    return new Limits(
        previous.tags(),
        previous.glass(),
        previous.otherTile(),
        l.exposures(),
        l.except(),
        l.surfaces(),
        l.with());
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

  private Limits limits(Parts.Part part, Context context) {
    Limits own = limitFinder.of(part.text(), false);
    if (context.describesTile() || !context.attribute().isEmpty()) return own;
    Map<String, Set<String>> with = new LinkedHashMap<>();
    for (String id : List.of("tile.translucency", "tile.backing", "tile.mounting")) {
      Set<String> terms = supposed(part.text(), id);
      if (!terms.isEmpty()) with.put(id, terms);
    }
    return new Limits(
        own.tags(),
        own.glass(),
        own.otherTile(),
        own.exposures(),
        own.except(),
        own.surfaces(),
        with);
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
                          .toLowerCase(java.util.Locale.ROOT);
                  if (tail.matches(
                          "[\\s-]*(?:(?:or|and|,)\\s*\\w+[\\s-]*){0,2}(?:backing|backed|back|faced|face|mounted|cast |fused |glass|tiles?|mosaics?|sheets?|coat).*")
                      || text.substring(hit.start(), hit.end())
                          .toLowerCase(java.util.Locale.ROOT)
                          .matches(".*(?:back|face|mount|see).*")) terms.add(term);
                }
              }
            });
    return terms;
  }

  private static void exceptFrom(List<Statement> out, Limits previous, Limits exception) {
    Set<String> except = new TreeSet<>(exception.exposures());
    except.addAll(exception.tags());
    if (except.isEmpty()) return;
    for (int i = 0; i < out.size(); i++) {
      Statement s = out.get(i);
      if (s.limits() != previous && !s.limits().equals(previous)) continue;
      Limits l = s.limits();
      out.set(
          i,
          new Statement(
              s.attribute(),
              s.content(),
              s.excluded(),
              s.asWritten(),
              s.origin(),
              new Limits(
                  l.tags(),
                  l.glass(),
                  l.otherTile(),
                  l.exposures(),
                  except,
                  l.surfaces(),
                  l.with())));
    }
  }

  /** Reads one part. */
  private final class Reader {
    private final String whole;
    private final String text;
    private final Context context;
    private final Origin origin;
    private final Limits limits;
    private final Carried carried;
    private final int leadEnd;
    private final Map<Phrases.Hit, String> cues = new LinkedHashMap<>();

    Reader(Parts.Part part, Context context, Origin origin, Limits limits, Carried carried) {
      this.carried = carried;
      this.leadEnd = part.lead().length();
      this.whole = part.text();
      this.text = openItems.closed(part.text());
      this.context = context;
      this.origin = origin;
      this.limits = limits;
      vocabulary
          .families()
          .forEach((family, phrases) -> phrases.all(whole).forEach(hit -> cues.put(hit, family)));
    }

    void read(List<Statement> out) {
      int before = out.size();
      openItems(out);
      standards(out);
      List<int[]> taken = flatness(out);
      spanRatios(out);
      amounts(out, taken);
      sizes(out, taken);
      terms(out);
      required(out);
      nearestPlaces(out, before);
    }

    private void add(List<Statement> out, Attribute attribute, Content content, boolean excluded) {
      if (!context.mayStateFamily(attribute.family())) return;
      Statement statement =
          new Statement(attribute.id(), content, excluded, whole, origin, limitsFor(attribute));
      boolean known =
          out.stream()
              .anyMatch(
                  s ->
                      s.attribute().equals(attribute.id())
                          && s.content().equals(content)
                          && s.excluded() == excluded
                          && s.limits().equals(statement.limits()));
      if (!known) out.add(statement);
    }

    /**
     * Work on site is not limited by the places its sentence names: "do not fill the pool until
     * cured".
     */
    private Limits limitsFor(Attribute attribute) {
      boolean places =
          attribute.family().equals("process")
              || attribute.id().equals("movement.places")
              || attribute.id().equals("movement.layout");
      if (!places) return limits;
      return new Limits(
          limits.tags(),
          limits.glass(),
          limits.otherTile(),
          Set.of(),
          Set.of(),
          Set.of(),
          Map.of());
    }

    private void openItems(List<Statement> out) {
      for (OpenItems.Open open : openItems.find(whole)) {
        String id = context.attribute().isEmpty() ? attributeOf(open) : context.attribute();
        Attribute attribute = vocabulary.attribute(id).orElse(null);
        if (attribute != null) add(out, attribute, new Content.Open(open.text()), false);
        else
          out.add(
              new Statement("text", new Content.Open(open.text()), false, whole, origin, limits));
      }
    }

    private String attributeOf(OpenItems.Open open) {
      Context inside =
          Context.running(familyNear(open.start(), open.end()), context.families(), true);
      boolean words = open.inner().chars().anyMatch(Character::isLetter);
      for (Statement s : words ? find(open.inner(), origin, inside) : List.<Statement>of()) {
        if (!s.attribute().equals("text")) return s.attribute();
      }
      String best = "";
      int distance = Integer.MAX_VALUE;
      for (Attribute a : vocabulary.attributes()) {
        if (!context.mayStateFamily(a.family())
            || a.kind() == Attribute.Kind.WORDS
            || a.kind() == Attribute.Kind.SIZE
            || a.id().startsWith("location.")) continue;
        for (Phrases phrases : List.of(a.words().cues(), a.words().headers())) {
          for (Phrases.Hit hit : phrases.all(whole)) {
            boolean far = hit.distanceTo(open.start(), open.end()) > OPEN_NEAR;
            if (far && hit.end() > leadEnd) continue;
            int d =
                hit.distanceTo(open.start(), open.end()) * 4
                    - (hit.end() - hit.start())
                    + familyPenalty(a, open.start(), open.end());
            if (d < distance) {
              distance = d;
              best = a.id();
            }
          }
        }
      }
      return best;
    }

    private void standards(List<Statement> out) {
      for (Citations.Found found : Citations.find(text)) {
        StandardInfo info = vocabulary.standardOf(found.standard().designation()).orElse(null);
        String id = info == null ? "" : statedBy(info, found);
        if (info == null && context.attribute().endsWith(".standard")) id = context.attribute();
        Attribute attribute = vocabulary.attribute(id).orElse(null);
        if (attribute == null) continue;
        if (TESTED.matcher(text.substring(0, found.start())).find()
            && attribute.id().equals("mortar.standard")) continue;
        add(out, attribute, found.standard(), negated(found.start(), found.end()));
      }
    }

    private String statedBy(StandardInfo info, Citations.Found found) {
      if (info.states().isEmpty()) return "";
      if (info.states().size() == 1) return info.states().get(0);
      String family = familyNear(found.start(), found.end());
      int i = info.families().indexOf(family);
      return info.states().get(Math.max(0, i));
    }

    private List<int[]> flatness(List<Statement> out) {
      List<int[]> taken = new ArrayList<>();
      Attribute attribute = vocabulary.attribute("substrate.flatness").orElse(null);
      if (attribute == null) return taken;
      boolean column = context.attribute().equals(attribute.id());
      boolean spoken =
          attribute.words().cues().in(text)
              || carried.flatness
              || origin.text().matches("(?is).*\\bflat.*");
      if (!column && (!spoken || !text.matches(".*\\d.*"))) return taken;
      List<Content.Deviation> deviations = new ArrayList<>();
      Matcher m = FLATNESS.matcher(text);
      int from = 0;
      while (m.find(from)) {
        from = m.end();
        Quantity deviation = length(m.group(1));
        Quantity over = length(m.group(2));
        if (deviation == null || over == null || deviation.compareTo(over.times(0.1)) > 0) continue;
        taken.add(new int[] {m.start(), m.end()});
        if (m.group(0).contains("[")
            || text.substring(0, m.start()).endsWith("(")
            || text.substring(0, m.start()).endsWith("[")) continue;
        deviations.add(new Content.Deviation(deviation, over));
      }
      if (!deviations.isEmpty()) {
        add(out, attribute, new Content.Flatness(deviations), false);
        carried.flatness = true;
      }
      return taken;
    }

    private Quantity length(String written) {
      return Quantities.parse(written, Dimension.LENGTH).map(Content.Amount::low).orElse(null);
    }

    private void spanRatios(List<Statement> out) {
      Attribute attribute = vocabulary.attribute("substrate.deflection").orElse(null);
      Matcher m = SPAN_RATIO.matcher(text);
      while (attribute != null && m.find()) {
        String n = m.group(1) != null ? m.group(1) : m.group(2);
        add(
            out,
            attribute,
            Content.Amount.exact(Quantity.of(Integer.parseInt(n), Unit.ONE)),
            false);
      }
    }

    private void amounts(List<Statement> out, List<int[]> taken) {
      for (Quantities.Found found : Quantities.find(text)) {
        if (found.restates() || inside(taken, found)) continue;
        if (found.content() instanceof Content.Amount amount)
          amount(out, amount, found.start(), found.end());
      }
      Matcher m = PLAIN_RATIO.matcher(text);
      while (m.find()) {
        Content.Amount amount =
            Content.Amount.exact(Quantity.of(Double.parseDouble(m.group(1)), Unit.ONE));
        Bound bound = Quantities.bound(text.substring(0, m.start()), text.substring(m.end()));
        amount(out, new Content.Amount(amount.low(), amount.high(), bound), m.start(), m.end());
      }
      if (context.attribute().isEmpty()) return;
      bareNumber(out);
    }

    /** A cell that holds a number only; its header gave the unit. */
    private void bareNumber(List<Statement> out) {
      Attribute column = vocabulary.attribute(context.attribute()).orElse(null);
      if (column == null
          || column.kind() != Attribute.Kind.AMOUNT
          || column.dimension() != Dimension.RATIO) return;
      Quantities.parse(text, Dimension.RATIO).ifPresent(a -> add(out, column, a, false));
    }

    private void amount(List<Statement> out, Content.Amount amount, int start, int end) {
      Attribute best = null;
      Content.Amount meant = null;
      int distance = Integer.MAX_VALUE;
      for (Attribute a : vocabulary.attributes()) {
        if (a.kind() != Attribute.Kind.AMOUNT || !context.mayStateFamily(a.family())) continue;
        Content.Amount as = Quantities.as(amount, a.dimension()).orElse(null);
        if (as == null || !a.accepts(as) || a.id().equals("substrate.deflection")) continue;
        boolean column = a.id().equals(context.attribute()) && !a.words().not().in(whole);
        int d = column ? -1000 : distance(a, start, end);
        if (d < distance) {
          distance = d;
          best = a;
          meant = as;
        }
      }
      if (best == null || distance > NEAR) {
        best = carried.amount;
        meant =
            best == null
                ? null
                : Quantities.as(amount, best.dimension()).filter(best::accepts).orElse(null);
        if (meant == null) return;
      }
      carried.amount = best;
      add(
          out,
          best,
          best.id().equals("location.temperatureRange")
              ? asRange(meant)
              : negatedBound(meant, start),
          false);
    }

    /** "-10 to 150 °F" at a surface is a range of 160 °F. */
    private Content.Amount asRange(Content.Amount ends) {
      if (ends.low().equals(ends.high())) return ends;
      return new Content.Amount(
          ends.high().minus(ends.low()), ends.high().minus(ends.low()), ends.bound());
    }

    /** "Do not use ... below 400 psi" asks for 400 psi at least. */
    private Content.Amount negatedBound(Content.Amount amount, int start) {
      if (amount.bound() == Bound.BELOW
          && vocabulary.list("negation.before").in(text.substring(0, start))) {
        return new Content.Amount(amount.low(), amount.high(), Bound.AT_LEAST);
      }
      return amount;
    }

    private int distance(Attribute a, int start, int end) {
      int best = Integer.MAX_VALUE;
      List<Phrases.Hit> not = a.words().not().all(whole);
      for (Phrases.Hit hit : a.words().cues().all(whole)) {
        // "Tensile bond strength" is no bond strength, however near the figure stands.
        boolean turned =
            not.stream().anyMatch(n -> n.end() <= hit.start() && hit.start() - n.end() <= 1);
        if (!turned) best = Math.min(best, hit.distanceTo(start, end));
      }
      if (best == Integer.MAX_VALUE) return best;
      for (Phrases.Hit hit : not) {
        if (hit.distanceTo(start, end) <= best) return Integer.MAX_VALUE;
      }
      return best + familyPenalty(a, start, end);
    }

    private int familyPenalty(Attribute a, int start, int end) {
      String family = familyNear(start, end);
      if (family.isEmpty() || family.equals(a.family())) return 0;
      boolean kin =
          Set.of("sealant", "movement").contains(family)
              && Set.of("sealant", "movement").contains(a.family());
      return kin ? 5 : 30;
    }

    private boolean inside(List<int[]> taken, Quantities.Found found) {
      return taken.stream().anyMatch(t -> found.start() < t[1] && t[0] < found.end());
    }

    private void sizes(List<Statement> out, List<int[]> taken) {
      Attribute attribute = vocabulary.attribute("tile.size").orElse(null);
      if (attribute == null || !context.describesTile()) return;
      boolean column = context.attribute().equals(attribute.id());
      String family = context.family();
      for (Quantities.Found found : Quantities.find(text)) {
        if (!(found.content() instanceof Content.Size size) || inside(taken, found)) continue;
        boolean tile =
            column
                || ((family.isEmpty() || family.equals("tile"))
                    && !attribute.words().not().in(whole));
        if (tile) {
          add(out, attribute, size, false);
          return;
        }
      }
    }

    private void terms(List<Statement> out) {
      for (Attribute a : vocabulary.attributes()) {
        if (a.kind() != Attribute.Kind.TERM || !context.mayStateFamily(a.family())) continue;
        boolean column = a.id().equals(context.attribute());
        if (!column && (!termsAllowed(a) || ofAnotherColumn(a))) continue;
        for (Map.Entry<Phrases.Hit, String> hit : termHits(a).entrySet()) {
          if (!column && a.needsFamily() && !speaksOf(a.family(), hit.getKey())) continue;
          boolean negated =
              negated(hit.getKey().start(), hit.getKey().end()) && !hit.getValue().equals("none");
          add(out, a, new Content.Term(hit.getValue()), negated);
        }
      }
    }

    /**
     * A cell on one aspect of the tile does not speak of another: "clear film-faced" is a mounting.
     */
    private boolean ofAnotherColumn(Attribute a) {
      Attribute column = vocabulary.attribute(context.attribute()).orElse(null);
      return column != null
          && column.kind() == Attribute.Kind.TERM
          && column.family().equals(a.family());
    }

    private boolean termsAllowed(Attribute a) {
      if (a.family().equals("location")) return false;
      if (a.id().equals("tile.backing") || a.id().equals("tile.mounting")) {
        return context.describesTile()
            && !whole.matches("(?i).*\\bset(?:ting)?\\b.*mortar.*")
            && namesAspect(a);
      }
      return !a.family().equals("tile")
          || (context.describesTile()
              && !List.of("mortar", "grout", "sealant", "movement").contains(context.family()));
    }

    /** "None" is a backing only where backing is spoken of. */
    private boolean namesAspect(Attribute a) {
      return a.id().equals("tile.backing")
          ? whole.matches("(?is).*(?:back|leaf|foil|film|metalli|uncoated).*")
          : whole.matches("(?is).*(?:mount|mesh|faced?|loose|dots?|individual).*");
    }

    private Map<Phrases.Hit, String> termHits(Attribute a) {
      Map<Phrases.Hit, String> all = new LinkedHashMap<>();
      List<Map.Entry<Phrases.Hit, String>> hits = new ArrayList<>();
      a.words()
          .terms()
          .forEach((term, phrases) -> phrases.all(text).forEach(h -> hits.add(Map.entry(h, term))));
      hits.sort(
          (x, y) ->
              (y.getKey().end() - y.getKey().start()) - (x.getKey().end() - x.getKey().start()));
      for (Map.Entry<Phrases.Hit, String> hit : hits) {
        Phrases.Hit h = hit.getKey();
        boolean overlapped =
            all.keySet().stream()
                .anyMatch(
                    k ->
                        h.start() < k.end()
                            && k.start() < h.end()
                            && !all.get(k).equals(hit.getValue()));
        if (!overlapped || a.id().equals("sealant.use")) all.put(h, hit.getValue());
      }
      return all;
    }

    private boolean speaksOf(String family, Phrases.Hit hit) {
      if (family.equals("tile")) return true;
      String near = familyNear(hit.start(), hit.end());
      if (near.equals(family)) return true;
      return near.isEmpty() && context.family().equals(family)
          || (family.equals("sealant") && near.equals("movement"))
              && whole.matches("(?is).*\\b(?:C\\s?-?920|11600|sealant)\\b.*")
          || (family.equals("movement")
              && Set.of("sealant", "movement").contains(context.family()));
    }

    private String familyNear(int start, int end) {
      String best = "";
      int distance = Integer.MAX_VALUE;
      for (Map.Entry<Phrases.Hit, String> cue : cues.entrySet()) {
        if (Set.of("tile", "substrate").contains(cue.getValue())
            && !context.family().equals(cue.getValue())) continue;
        Phrases.Hit hit = cue.getKey();
        int d = hit.distanceTo(start, end);
        String between =
            hit.end() <= start
                ? whole.substring(hit.end(), start)
                : hit.start() >= end ? whole.substring(end, hit.start()) : "";
        if (between.contains(",")) d += 15;
        // A lead-in speaks for all that follows it; the tile in it is what the rest is for.
        boolean leads = between.contains(":") || hit.end() <= start;
        if (leads && !cue.getValue().equals("tile")) d -= 10;
        if (d < distance) {
          distance = d;
          best = cue.getValue();
        }
      }
      return best.isEmpty() ? context.family() : best;
    }

    private void required(List<Statement> out) {
      for (Attribute a : vocabulary.attributes()) {
        if (a.kind() != Attribute.Kind.REQUIRED || !context.mayStateFamily(a.family())) continue;
        boolean column = a.id().equals(context.attribute());
        if (column) {
          columnRequirement(out, a);
          continue;
        }
        if (a.words().cues().in(text) && !a.words().not().in(text)) {
          add(
              out,
              a,
              new Content.Required(),
              vocabulary.list("negation.notRequired").in(text) && !a.id().startsWith("process.c"));
        }
      }
    }

    private void columnRequirement(List<Statement> out, Attribute a) {
      if (text.isBlank() || vocabulary.list("empty").matches(text.trim())) return;
      boolean no = text.trim().matches("(?i)(?:no|none|not required|n)\\b.*");
      add(out, a, new Content.Required(), no);
    }

    private boolean negated(int start, int end) {
      String before = text.substring(0, start);
      Phrases.Hit last = null;
      for (Phrases.Hit hit : vocabulary.list("negation.before").all(before)) last = hit;
      if (last != null
          && before.length() - last.end() < 70
          && !before
              .substring(last.end())
              .matches("(?is).*(?:,\\s*(?:use|provide|set in|and (?:use|provide))|: ).*"))
        return true;
      return vocabulary.list("negation.after").in(text.substring(end));
    }

    /** Two figures for two places in one sentence: each goes with the place nearest to it. */
    private void nearestPlaces(List<Statement> out, int from) {
      Map<Integer, String> mentions = limitFinder.exposureMentions(text);
      if (mentions.size() < 2) return;
      for (int i = from; i < out.size(); i++) {
        Statement s = out.get(i);
        long twins =
            out.subList(from, out.size()).stream()
                .filter(o -> o.attribute().equals(s.attribute()))
                .count();
        if (twins < 2 || !(s.content() instanceof Content.Amount amount)) continue;
        out.set(
            i,
            new Statement(
                s.attribute(),
                s.content(),
                s.excluded(),
                s.asWritten(),
                s.origin(),
                at(s.limits(), mentions, amount)));
      }
    }

    private Limits at(Limits l, Map<Integer, String> mentions, Content.Amount amount) {
      int offset = offsetOf(amount);
      int next = nextAmountAfter(offset);
      Set<String> places = new TreeSet<>();
      mentions.forEach(
          (at, term) -> {
            if (at > offset && at < next) places.add(term);
          });
      if (places.isEmpty()) {
        mentions.entrySet().stream()
            .filter(e -> e.getKey() < offset)
            .max(Map.Entry.comparingByKey())
            .ifPresent(e -> places.add(e.getValue()));
      }
      return places.isEmpty()
          ? l
          : new Limits(
              l.tags(), l.glass(), l.otherTile(), places, l.except(), l.surfaces(), l.with());
    }

    private int offsetOf(Content.Amount amount) {
      return Quantities.find(text).stream()
          .filter(
              f ->
                  f.content() instanceof Content.Amount a
                      && a.low().number() == amount.low().number())
          .mapToInt(Quantities.Found::start)
          .findFirst()
          .orElse(0);
    }

    private int nextAmountAfter(int offset) {
      return Quantities.find(text).stream()
          .filter(f -> !f.restates())
          .mapToInt(Quantities.Found::start)
          .filter(s -> s > offset)
          .min()
          .orElse(Integer.MAX_VALUE);
    }
  }
}
