package clearbed.recognise.schedule.column;

import clearbed.model.value.Dimension;
import clearbed.model.value.Unit;
import clearbed.recognise.schedule.cell.CellReader;
import clearbed.recognise.schedule.cell.CellReading;
import clearbed.recognise.text.UnitWords;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.HeadingEvidence;
import clearbed.recognise.vocabulary.HeadingEvidence.Heard;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.taught.Taught;
import java.util.ArrayList;
import java.util.Arrays;
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
  private static final double BORNE_OUT = 0.15;
  static final double HALF = 0.75;
  static final double HINT = 0.3;

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
  private static final Pattern THICKNESS = Pattern.compile("thick\\w*|thk");

  private static final double[] NO_CELLS = {};
  private final Vocabulary vocabulary;
  private final HeardHeadings headings;
  private final CellReader cells;
  private final CellFits cellFits;

  ColumnScores(Vocabulary vocabulary, HeardHeadings headings, CellReader cells) {
    this.vocabulary = vocabulary;
    this.headings = headings;
    this.cells = cells;
    this.cellFits = new CellFits(vocabulary);
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
    List<String> said = w.cells().stream().filter(c -> cells.reading(c).says()).toList();
    List<CellReading> cells = said.stream().map(this.cells::reading).toList();
    Map<String, Heard> heard = headings.over(w.heads());
    List<Attribute> asked = asked(w.text().toLowerCase(Locale.ROOT), heard, cells);
    double[][] fits = cellFits.of(cells, asked, w, heard);
    boolean headless = w.text().isEmpty();
    Map<String, ColumnScore> out = new LinkedHashMap<>();
    for (int i = 0; i < asked.size(); i++) {
      Attribute a = asked.get(i);
      double unit = w.unit() == null ? 0 : ofUnit(a, w.unit());
      put(out, a.id(), heard.get(a.id()), CellFits.ofTiles(a, fits[i]), unit, headless);
    }
    role(out, HeadingEvidence.TAG, heard, cells, CellReading::asTag);
    role(out, HeadingEvidence.MATERIAL, heard, cells, CellReading::asMaterial);
    heard.forEach(
        (role, by) -> {
          if (role.startsWith(HeadingEvidence.SURFACE))
            role(out, role, heard, cells, CellReading::asSurface);
        });
    Heard other = heard.get(HeadingEvidence.OTHER);
    if (other != null) put(out, HeadingEvidence.OTHER, other, NO_CELLS, 0, false);
    distinct(out, said);
    ColumnScore slip = out.get(SLIP);
    if (slip != null && slip.heading() >= EXACT) out.keySet().removeAll(WAYS_TO_SAY_SLIP);
    return out;
  }

  /** Those that no word of the heading, in lower case, speaks against. */
  private List<Attribute> asked(String heading, Map<String, Heard> heard, List<CellReading> cells) {
    List<Attribute> out = new ArrayList<>();
    for (Attribute a : vocabulary.attributes()) {
      Heard by = heard.get(a.id());
      boolean exact = by != null && by.strength() >= EXACT;
      // "Face size x thickness" over "23 x 23 x 6 mm" is a size with all its sides.
      boolean sides = by != null && a.kind() == Attribute.Kind.SIZE && haveThickness(cells);
      String against = sides ? THICKNESS.matcher(heading).replaceAll("") : heading;
      if (exact || !a.words().not().in(against)) out.add(a);
    }
    return out;
  }

  private static boolean haveThickness(List<CellReading> cells) {
    return !cells.isEmpty() && cells.stream().filter(CellReading::thick).count() * 2 > cells.size();
  }

  /** Tags are told apart by being different. */
  private static void distinct(Map<String, ColumnScore> out, List<String> said) {
    ColumnScore tag = out.get(HeadingEvidence.TAG);
    if (tag == null || tag.cells() <= 0 || said.isEmpty()) return;
    double share = (double) new LinkedHashSet<>(said).size() / said.size();
    out.put(
        HeadingEvidence.TAG,
        new ColumnScore(tag.heading(), tag.cells() * (0.4 + 0.6 * share), 0, 0, tag.why()));
  }

  private interface Fitting {
    double of(CellReading cell);
  }

  private void role(
      Map<String, ColumnScore> out,
      String role,
      Map<String, Heard> heard,
      List<CellReading> cells,
      Fitting fit) {
    put(out, role, heard.get(role), cells.stream().mapToDouble(fit::of).toArray(), 0, false);
  }

  /** A short form that neither cells nor unit bear out may stand for anything. */
  private void put(
      Map<String, ColumnScore> out,
      String meaning,
      Heard by,
      double[] fits,
      double unit,
      boolean headless) {
    double cells = share(fits);
    double heading = by == null ? 0 : by.strength();
    // Whatever follows takes away.
    if (ColumnScore.sum(heading, cells, unit, 0) <= 0) return;
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
    if (ColumnScore.sum(heading, cells, unit, 0) > 0)
      out.put(meaning, new ColumnScore(heading, cells, unit, 0, why(by, fits)));
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

  private static String why(Heard by, double[] fits) {
    long fitting = Arrays.stream(fits).filter(fit -> fit >= FITS).count();
    List<String> why = new ArrayList<>();
    if (by != null) why.add(by.why());
    if (fitting > 0) why.add("cells " + fitting + " of " + fits.length);
    return String.join(", ", why);
  }

  private static double ofUnit(Attribute a, Unit unit) {
    boolean wait = unit.dimension() == Dimension.TIME && a.id().contains(".cure");
    if (wait && a.kind() == Attribute.Kind.REQUIRED) return UNIT;
    boolean length = a.kind() == Attribute.Kind.SIZE || a.kind() == Attribute.Kind.FLATNESS;
    var dimension = length ? Dimension.LENGTH : a.dimension();
    boolean measured = length || a.kind() == Attribute.Kind.AMOUNT;
    return measured && UnitWords.as(unit, dimension).dimension() == dimension ? UNIT : OTHER_UNIT;
  }
}
