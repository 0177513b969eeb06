package clearbed.recognise.schedule;

import clearbed.base.Memo;
import clearbed.model.Unit;
import clearbed.recognise.statement.Citations;
import clearbed.recognise.statement.SpanFinder;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.text.UnitWords;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.HeadingEvidence;
import clearbed.recognise.vocabulary.HeadingEvidence.Heard;
import clearbed.recognise.vocabulary.Taught;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** What speaks for each meaning of a column by itself: its heading, its unit and its cells. */
final class ColumnScores {
  private static final double UNIT = 0.5;
  private static final double OTHER_UNIT = -1.5;

  static final double FITS = 0.5;
  private static final int LONGEST_CLASS = 6;
  private static final double BORNE_OUT = 0.15;
  static final double HALF = 0.75;
  private static final double HINT = 0.3;

  /** Short forms spelt out may have been meant otherwise. */
  private static final double SPELT = 0.9;

  private static final double HINT_OF_COLOUR = 0.4;

  /** Nearly every cell names a place. */
  private static final double ROOMS_ALL = 0.85;

  static final double HALF_BORNE_OUT = 0.3;

  /** Headings of attributes that several columns may have. */
  static final double EXACT = 0.95;

  /** What a column headed "slip resistance" may give in place of a coefficient, cell by cell. */
  private static final Set<String> WAYS_TO_SAY_SLIP =
      Set.of(
          "tile.pendulum",
          "tile.pendulumClass",
          "tile.rampShod",
          "tile.rampBarefoot",
          "tile.displacement",
          "tile.slider",
          "tile.slipTest");

  private static final String SLIP = "tile.slip";

  /** Joints, grouts and sealants have marks of their own, which are not those of tiles. */
  static final Pattern OF_OTHERS =
      Pattern.compile("joint|grout|seal|mortar|adh|room|space", Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;
  private final HeadingEvidence headings;
  private final SpanFinder spans;
  private final ShortTerms shorts;
  private final Memo<String, CellReading> readings = Memo.ofTexts();

  ColumnScores(Vocabulary vocabulary, SpanFinder spans) {
    this.vocabulary = vocabulary;
    this.headings = vocabulary.headings();
    this.spans = spans;
    this.shorts = new ShortTerms(vocabulary);
  }

  HeadingEvidence headings() {
    return headings;
  }

  ShortTerms shorts() {
    return shorts;
  }

  CellReading reading(String cell) {
    return readings.get(cell, () -> CellReading.of(cell, spans, vocabulary, shorts));
  }

  /** What the office says that the column holds, or null. */
  Taught.Word taught(ColumnWords w) {
    return vocabulary.taught().column(w.text(), w.bottom());
  }

  boolean isFormer(ColumnWords w) {
    if (taught(w) != null) return false;
    return vocabulary.list("schedule.former").matches(w.text())
        || vocabulary.list("schedule.former").matches(w.bottom())
        || vocabulary.list("schedule.former").matches(w.top()) && !w.top().isEmpty();
  }

  Map<String, ColumnScore> of(ColumnWords w) {
    Taught.Word taught = taught(w);
    if (taught != null) {
      Map<String, ColumnScore> told = new LinkedHashMap<>();
      told.put(taught.meaning(), new ColumnScore(1, 1, UNIT, 0, taught.evidence()));
      return told;
    }
    List<CellReading> cells = w.cells().stream().filter(this::says).map(this::reading).toList();
    Map<String, Heard> heard = heard(w);
    Map<String, ColumnScore> out = new LinkedHashMap<>();
    for (Attribute a : vocabulary.attributes()) {
      Heard by = heard.get(a.id());
      boolean exact = by != null && by.strength() >= EXACT;
      if (!exact && a.words().not().in(w.text().toLowerCase(Locale.ROOT))) continue;
      double strength = by == null ? 0 : by.strength();
      Fit fit = c -> fits(c, a, w, strength);
      double share = share(cells.stream().mapToDouble(fit::of).toArray());
      double unit = w.unit() == null ? 0 : ofUnit(a, w.unit());
      put(out, a.id(), by, share, unit, why(by, cells, fit), w.text().isEmpty());
    }
    role(out, HeadingEvidence.TAG, heard, cells, CellReading::asTag);
    role(out, HeadingEvidence.MATERIAL, heard, cells, CellReading::asMaterial);
    heard.forEach(
        (role, by) -> {
          if (role.startsWith(HeadingEvidence.SURFACE))
            role(out, role, heard, cells, CellReading::asSurface);
        });
    Heard other = heard.get(HeadingEvidence.OTHER);
    if (other != null) put(out, HeadingEvidence.OTHER, other, 0, 0, other.why(), false);
    distinct(out, w);
    ColumnScore slip = out.get(SLIP);
    if (slip != null && slip.heading() >= EXACT) out.keySet().removeAll(WAYS_TO_SAY_SLIP);
    return out;
  }

  /** "50" under "Class" is "Class 50". */
  private double fits(CellReading cell, Attribute a, ColumnWords w, double heading) {
    double fits = cell.fits(a, w.unit());
    // Any words might be a colour, where the heading says that they are.
    if (fits == CellReading.MAYBE && a.id().endsWith(".colour") && heading < HINT_OF_COLOUR)
      return 0;
    boolean letters = a.kind() == Attribute.Kind.TERM && cell.text().length() <= LONGEST_CLASS;
    if (fits > 0 || !letters || w.bottom().isEmpty()) return fits;
    return HeadingWords.classed(a, w.bottom(), cell.text()).isPresent() ? 0.8 : fits;
  }

  /** Tags are told apart by being different. */
  private void distinct(Map<String, ColumnScore> out, ColumnWords w) {
    ColumnScore tag = out.get(HeadingEvidence.TAG);
    List<String> said = w.cells().stream().filter(this::says).toList();
    if (tag == null || tag.cells() <= 0 || said.isEmpty()) return;
    double share = (double) new LinkedHashSet<>(said).size() / said.size();
    out.put(
        HeadingEvidence.TAG,
        new ColumnScore(tag.heading(), tag.cells() * (0.4 + 0.6 * share), 0, 0, tag.why()));
  }

  private interface Fit {
    double of(CellReading cell);
  }

  private void role(
      Map<String, ColumnScore> out,
      String role,
      Map<String, Heard> heard,
      List<CellReading> cells,
      Fit fit) {
    Heard by = heard.get(role);
    put(
        out,
        role,
        by,
        share(cells.stream().mapToDouble(fit::of).toArray()),
        0,
        why(by, cells, fit),
        false);
  }

  /** A short form that neither cells nor unit bear out may stand for anything. */
  private void put(
      Map<String, ColumnScore> out,
      String meaning,
      Heard by,
      double cells,
      double unit,
      String why,
      boolean headless) {
    double heading = by == null ? 0 : by.strength();
    boolean alone = cells <= BORNE_OUT && unit <= 0 && !meaning.equals("notes");
    if (by != null && by.isShort() && alone) heading *= 0.4;
    boolean asked =
        vocabulary.attribute(meaning).filter(a -> a.kind() == Attribute.Kind.REQUIRED).isPresent();
    if (asked && heading < FITS && unit <= 0) return;
    // Any words might be a room.
    boolean room = meaning.equals("location.room") && !headless && heading < HINT;
    if (room && cells < ROOMS_ALL) return;
    // Half a heading that nothing else bears out is none.
    boolean half =
        heading < HALF && cells < HALF_BORNE_OUT && unit <= 0 && !meaning.startsWith("@");
    if (half) heading *= 0.5;
    ColumnScore score = new ColumnScore(heading, cells, unit, 0, why);
    if (score.sum() > 0) out.put(meaning, score);
  }

  /** One cell that fits may do so by chance, and one that does not may be a slip. */
  private static double share(double[] fits) {
    if (fits.length == 0) return 0;
    double sum = 0;
    for (double fit : fits) sum += fit;
    double share = sum / fits.length;
    return share < 0
        ? share * Math.min(1, fits.length / 3.0)
        : fits.length == 1 ? share * 0.8 : share;
  }

  private static String why(Heard by, List<CellReading> cells, Fit fit) {
    long fitting = cells.stream().filter(c -> fit.of(c) >= FITS).count();
    List<String> why = new ArrayList<>();
    if (by != null) why.add(by.why());
    if (fitting > 0) why.add("cells " + fitting + " of " + cells.size());
    return String.join(", ", why);
  }

  private static double ofUnit(Attribute a, Unit unit) {
    boolean wait = unit.dimension() == clearbed.model.Dimension.TIME && a.id().contains(".cure");
    if (wait && a.kind() == Attribute.Kind.REQUIRED) return UNIT;
    boolean length = a.kind() == Attribute.Kind.SIZE || a.kind() == Attribute.Kind.FLATNESS;
    var dimension = length ? clearbed.model.Dimension.LENGTH : a.dimension();
    boolean measured = length || a.kind() == Attribute.Kind.AMOUNT;
    return measured && UnitWords.as(unit, dimension).dimension() == dimension ? UNIT : OTHER_UNIT;
  }

  /** What the headings of a column say, its own words before those of its group. */
  private Map<String, Heard> heard(ColumnWords w) {
    Map<String, Heard> out = new LinkedHashMap<>();
    if (HeadingEvidence.isMoney(w.text())) {
      out.put(HeadingEvidence.OTHER, new Heard(1, "money", false));
      return out;
    }
    for (String words : variants(w.text()))
      headings
          .of(words)
          .forEach((meaning, by) -> out.merge(meaning, by, HeadingEvidence::stronger));
    boolean group = w.group() != ColumnWords.Group.NONE;
    if (group) {
      Set<String> of = w.group() == ColumnWords.Group.OVER ? families(w.top()) : Set.of();
      for (String words : variants(w.bottom()))
        headings
            .of(words)
            .forEach(
                (meaning, by) -> {
                  double strength = suits(meaning, of, w.top()) ? EXACT : 0.4;
                  out.merge(meaning, by.times(strength), HeadingEvidence::stronger);
                });
    }
    Set<String> named = families(w.text());
    if (!named.isEmpty()) out.replaceAll((meaning, by) -> ofNamed(meaning, by, named));
    Header.Column known = HeadingWords.column(vocabulary, 0, w.top(), w.bottom());
    boolean own = w.group() != ColumnWords.Group.OVER || w.bottom().isEmpty();
    if (known.role() != Header.Role.OTHER
        && (own || suits(meaning(known), families(w.top()), w.top())))
      out.merge(
          meaning(known),
          known.evidence().why().equals(HeadingWords.SHORT)
              ? new Heard(SPELT, "short forms", true)
              : new Heard(1, "heading", false),
          ColumnScores::better);
    return out;
  }

  /** The stronger of two, in the words that say which word is meant. */
  private static Heard better(Heard one, Heard other) {
    boolean named = one.why().startsWith("abbreviation") && other.isShort();
    return named
        ? new Heard(Math.max(one.strength(), other.strength()), one.why(), true)
        : HeadingEvidence.stronger(one, other);
  }

  /** A heading that names one part of the work is hardly about another. */
  private Heard ofNamed(String meaning, Heard by, Set<String> named) {
    boolean other =
        ColumnNeighbours.PARTS.stream().anyMatch(p -> !named.contains(p) && isOf(meaning, p));
    return other && by.strength() < EXACT ? by.times(0.6) : by;
  }

  /** The words of a heading without its standards, once without its brackets and once with them. */
  private Set<String> variants(String heading) {
    StringBuilder plain = new StringBuilder(PlainText.of(heading));
    for (Citations.Found f : Citations.find(plain.toString()))
      for (int i = f.start(); i < f.end(); i++) plain.setCharAt(i, ' ');
    String text = plain.toString();
    Set<String> out = new LinkedHashSet<>();
    out.add(HeadingWords.clean(vocabulary, text));
    if (text.indexOf('(') >= 0 && Quantities.unitOfHeader(text) == null)
      out.add(HeadingWords.clean(vocabulary, text.replaceAll("[()\\[\\]]", " ")));
    return out;
  }

  /** What a heading says below the heading of a group on another part of the work is doubtful. */
  private boolean suits(String meaning, Set<String> families, String group) {
    if (meaning.equals(HeadingEvidence.TAG)) return !OF_OTHERS.matcher(group).find();
    if (families.isEmpty()) return true;
    return vocabulary.attribute(meaning).map(a -> families.contains(a.family())).orElse(false);
  }

  private static String meaning(Header.Column c) {
    return switch (c.role()) {
      case TAG -> HeadingEvidence.TAG;
      case MATERIAL -> HeadingEvidence.MATERIAL;
      case SURFACE -> HeadingEvidence.SURFACE + c.surface();
      case ATTRIBUTE -> c.attribute().id();
      case FORMER, UNASKED, OTHER -> HeadingEvidence.OTHER;
    };
  }

  /** A cell that says something itself. */
  boolean says(String cell) {
    String text = PlainText.line(cell).trim();
    return !text.isEmpty()
        && !vocabulary.list("empty").matches(text)
        && !vocabulary.list("ditto").matches(text)
        && !vocabulary.list("schedule.elsewhere").in(text)
        && vocabulary.list("open").all(text).isEmpty();
  }

  Set<String> families(String words) {
    return headings.familiesOf(HeadingWords.clean(vocabulary, words));
  }

  boolean isOf(String meaning, String family) {
    return vocabulary.attribute(meaning).filter(a -> a.family().equals(family)).isPresent();
  }
}
