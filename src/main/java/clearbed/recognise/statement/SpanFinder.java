package clearbed.recognise.statement;

import clearbed.base.Memo;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.ClassCodes;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Lexicon;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
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
public final class SpanFinder {
  private static final Pattern MODALITY =
      Pattern.compile(
          "\\b(?:shall|must|is to|are to|will|may|not|never|no|except|unless|elsewhere|other|remaining|or (?:approved )?equal)\\b",
          Pattern.CASE_INSENSITIVE);

  /** {@code L/480}, {@code 1/500}. */
  private static final Pattern PART_OF_A_LENGTH =
      Pattern.compile("(?<![\\w/])(?:L|1|span)\\s?/\\s?(\\d{3})(?![\\w/])");

  private static final Pattern NUMBER =
      Pattern.compile("(?<![\\w.,/-])(\\d{1,3}|\\d?\\.\\d{1,3})(?![\\w/]|[.,]\\d)");

  private static final Pattern DRY = Pattern.compile("\\bdry\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern WET = Pattern.compile("\\bwet\\b", Pattern.CASE_INSENSITIVE);

  private static final String GLASS_TILE = "glass tile";

  /** Words that point to an attribute with this weight do so by themselves. */
  private static final double POINTS = 0.5;

  /** What is required by its words alone is likely stated where all of them are. */
  private static final double REQUIRES = 0.95;

  /** With this weight a figure, standard or term that fits is needed as well. */
  private static final double HINTS = 0.3;

  /** Attributes of the work and the place go with words on any part of it. */
  private static final Set<String> OF_ANY_PART = Set.of("process", "location", "movement");

  private final Vocabulary vocabulary;
  private final Lexicon lexicon;
  private final Memo<String, List<Span>> spans = Memo.ofTexts();
  private final Memo<String, Map<String, Double>> pointed = Memo.ofTexts();

  public SpanFinder(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.lexicon = vocabulary.lexicon();
  }

  /** In order of their beginnings; spans of different kinds may overlap. */
  public List<Span> in(String text) {
    return spans.get(text, () -> List.copyOf(find(PlainText.of(text))));
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
    boolean dry = DRY.matcher(text).find() && !WET.matcher(text).find();
    for (Pattern pattern : List.of(PART_OF_A_LENGTH, NUMBER))
      matches(pattern, text).filter(m -> free(out, m)).forEach(m -> out.add(number(m, dry)));
    products(text, out);
    terms(text, out);
    matches(MODALITY, text)
        .forEach(
            m ->
                out.add(new Span.Modality(m.start(), m.end(), m.group().toLowerCase(Locale.ROOT))));
    out.sort(Comparator.comparingInt(Span::start).thenComparingInt(Span::end));
    return out;
  }

  private static Span.Number number(MatchResult m, boolean dry) {
    Quantity number = Quantity.of(Double.parseDouble(m.group(1)), Unit.ONE);
    return new Span.Number(m.start(), m.end(), Content.Amount.exact(number), dry);
  }

  private static Stream<MatchResult> matches(Pattern pattern, String text) {
    return pattern.matcher(text).results();
  }

  private static boolean free(List<Span> taken, MatchResult m) {
    return taken.stream().noneMatch(s -> s.start() < m.end() && m.start() < s.end());
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
        .glass()
        .otherTile()
        .forEach(
            (kind, phrases) -> {
              for (Phrases.Hit hit : phrases.all(rest))
                out.add(new Span.Product(hit.start(), hit.end(), kind));
            });
  }

  private void terms(String text, List<Span> out) {
    for (Attribute a : vocabulary.attributes()) {
      if (a.family().equals("location") || !a.words().anyTerm().mayBeIn(text)) continue;
      for (Map.Entry<String, Phrases> term : a.words().terms().entrySet()) {
        for (Phrases.Hit hit : term.getValue().all(text)) {
          if (vocabulary.list("negation.directly").endsAt(text, hit.start())) continue;
          int words = words(text, hit);
          out.add(new Span.Term(hit.start(), hit.end(), a.id(), term.getKey(), words));
        }
      }
    }
  }

  private static int words(String text, Phrases.Hit hit) {
    return text.substring(hit.start(), hit.end()).split("[\\s-]+").length;
  }

  /**
   * What a text might state.
   *
   * @param all every attribute that something in it points to
   * @param likely those for which it has a value as well
   */
  public record Candidates(Set<String> all, Set<String> likely) {
    public Candidates() {
      this(new LinkedHashSet<>(), new LinkedHashSet<>());
    }

    public void addAll(Candidates other) {
      all.addAll(other.all);
      likely.addAll(other.likely);
    }

    public Candidates within(Predicate<String> attributes) {
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
  public Candidates couldState(String text, String family) {
    return couldState(text, family, pointedTo(text));
  }

  private Candidates couldState(String text, String family, Map<String, Double> pointed) {
    List<Span> spans = in(text);
    if (spans.isEmpty() && pointed.isEmpty()) return new Candidates();
    Set<String> families = new LinkedHashSet<>();
    for (Span span : spans) if (span instanceof Span.Product p) families.add(p.kind());
    if (!family.isEmpty()) families.add(family);
    Candidates out = new Candidates();
    for (Attribute a : vocabulary.attributes()) {
      double by = pointed.getOrDefault(a.id(), 0.0);
      boolean own = families.contains(a.family());
      boolean kin = own || families.isEmpty() || OF_ANY_PART.contains(a.family());
      boolean named = kin && saysIts(a, spans);
      boolean valued = (by >= HINTS || own) && states(a, spans, by) || named;
      if (valued || by >= POINTS && kin) out.all().add(a.id());
      boolean required = a.kind() == Attribute.Kind.REQUIRED && by >= REQUIRES && kin;
      boolean likely = valued && by >= HINTS || required || named;
      if (likely && !a.words().not().in(text)) out.likely().add(a.id());
    }
    return out;
  }

  private Map<String, Double> pointedTo(String text) {
    return pointed.get(text, () -> lexicon.pointedTo(PlainText.of(text)));
  }

  /**
   * A term of several words ("changes of backing") is of its attribute whatever stands beside it.
   */
  private static boolean saysIts(Attribute a, List<Span> spans) {
    for (Span span : spans) {
      if (span instanceof Span.Term t && t.attribute().equals(a.id()) && t.words() > 1) return true;
    }
    return false;
  }

  /**
   * What a sentence likely states besides what was read of it: it has a standard or a figure that
   * no statement took.
   *
   * @param said what was read of it
   */
  public Candidates leftIn(String sentence, String family, List<Statement> said) {
    List<Span> left = in(sentence).stream().filter(span -> isLeft(span, said)).toList();
    if (left.isEmpty()) return new Candidates();
    Set<String> stated = new LinkedHashSet<>();
    for (Statement s : said) stated.add(s.attribute());
    Map<String, Double> pointed = pointedTo(sentence);
    return couldState(sentence, family, pointed)
        .within(
            id ->
                !stated.contains(id)
                    && vocabulary
                        .attribute(id)
                        .filter(a -> states(a, left, pointed.getOrDefault(id, 0.0)))
                        .isPresent());
  }

  private static boolean isLeft(Span span, List<Statement> said) {
    if (span instanceof Span.Standard s)
      return said.stream().noneMatch(x -> x.content().equals(s.standard()));
    if (span instanceof Span.Figure f)
      return !f.restates() && said.stream().noneMatch(x -> shares(x.content(), f.content()));
    return false;
  }

  /** Both have the same figure, or one has several of which it may be part. */
  private static boolean shares(Content said, Content figure) {
    if (said instanceof Content.Amount a && figure instanceof Content.Amount b)
      return a.low().number() == b.low().number() || a.high().number() == b.high().number();
    return said instanceof Content.Size
        || said instanceof Content.Flatness
        || said instanceof Content.Open
        || said instanceof Content.NotUnderstood
        || said instanceof Content.Required;
  }

  private boolean states(Attribute a, List<Span> spans, double by) {
    for (Span span : spans) if (states(a, span, by)) return true;
    return false;
  }

  private boolean states(Attribute a, Span span, double by) {
    if (span instanceof Span.Standard s) {
      return vocabulary
          .standards()
          .of(s.standard().designation())
          .map(info -> info.states().contains(a.id()))
          .orElse(a.kind() == Attribute.Kind.STANDARD);
    }
    if (span instanceof Span.Term t) return t.attribute().equals(a.id());
    if (span instanceof Span.ClassCode) return by >= HINTS && a.kind() == Attribute.Kind.TERM;
    if (span instanceof Span.Figure f) return fits(a, f.content());
    // What a floor gives dry says nothing of it wet, which is all that is asked for.
    return span instanceof Span.Number n
        && !n.dry()
        && by >= HINTS
        && a.dimension() == Dimension.RATIO
        && fits(a, n.amount());
  }

  private static boolean fits(Attribute a, Content content) {
    if (content instanceof Content.Size) return a.kind() == Attribute.Kind.SIZE;
    if (a.kind() == Attribute.Kind.FLATNESS)
      return content instanceof Content.Amount deviation
          && deviation.low().unit().dimension() == Dimension.LENGTH;
    return a.kind() == Attribute.Kind.AMOUNT
        && content instanceof Content.Amount amount
        && Quantities.as(amount, a.dimension()).filter(a::accepts).isPresent();
  }
}
