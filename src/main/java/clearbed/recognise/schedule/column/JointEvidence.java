package clearbed.recognise.schedule.column;

import clearbed.model.value.Unit;
import clearbed.recognise.schedule.cell.CellReader;
import clearbed.recognise.schedule.cell.CellReading;
import clearbed.recognise.schedule.cell.ShortTerms;
import clearbed.recognise.statement.SpanFinder;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.HeadingEvidence;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.taught.Taught;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * What the columns of a table hold, by their headings, units, cells and neighbours together: each
 * gets a score for each meaning ({@link ColumnScore}), the table that assignment whose scores are
 * most in all. A column has its meaning when the score is 1.5 and more and the whole would lose 0.5
 * and more by any other.
 */
public final class JointEvidence {
  static final double ENOUGH = 1.5;
  private static final double MARGIN = 0.5;

  /** A share of cells that name a product. */
  private static final double DESCRIBES = 0.75;

  /** What scores so much less than the best of a column is no rival. */
  private static final double RIVAL = 1.0;

  /** A column that gets less than its best by so much is not the one that it seems. */
  private static final double SECOND_BEST = 0.3;

  private static final int MOST_COPIES = 6;

  /** A number alone could be anything. */
  private static final double COULD = 1.0;

  private static final Set<String> MANY = Set.of("location.room", "notes");

  private final Vocabulary vocabulary;
  private final CellReader cells;
  private final ShortTerms shorts;
  private final ColumnScores scorer;
  private final ColumnNeighbours neighbours;

  public JointEvidence(Vocabulary vocabulary, SpanFinder spans) {
    this.vocabulary = vocabulary;
    this.shorts = new ShortTerms(vocabulary);
    this.cells = new CellReader(vocabulary, spans, shorts);
    HeardHeadings headings = new HeardHeadings(vocabulary);
    this.scorer = new ColumnScores(vocabulary, headings, cells);
    this.neighbours = new ColumnNeighbours(vocabulary, headings);
  }

  HeadingEvidence headings() {
    return vocabulary.headings();
  }

  public ShortTerms shorts() {
    return shorts;
  }

  CellReading reading(String cell) {
    return cells.reading(cell);
  }

  boolean isValue(String cell) {
    return cells.isValue(cell);
  }

  /**
   * The columns with what they hold, by their numbers.
   *
   * @param family part of the work that the heading over the table speaks of, or empty
   */
  Map<Integer, Header.Column> columns(List<ColumnWords> written, String family) {
    List<ColumnWords> words = written.stream().map(this::spelt).map(this::measured).toList();
    Map<Integer, Map<String, ColumnScore>> scores = new TreeMap<>();
    for (ColumnWords w : words) if (!scorer.isFormer(w)) scores.put(w.index(), scorer.of(w));
    for (ColumnWords w : words) CountedRows.in(w, scores.getOrDefault(w.index(), Map.of()));
    neighbours.among(words, scores, family);
    neighbours.beside(words, Assignment.of(claims(scores, words)), scores);
    Map<Integer, Assignment.Choice> chosen = Assignment.of(claims(scores, words));
    Foremost taken = new Foremost();
    chosen.forEach((index, choice) -> taken.add(choice.meaning(), index, choice.score()));
    Map<Integer, Header.Column> out = new LinkedHashMap<>();
    for (ColumnWords w : words)
      out.put(w.index(), column(w, scores.get(w.index()), chosen.get(w.index()), taken));
    return out;
  }

  /** With the words that the legends of the set have for its letters. */
  private ColumnWords spelt(ColumnWords w) {
    Taught taught = vocabulary.taught();
    if (!taught.spells()) return w;
    String family = vocabulary.family(w.text());
    // What a person teaches stands above a legend.
    boolean byHand = scorer.taught(w) != null;
    return new ColumnWords(
        w.index(),
        w.top(),
        byHand ? w.bottom() : taught.speltHeading(w.bottom()),
        w.group(),
        w.unit(),
        w.cells().stream().map(cell -> taught.spelt(cell, family)).toList());
  }

  /** A heading without a unit has the one that was taught with it. */
  private ColumnWords measured(ColumnWords w) {
    Taught.Word taught = scorer.taught(w);
    boolean other = taught == null || taught.unit() == null || w.unit() != null;
    return other
        ? w
        : new ColumnWords(w.index(), w.top(), w.bottom(), w.group(), taught.unit(), w.cells());
  }

  private List<Assignment.Claim> claims(
      Map<Integer, Map<String, ColumnScore>> scores, List<ColumnWords> words) {
    List<Assignment.Claim> out = new ArrayList<>();
    Map<Integer, ColumnWords> byIndex = new LinkedHashMap<>();
    words.forEach(w -> byIndex.put(w.index(), w));
    Map<String, Set<Unit>> units = units(words, scores);
    Foremost shared = new Foremost();
    scores.forEach(
        (index, own) -> {
          double best = own.values().stream().mapToDouble(ColumnScore::sum).max().orElse(0);
          own.forEach(
              (meaning, s) -> {
                if (s.sum() < ENOUGH || s.sum() < best - RIVAL) return;
                if (isBelied(s, own.values())) return;
                Unit unit = byIndex.get(index).unit();
                int copies = copies(meaning, s, unit, units.getOrDefault(meaning, Set.of()));
                if (copies > 1) shared.add(meaning, index, s.sum());
                for (int copy = 0; copy < copies; copy++)
                  out.add(new Assignment.Claim(index, meaning, copy, s.sum()));
              });
        });
    // Who may not share a meaning has it alone or not at all.
    Set<List<Object>> several = new HashSet<>();
    for (Assignment.Claim c : out) if (c.copy() > 0) several.add(List.of(c.column(), c.meaning()));
    out.removeIf(
        c ->
            !several.contains(List.of(c.column(), c.meaning()))
                && shared.beside(c.meaning(), c.column()) > c.score());
    return out;
  }

  /** The units of the columns that may have a meaning. */
  private static Map<String, Set<Unit>> units(
      List<ColumnWords> words, Map<Integer, Map<String, ColumnScore>> scores) {
    Map<String, Set<Unit>> out = new HashMap<>();
    for (ColumnWords w : words) {
      if (w.unit() == null) continue;
      for (String meaning : scores.getOrDefault(w.index(), Map.of()).keySet())
        out.computeIfAbsent(meaning, any -> EnumSet.noneOf(Unit.class)).add(w.unit());
    }
    return out;
  }

  /** One, but for the same figure in two units, surfaces of rooms, and plain headings. */
  private static int copies(String meaning, ColumnScore s, Unit unit, Set<Unit> units) {
    if (meaning.equals(HeadingEvidence.TAG)) return 1;
    boolean exact = s.heading() >= ColumnScores.EXACT && s.cells() >= 0;
    if (meaning.startsWith("@") || MANY.contains(meaning) || exact) return MOST_COPIES;
    boolean second =
        unit != null
            && units.stream().anyMatch(o -> o != unit && o.dimension() == unit.dimension());
    return second && s.cells() >= 0 ? 2 : 1;
  }

  private Header.Column column(
      ColumnWords w, Map<String, ColumnScore> scores, Assignment.Choice choice, Foremost taken) {
    if (scores == null)
      return new Header.Column(w.index(), w.text(), Header.Role.FORMER, null, "", w.unit())
          .by(new Header.Evidence("former values", 1, 0, List.of()));
    List<String> could =
        scores.entrySet().stream()
            .filter(
                e -> vocabulary.attribute(e.getKey()).isPresent() && e.getValue().sum() >= COULD)
            .sorted((a, b) -> Double.compare(b.getValue().sum(), a.getValue().sum()))
            .limit(MOST_COPIES)
            .map(Map.Entry::getKey)
            .toList();
    Header.Column none =
        new Header.Column(w.index(), w.text(), Header.Role.OTHER, null, "", w.unit());
    if (choice == null)
      return none.by(new Header.Evidence("neither heading nor cells known", 0, 0, could));
    double best = scores.values().stream().mapToDouble(ColumnScore::sum).max().orElse(0);
    ColumnScore s = scores.get(choice.meaning());
    if (choice.meaning().equals(HeadingEvidence.OTHER)) return unasked(w, s, could);
    boolean clear =
        choice.margin() >= MARGIN
            && choice.score() - rival(w, scores, choice, taken) >= MARGIN
            && choice.score() >= best - SECOND_BEST;
    ColumnScore material = scores.get(HeadingEvidence.MATERIAL);
    boolean describes = material != null && material.cells() >= DESCRIBES;
    // "GLASS MOSAIC, FUSED, MESH-BACKED": where each cell names what it is, it is described.
    if (!clear && describes && taken.beside(HeadingEvidence.MATERIAL, w.index()) <= 0)
      return of(w, HeadingEvidence.MATERIAL)
          .by(new Header.Evidence(material.why(), material.heading(), material.sum(), List.of()));
    if (!clear) return none.by(new Header.Evidence("not clear: " + s.why(), s.heading(), 0, could));
    return of(w, choice.meaning())
        .by(new Header.Evidence(s.why(), s.heading(), choice.score(), List.of()));
  }

  /** The best of what else the column might be, and no other column is with more right. */
  private static double rival(
      ColumnWords w, Map<String, ColumnScore> scores, Assignment.Choice own, Foremost taken) {
    return scores.entrySet().stream()
        .filter(e -> !e.getKey().equals(own.meaning()))
        .filter(e -> taken.beside(e.getKey(), w.index()) < e.getValue().sum())
        .filter(e -> !isBelied(e.getValue(), scores.values()))
        .mapToDouble(e -> e.getValue().sum())
        .max()
        .orElse(0);
  }

  /**
   * "Backing" over "cement board on studs": of two that the heading may mean, the cells are values
   * of one and of the other none is.
   */
  private static boolean isBelied(ColumnScore s, Collection<ColumnScore> all) {
    return s.cells() < 0
        && all.stream()
            .anyMatch(
                o ->
                    o.heading() >= ColumnScores.HINT
                        && o.cells() >= ColumnScores.FITS
                        && o.sum() >= s.sum());
  }

  private Header.Column unasked(ColumnWords w, ColumnScore s, List<String> could) {
    boolean sure = could.isEmpty() && s.heading() >= ColumnScores.FITS;
    String why = scorer.taught(w) == null ? "nothing that is asked for" : s.why();
    Header.Role role = sure ? Header.Role.UNASKED : Header.Role.OTHER;
    return new Header.Column(w.index(), w.text(), role, null, "", w.unit())
        .by(new Header.Evidence(why, s.heading(), 0, could));
  }

  private Header.Column of(ColumnWords w, String meaning) {
    if (meaning.equals(HeadingEvidence.TAG))
      return new Header.Column(w.index(), w.text(), Header.Role.TAG, null, "", w.unit());
    if (meaning.equals(HeadingEvidence.MATERIAL))
      return new Header.Column(w.index(), w.text(), Header.Role.MATERIAL, null, "", w.unit());
    if (meaning.startsWith(HeadingEvidence.SURFACE)) {
      String surface = meaning.substring(HeadingEvidence.SURFACE.length());
      return new Header.Column(w.index(), w.text(), Header.Role.SURFACE, null, surface, w.unit());
    }
    Attribute attribute = vocabulary.attribute(meaning).orElseThrow();
    return new Header.Column(w.index(), w.text(), Header.Role.ATTRIBUTE, attribute, "", w.unit());
  }
}
