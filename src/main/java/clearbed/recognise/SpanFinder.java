package clearbed.recognise;

import clearbed.model.Content;
import clearbed.model.Lately;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** One lexical pass over a sentence, a heading or a cell: everything in it that means something. */
final class SpanFinder {
  private static final Pattern MODALITY =
      Pattern.compile(
          "\\b(?:shall|must|is to|are to|will|may|not|never|no|except|unless|elsewhere|other|remaining|or (?:approved )?equal)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern AMENDMENT =
      Pattern.compile(
          "\\b(?:delete|substitute|replace|insert|add|change|changed|revise|revised|is now|in lieu of)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final String GLASS_TILE = "glass tile";

  /** Words that point to an attribute with this weight do so by themselves. */
  private static final double POINTS = 0.5;

  /** With this weight a figure, standard or term that fits is needed as well. */
  private static final double HINTS = 0.3;

  /** Attributes of the work and the place go with words on any part of it. */
  private static final Set<String> OF_ANY_PART = Set.of("process", "location", "movement");

  private final Vocabulary vocabulary;
  private final Lexicon lexicon;
  private final Lately<String, List<Span>> lately = new Lately<>();

  SpanFinder(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.lexicon = new Lexicon(vocabulary);
  }

  /** In order of their beginnings; spans of different kinds may overlap. */
  List<Span> in(String text) {
    return lately.of(text, text, () -> List.copyOf(find(PlainText.of(text))));
  }

  private List<Span> find(String text) {
    List<Span> out = new ArrayList<>();
    for (Citations.Found f : Citations.find(text)) {
      if (!Citations.ofASeries(text, f))
        out.add(new Span.Standard(f.start(), f.end(), f.standard()));
    }
    matches(ClassCodes.ANY, text)
        .filter(m -> free(out, m))
        .forEach(m -> out.add(new Span.ClassCode(m.start(), m.end(), m.group())));
    for (Quantities.Found f : Quantities.find(text)) {
      boolean inside = out.stream().anyMatch(s -> s.start() < f.end() && f.start() < s.end());
      if (!inside) out.add(new Span.Figure(f.start(), f.end(), f.content(), f.restates()));
    }
    Set<String> tags = LimitFinder.tags(text);
    if (!tags.isEmpty()) out.add(new Span.TagNames(0, text.length(), tags));
    places(text, "location.exposure", vocabulary.exposurePlaces(), out);
    places(text, "location.surface", vocabulary.surfacePlaces(), out);
    products(text, out);
    terms(text, out);
    for (Phrases.Hit hit : vocabulary.list("open").all(text))
      out.add(new Span.OpenItem(hit.start(), hit.end(), text.substring(hit.start(), hit.end())));
    matches(MODALITY, text)
        .forEach(
            m ->
                out.add(new Span.Modality(m.start(), m.end(), m.group().toLowerCase(Locale.ROOT))));
    matches(AMENDMENT, text)
        .forEach(
            m ->
                out.add(
                    new Span.Amendment(m.start(), m.end(), m.group().toLowerCase(Locale.ROOT))));
    out.sort(Comparator.comparingInt(Span::start).thenComparingInt(Span::end));
    return out;
  }

  private static Stream<MatchResult> matches(Pattern pattern, String text) {
    return pattern.matcher(text).results();
  }

  private static boolean free(List<Span> taken, MatchResult m) {
    return taken.stream().noneMatch(s -> s.start() < m.end() && m.start() < s.end());
  }

  private static void places(
      String text, String attribute, Map<String, Phrases> terms, List<Span> out) {
    terms.forEach(
        (term, phrases) -> {
          for (Phrases.Hit hit : phrases.all(text))
            out.add(new Span.Place(hit.start(), hit.end(), attribute, term));
        });
  }

  private void products(String text, List<Span> out) {
    vocabulary
        .families()
        .forEach(
            (family, phrases) -> {
              for (Phrases.Hit hit : phrases.all(text))
                out.add(new Span.Product(hit.start(), hit.end(), family));
            });
    String rest = vocabulary.list("notTile").without(text);
    for (Phrases.Hit hit : vocabulary.list("glassTile").all(rest))
      out.add(new Span.Product(hit.start(), hit.end(), GLASS_TILE));
    vocabulary
        .otherTile()
        .forEach(
            (kind, phrases) -> {
              for (Phrases.Hit hit : phrases.all(rest))
                out.add(new Span.Product(hit.start(), hit.end(), kind));
            });
  }

  private void terms(String text, List<Span> out) {
    for (Attribute a : vocabulary.attributes()) {
      if (a.family().equals("location")) continue;
      a.words()
          .terms()
          .forEach(
              (term, phrases) -> {
                for (Phrases.Hit hit : phrases.all(text))
                  out.add(new Span.Term(hit.start(), hit.end(), a.id(), term));
              });
    }
  }

  /**
   * What a text might state.
   *
   * @param all every attribute that something in it points to
   * @param likely those for which it has a value as well
   */
  record Candidates(Set<String> all, Set<String> likely) {
    Candidates() {
      this(new LinkedHashSet<>(), new LinkedHashSet<>());
    }

    void addAll(Candidates other) {
      all.addAll(other.all);
      likely.addAll(other.likely);
    }

    Candidates within(Predicate<String> attributes) {
      Candidates out = new Candidates();
      all.stream().filter(attributes).forEach(out.all::add);
      likely.stream().filter(attributes).forEach(out.likely::add);
      return out;
    }
  }

  /**
   * The attributes that a text might state though it was not understood, by its words, figures,
   * standards and terms; none when nothing in it points to any.
   *
   * @param family part of the work that headings speak of; empty when unknown
   */
  Candidates couldState(String text, String family) {
    List<Span> spans = in(text);
    Map<String, Double> pointed = lexicon.pointedTo(Stems.of(PlainText.of(text)));
    Set<String> families = new LinkedHashSet<>();
    for (Span span : spans) if (span instanceof Span.Product p) families.add(p.kind());
    if (!family.isEmpty()) families.add(family);
    Candidates out = new Candidates();
    for (Attribute a : vocabulary.attributes()) {
      double by = pointed.getOrDefault(a.id(), 0.0);
      boolean own = families.contains(a.family());
      boolean kin = own || families.isEmpty() || OF_ANY_PART.contains(a.family());
      boolean valued = (by >= HINTS || own) && states(a, spans, by);
      if (valued || by >= POINTS && kin) out.all().add(a.id());
      if (valued && by >= HINTS) out.likely().add(a.id());
    }
    return out;
  }

  private boolean states(Attribute a, List<Span> spans, double by) {
    return spans.stream().anyMatch(span -> states(a, span, by));
  }

  private boolean states(Attribute a, Span span, double by) {
    if (span instanceof Span.Standard s) {
      return vocabulary
          .standardOf(s.standard().designation())
          .map(info -> info.states().contains(a.id()))
          .orElse(a.kind() == Attribute.Kind.STANDARD);
    }
    if (span instanceof Span.Term t) return t.attribute().equals(a.id());
    if (span instanceof Span.ClassCode) return by >= HINTS && a.kind() == Attribute.Kind.TERM;
    if (span instanceof Span.Figure f) return fits(a, f.content());
    return false;
  }

  private static boolean fits(Attribute a, Content content) {
    if (content instanceof Content.Size) return a.kind() == Attribute.Kind.SIZE;
    return a.kind() == Attribute.Kind.AMOUNT
        && content instanceof Content.Amount amount
        && Quantities.as(amount, a.dimension()).filter(a::accepts).isPresent();
  }
}
