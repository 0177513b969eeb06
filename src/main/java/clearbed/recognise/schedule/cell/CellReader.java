package clearbed.recognise.schedule.cell;

import clearbed.base.Memo;
import clearbed.recognise.statement.Span;
import clearbed.recognise.statement.SpanFinder;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.text.Stems;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** Reads cells for what they could be the values of, each text once. */
public final class CellReader {
  private static final Pattern YES_NO =
      Pattern.compile(
          "(?:yes|no|y|n|x|✓|✔|req'?d|required|not required|incl(?:uded)?|none)\\.?",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern BARE =
      Pattern.compile("[+±<>≤≥~]{0,2}\\s*\\.?\\d[\\d\\s.,/-]*%?\\+?");

  /** A standard that is not known, whose name is no tag. */
  private static final Pattern STANDARD =
      Pattern.compile(
          "(?:AS(?:/NZS)?|DIN|EN|BS|ISO|NF|UNI|UNE|SS|SANS|ASTM|ANSI|TCNA)(?: (?:EN|ISO))*[ -]?[A-Z]{0,3}\\d[\\d.:/-]*.{0,20}");

  private static final Pattern SIDES =
      Pattern.compile(
          "\\d[\\d\\s./-]*(?:\"|mm|cm|in\\.?)?\\s*[x×X]\\s*\\d.*", Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;
  private final SpanFinder spans;
  private final ShortTerms shorts;

  /** Attributes with terms that begin with their name. */
  private final List<Attribute> namedTerms;

  private final Memo<String, CellReading> readings = Memo.ofTexts();

  public CellReader(Vocabulary vocabulary, SpanFinder spans, ShortTerms shorts) {
    this.vocabulary = vocabulary;
    this.spans = spans;
    this.shorts = shorts;
    this.namedTerms =
        vocabulary.attributes().stream()
            .filter(a -> a.kind() == Attribute.Kind.TERM && a.mayBeginTerm(name(a)))
            .toList();
  }

  public CellReading reading(String cell) {
    return readings.get(cell, () -> read(PlainText.line(cell).trim()));
  }

  /**
   * True of a figure, a size, a standard or a tag. Nearly all are known by their looks: to read
   * each cell of a table takes long.
   */
  public boolean isValue(String cell) {
    String text = PlainText.line(cell).trim();
    return BARE.matcher(text).matches()
        || SIDES.matcher(text).matches()
        || STANDARD.matcher(text).matches()
        || looksLikeTags(text)
        || vocabulary.taught().isTag(text)
        || !Quantities.find(text).isEmpty()
        || spans.in(text).stream().anyMatch(span -> span instanceof Span.Standard);
  }

  private static boolean looksLikeTags(String text) {
    return TagCells.looksLikeTags(TagCells.unnamed(text));
  }

  /** The classes of adhesives, grouts and sealants are as good as their standards. */
  private static Set<String> classed(String code) {
    if (code.matches("[CDR][12](?!\\d).*")) return Set.of("mortar.standard");
    if (code.matches("CG.*|RG")) return Set.of("grout.standard");
    return code.matches("[FG]-? ?\\d\\d.*") ? Set.of("sealant.standard") : Set.of();
  }

  private boolean isTile(String kind) {
    return kind.equals("tile") || !vocabulary.families().containsKey(kind);
  }

  private Set<String> named(String text) {
    Set<String> out = new LinkedHashSet<>();
    if (text.length() > CellReading.LONGEST_CLASS) return out;
    for (Attribute a : namedTerms) if (a.isTerm(name(a) + text)) out.add(a.id());
    return out;
  }

  /** "class " of "mortar.class". */
  private static String name(Attribute a) {
    return a.id().substring(a.id().indexOf('.') + 1) + " ";
  }

  private Set<String> required(String text) {
    Set<String> out = new LinkedHashSet<>();
    for (Attribute a : vocabulary.attributes())
      if (a.kind() == Attribute.Kind.REQUIRED && a.words().requiredIn(text)) out.add(a.id());
    return out;
  }

  /** A cell that says something itself. */
  private boolean says(String text) {
    return !text.isEmpty()
        && !vocabulary.list("empty").matches(text)
        && !vocabulary.list("ditto").matches(text)
        && !vocabulary.list("schedule.elsewhere").in(text)
        && vocabulary.list("open").all(text).isEmpty();
  }

  /** "RESILIENT BASE, 4 INCH, GRAY": the first of some words names another finish. */
  private boolean describesFinish(String text) {
    int comma = text.indexOf(',');
    return comma > 0 && vocabulary.list("otherFinish").in(text.substring(0, comma));
  }

  private CellReading read(String text) {
    Set<String> stated = new LinkedHashSet<>();
    boolean standard = STANDARD.matcher(text).matches();
    boolean product = false;
    boolean place = false;
    Map<String, Double> terms = new LinkedHashMap<>(shorts.terms(text));
    for (Span span : spans.in(text)) {
      if (span instanceof Span.Standard s) {
        standard = true;
        vocabulary
            .standards()
            .of(s.standard().designation())
            .ifPresent(i -> stated.addAll(i.states()));
      }
      if (span instanceof Span.ClassCode c) stated.addAll(classed(c.code()));
      product |= span instanceof Span.Product p && isTile(p.kind());
    }
    place |= vocabulary.places().exposures().values().stream().anyMatch(words -> words.in(text));
    product |= vocabulary.list("glassTileAbroad").in(text);
    product |= vocabulary.list("glassAlone").in(text) || vocabulary.list("notTile").in(text);
    product |= describesFinish(text);
    return new CellReading(
        text,
        !standard && looksLikeTags(text) || vocabulary.taught().isTag(text),
        YES_NO.matcher(text).matches(),
        Stems.of(text).size(),
        Quantities.find(text),
        stated,
        standard,
        terms,
        product,
        place,
        vocabulary.list("places.conditions").in(text),
        required(text),
        named(text),
        BARE.matcher(text).matches(),
        SIDES.matcher(text).matches(),
        says(text));
  }
}
