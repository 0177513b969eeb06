package clearbed.recognise;

import clearbed.base.Memo;
import clearbed.model.Unit;
import clearbed.recognise.HeadingEvidence.Heard;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * What the columns of a table hold, by their headings, units, cells and neighbours together. The
 * score of a column and a meaning is
 *
 * <pre>
 *   3 x what the heading says of it (0 to 1)
 * + 2 x what the cells say of it (-1 to 1)
 * + 0.5 where the unit is one of it, -1.5 where it is of something else
 * + 0.75 where the column beside it is of the same part of the work and the heading names none
 * </pre>
 *
 * and a column has its meaning when that is 1.5 and more, and the whole table would lose 0.5 and
 * more by any other.
 */
final class JointEvidence {
  private static final double HEADING = 3;
  private static final double CELLS = 2;
  private static final double UNIT = 0.5;
  private static final double OTHER_UNIT = -1.5;
  private static final double NEIGHBOUR = 0.75;

  /** A column takes its sense from the one before it more than from the one behind. */
  private static final double BEHIND = 0.4;

  private static final double ENOUGH = 1.5;
  private static final double MARGIN = 0.5;

  /** What scores so much less than the best of a column is no rival. */
  private static final double RIVAL = 1.0;

  /** A column that gets less than its best by so much is not the one that it seems. */
  private static final double SECOND_BEST = 0.3;

  private static final double FITS = 0.5;
  private static final int LONGEST_CLASS = 6;
  private static final double BORNE_OUT = 0.15;
  private static final double HALF = 0.75;
  private static final double HINT = 0.3;

  /** A heading that names a part of the work and no more. */
  private static final double SILENT = 0.36;

  /** Nearly every cell names a place. */
  private static final double ROOMS_ALL = 0.85;

  private static final double HALF_BORNE_OUT = 0.3;
  private static final int MOST_COPIES = 6;

  /** A number alone could be anything. */
  private static final double COULD = 1.0;

  /** Headings of attributes that several columns may have. */
  private static final double EXACT = 0.95;

  /** Parts of the work that have tables of their own. */
  private static final Set<String> PARTS =
      Set.of("mortar", "grout", "sealant", "movement", "membrane");

  /** Sealants are of movement joints. */
  private static final Set<String> KIN = Set.of("sealant", "movement");

  /** Joints, grouts and sealants have marks of their own, which are not those of tiles. */
  private static final Pattern OF_OTHERS =
      Pattern.compile("joint|grout|seal|mortar|adh|room|space", Pattern.CASE_INSENSITIVE);

  private static final Set<String> MANY = Set.of("location.room", "notes");

  /**
   * A column before it is known what it holds.
   *
   * @param top its upper headings, or those of its group
   * @param group whether the upper heading is one of several columns
   * @param cells some of those below
   */
  record Words(int index, String top, String bottom, Group group, Unit unit, List<String> cells) {
    /** Where the heading of a group stands: over the column, or over one before it. */
    enum Group {
      NONE,
      OVER,
      BEFORE
    }

    String text() {
      return (top + " " + bottom).trim();
    }
  }

  /** What speaks for one meaning of a column. */
  private record Score(double heading, double cells, double unit, double beside, String why) {
    Score beside(String family, double by) {
      String said = why + (why.isEmpty() ? "" : ", ") + "beside " + family;
      return new Score(heading, cells, unit, beside + by, said);
    }

    double sum() {
      return HEADING * heading + CELLS * cells + unit + beside;
    }
  }

  private final Vocabulary vocabulary;
  private final HeadingEvidence headings;
  private final SpanFinder spans;
  private final ShortTerms shorts;
  private final Memo<String, CellReading> readings = Memo.ofTexts();

  JointEvidence(Vocabulary vocabulary, SpanFinder spans) {
    this.vocabulary = vocabulary;
    this.headings = new HeadingEvidence(vocabulary);
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

  /**
   * The columns with what they hold, by their numbers.
   *
   * @param family part of the work that the heading over the table speaks of, or empty
   */
  Map<Integer, Header.Column> columns(List<Words> words, String family) {
    Map<Integer, Map<String, Score>> scores = new TreeMap<>();
    for (Words w : words) {
      if (isFormer(w)) continue;
      scores.put(w.index(), scores(w));
      if (PARTS.contains(family) && families(w.text()).isEmpty())
        scores.get(w.index()).replaceAll((meaning, s) -> under(family, meaning, s));
    }
    onlyRooms(scores);
    onlyTags(scores, words);
    strengths(scores, words);
    Map<Integer, Assignment.Choice> first = Assignment.of(claims(scores, words));
    beside(words, first, scores);
    Map<Integer, Assignment.Choice> chosen = Assignment.of(claims(scores, words));
    Map<Integer, Header.Column> out = new LinkedHashMap<>();
    for (Words w : words) out.put(w.index(), column(w, scores.get(w.index()), chosen));
    return out;
  }

  /**
   * A heading that might be of tags gives way to a column of tags, as do marks of grouts and
   * joints.
   */
  private void onlyTags(Map<Integer, Map<String, Score>> scores, List<Words> words) {
    Set<Integer> tagged = new LinkedHashSet<>();
    for (Words w : words) {
      Score tag = scores.getOrDefault(w.index(), Map.of()).get(HeadingEvidence.TAG);
      if (tag != null && tag.cells() >= FITS && isOfTiles(w)) tagged.add(w.index());
    }
    for (Words w : words) {
      Map<String, Score> own = scores.getOrDefault(w.index(), Map.of());
      Score tag = own.get(HeadingEvidence.TAG);
      boolean others = tagged.size() > (tagged.contains(w.index()) ? 1 : 0);
      if (tag == null || !others) continue;
      if (!isOfTiles(w)) own.remove(HeadingEvidence.TAG);
      else if (tag.cells() < HALF_BORNE_OUT)
        own.put(HeadingEvidence.TAG, new Score(tag.heading() * 0.4, tag.cells(), 0, 0, tag.why()));
    }
  }

  /**
   * Beside a mortar of ANSI A118 a strength is that in shear; beside a class of EN 12004 in
   * tension.
   */
  private void strengths(Map<Integer, Map<String, Score>> scores, List<Words> words) {
    boolean iso = anyFits(scores, "mortar.isoClass");
    boolean ansi = anyFits(scores, "mortar.standard");
    if (iso == ansi) return;
    String meant = iso ? "mortar.tensile" : "mortar.bond";
    String other = iso ? "mortar.bond" : "mortar.tensile";
    for (Map<String, Score> own : scores.values()) {
      Score s = own.get(meant);
      Score o = own.get(other);
      boolean told = s == null || o == null || Math.max(s.heading(), o.heading()) > SILENT;
      if (!told && s.unit() > 0)
        own.put(meant, s.beside(iso ? "a class of EN 12004" : "a mortar of ANSI A118", NEIGHBOUR));
    }
  }

  private boolean isOfTiles(Words w) {
    return families(w.text()).isEmpty() && !OF_OTHERS.matcher(w.text()).find();
  }

  private static boolean anyFits(Map<Integer, Map<String, Score>> scores, String meaning) {
    return scores.values().stream()
        .anyMatch(own -> own.containsKey(meaning) && own.get(meaning).cells() >= HALF);
  }

  /** Where the surfaces of rooms have their tags a column of more tags is another surface. */
  private static void onlyRooms(Map<Integer, Map<String, Score>> scores) {
    long surfaces =
        scores.values().stream()
            .filter(
                own ->
                    own.entrySet().stream()
                        .anyMatch(
                            e ->
                                e.getKey().startsWith(HeadingEvidence.SURFACE)
                                    && e.getValue().heading() >= EXACT))
            .count();
    if (surfaces < 2) return;
    for (Map<String, Score> own : scores.values()) {
      Score tag = own.get(HeadingEvidence.TAG);
      if (tag != null && tag.heading() < EXACT) own.remove(HeadingEvidence.TAG);
    }
  }

  /** In a table of movement joints the width of a joint is not that of a grout joint. */
  private Score under(String family, String meaning, Score s) {
    if (isOf(meaning, family)) return s.beside(family, NEIGHBOUR);
    boolean other =
        PARTS.stream()
            .filter(p -> !KIN.contains(family) || !KIN.contains(p))
            .anyMatch(p -> isOf(meaning, p));
    return other ? new Score(s.heading() / 2, s.cells(), s.unit(), s.beside(), s.why()) : s;
  }

  private boolean isFormer(Words w) {
    return vocabulary.list("schedule.former").matches(w.text())
        || vocabulary.list("schedule.former").matches(w.bottom())
        || vocabulary.list("schedule.former").matches(w.top()) && !w.top().isEmpty();
  }

  private Map<String, Score> scores(Words w) {
    List<CellReading> cells = w.cells().stream().filter(this::says).map(this::reading).toList();
    Map<String, Heard> heard = heard(w);
    Map<String, Score> out = new LinkedHashMap<>();
    for (Attribute a : vocabulary.attributes()) {
      Heard by = heard.get(a.id());
      boolean exact = by != null && by.strength() >= EXACT;
      if (!exact && a.words().not().in(w.text().toLowerCase(Locale.ROOT))) continue;
      Fit fit = c -> fits(c, a, w);
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
    return out;
  }

  /** "50" under "Class" is "Class 50". */
  private double fits(CellReading cell, Attribute a, Words w) {
    double fits = cell.fits(a, w.unit());
    boolean letters = a.kind() == Attribute.Kind.TERM && cell.text().length() <= LONGEST_CLASS;
    if (fits > 0 || !letters || w.bottom().isEmpty()) return fits;
    return HeadingWords.classed(a, w.bottom(), cell.text()).isPresent() ? 0.8 : fits;
  }

  /** Tags are told apart by being different. */
  private void distinct(Map<String, Score> out, Words w) {
    Score tag = out.get(HeadingEvidence.TAG);
    List<String> said = w.cells().stream().filter(this::says).toList();
    if (tag == null || tag.cells() <= 0 || said.isEmpty()) return;
    double share = (double) new LinkedHashSet<>(said).size() / said.size();
    out.put(
        HeadingEvidence.TAG,
        new Score(tag.heading(), tag.cells() * (0.4 + 0.6 * share), 0, 0, tag.why()));
  }

  private interface Fit {
    double of(CellReading cell);
  }

  private void role(
      Map<String, Score> out,
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
      Map<String, Score> out,
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
    Score score = new Score(heading, cells, unit, 0, why);
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
  private Map<String, Heard> heard(Words w) {
    Map<String, Heard> out = new LinkedHashMap<>();
    if (HeadingEvidence.isMoney(w.text())) {
      out.put(HeadingEvidence.OTHER, new Heard(1, "money", false));
      return out;
    }
    for (String words : variants(w.text()))
      headings
          .of(words)
          .forEach((meaning, by) -> out.merge(meaning, by, HeadingEvidence::stronger));
    boolean group = w.group() != Words.Group.NONE;
    if (group) {
      Set<String> of = w.group() == Words.Group.OVER ? families(w.top()) : Set.of();
      for (String words : variants(w.bottom()))
        headings
            .of(words)
            .forEach(
                (meaning, by) -> {
                  double strength = suits(meaning, of, w.top()) ? EXACT : 0.4;
                  out.merge(meaning, by.times(strength), HeadingEvidence::stronger);
                });
    }
    Header.Column known = HeadingWords.column(vocabulary, 0, w.top(), w.bottom());
    boolean own = w.group() != Words.Group.OVER || w.bottom().isEmpty();
    if (known.role() != Header.Role.OTHER
        && (own || suits(meaning(known), families(w.top()), w.top())))
      out.put(meaning(known), new Heard(1, "heading", false));
    return out;
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

  /** "Colour" beside the mortar is that of the mortar. */
  private void beside(
      List<Words> words,
      Map<Integer, Assignment.Choice> first,
      Map<Integer, Map<String, Score>> scores) {
    for (int i = 0; i < words.size(); i++) {
      Words w = words.get(i);
      Map<String, Score> own = scores.get(w.index());
      if (own == null || !families(w.text()).isEmpty() || isPlain(own)) continue;
      String group = ofGroup(w, words, first);
      String before =
          !group.isEmpty() ? group : i == 0 ? "" : family(first.get(words.get(i - 1).index()));
      String behind = i + 1 == words.size() ? "" : family(first.get(words.get(i + 1).index()));
      String family = before.isEmpty() ? behind : before;
      double by = before.isEmpty() ? BEHIND : NEIGHBOUR;
      String had = meaning(i, words, first);
      if (!family.isEmpty())
        own.replaceAll(
            (meaning, s) ->
                isOf(meaning, family) && !meaning.equals(had) ? s.beside(family, by) : s);
    }
  }

  /** A heading that says by itself what it is needs no neighbour. */
  private boolean isPlain(Map<String, Score> own) {
    return own.entrySet().stream()
        .anyMatch(
            e ->
                e.getValue().heading() >= EXACT
                    && e.getValue().cells() > HALF_BORNE_OUT
                    && vocabulary.attribute(e.getKey()).isPresent());
  }

  /** What the column before one holds: the next holds something else. */
  private static String meaning(int at, List<Words> words, Map<Integer, Assignment.Choice> first) {
    Assignment.Choice before = at == 0 ? null : first.get(words.get(at - 1).index());
    return before == null ? "" : before.meaning();
  }

  /** The part of the work that the other columns below the same heading are about, if but one. */
  private String ofGroup(Words w, List<Words> words, Map<Integer, Assignment.Choice> first) {
    if (w.top().isEmpty()) return "";
    Set<String> out = new LinkedHashSet<>();
    for (Words o : words)
      if (o.index() != w.index() && o.top().equals(w.top())) out.add(family(first.get(o.index())));
    out.remove("");
    return out.size() == 1 ? out.iterator().next() : "";
  }

  private Set<String> families(String words) {
    return headings.familiesOf(HeadingWords.clean(vocabulary, words));
  }

  private boolean isOf(String meaning, String family) {
    return vocabulary.attribute(meaning).filter(a -> a.family().equals(family)).isPresent();
  }

  /** The part of the work that a column is about, where that is not the tile itself. */
  private String family(Assignment.Choice choice) {
    if (choice == null || choice.score() < ENOUGH) return "";
    return vocabulary
        .attribute(choice.meaning())
        .map(Attribute::family)
        .filter(f -> !f.equals("tile") && !f.equals("location") && !f.equals("process"))
        .orElse("");
  }

  private List<Assignment.Claim> claims(
      Map<Integer, Map<String, Score>> scores, List<Words> words) {
    List<Assignment.Claim> out = new ArrayList<>();
    Map<Integer, Words> byIndex = new LinkedHashMap<>();
    words.forEach(w -> byIndex.put(w.index(), w));
    scores.forEach(
        (index, own) -> {
          double best = own.values().stream().mapToDouble(Score::sum).max().orElse(0);
          own.forEach(
              (meaning, s) -> {
                if (s.sum() < ENOUGH || s.sum() < best - RIVAL) return;
                int copies = copies(meaning, s, byIndex.get(index), words, scores);
                for (int copy = 0; copy < copies; copy++)
                  out.add(new Assignment.Claim(index, meaning, copy, s.sum()));
              });
        });
    // Who may not share a meaning has it alone or not at all.
    out.removeIf(c -> isAlone(c, out) && out.stream().anyMatch(o -> isBetter(o, c)));
    return out;
  }

  private static boolean isAlone(Assignment.Claim claim, List<Assignment.Claim> claims) {
    return claims.stream()
        .noneMatch(
            o ->
                o.column() == claim.column()
                    && o.meaning().equals(claim.meaning())
                    && o.copy() > claim.copy());
  }

  private static boolean isBetter(Assignment.Claim other, Assignment.Claim claim) {
    return other.column() != claim.column()
        && other.meaning().equals(claim.meaning())
        && other.copy() > 0
        && claim.copy() == 0
        && other.score() > claim.score();
  }

  /** One, but for the same figure in two units, surfaces of rooms, and plain headings. */
  private int copies(
      String meaning,
      Score s,
      Words w,
      List<Words> words,
      Map<Integer, Map<String, Score>> scores) {
    if (meaning.equals(HeadingEvidence.TAG)) return 1;
    boolean exact = s.heading() >= EXACT && s.cells() >= 0;
    if (meaning.startsWith("@") || MANY.contains(meaning) || exact) return MOST_COPIES;
    boolean second =
        words.stream()
            .anyMatch(
                o ->
                    o.index() != w.index()
                        && o.unit() != null
                        && w.unit() != null
                        && o.unit() != w.unit()
                        && o.unit().dimension() == w.unit().dimension()
                        && scores.getOrDefault(o.index(), Map.of()).containsKey(meaning));
    return second && s.cells() >= 0 ? 2 : 1;
  }

  private Header.Column column(
      Words w, Map<String, Score> scores, Map<Integer, Assignment.Choice> chosen) {
    Assignment.Choice choice = chosen.get(w.index());
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
    double best = scores.values().stream().mapToDouble(Score::sum).max().orElse(0);
    Score s = scores.get(choice.meaning());
    if (choice.meaning().equals(HeadingEvidence.OTHER)) return unasked(w, s, could);
    boolean clear =
        choice.margin() >= MARGIN
            && choice.score() - rival(w, scores, chosen) >= MARGIN
            && choice.score() >= best - SECOND_BEST;
    if (!clear) return none.by(new Header.Evidence("not clear: " + s.why(), s.heading(), 0, could));
    return of(w, choice.meaning())
        .by(new Header.Evidence(s.why(), s.heading(), choice.score(), List.of()));
  }

  /** The best of what else the column might be, and no other column is with more right. */
  private static double rival(
      Words w, Map<String, Score> scores, Map<Integer, Assignment.Choice> chosen) {
    String own = chosen.get(w.index()).meaning();
    return scores.entrySet().stream()
        .filter(e -> !e.getKey().equals(own))
        .filter(
            e ->
                chosen.entrySet().stream()
                    .noneMatch(
                        c ->
                            c.getKey() != w.index()
                                && c.getValue().meaning().equals(e.getKey())
                                && c.getValue().score() >= e.getValue().sum()))
        .mapToDouble(e -> e.getValue().sum())
        .max()
        .orElse(0);
  }

  private static Header.Column unasked(Words w, Score s, List<String> could) {
    boolean sure = could.isEmpty() && s.heading() >= FITS;
    Header.Role role = sure ? Header.Role.UNASKED : Header.Role.OTHER;
    return new Header.Column(w.index(), w.text(), role, null, "", w.unit())
        .by(new Header.Evidence("nothing that is asked for", s.heading(), 0, could));
  }

  private Header.Column of(Words w, String meaning) {
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
