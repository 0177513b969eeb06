package clearbed.check.computed.set;

import clearbed.base.Memo;
import clearbed.calc.figure.BothUnits;
import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.SetComputation;
import clearbed.check.judge.SetText;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Rule;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** One figure given in two units that are not the same figure. */
public final class UnitSlipCheck implements SetComputation {
  // People round: 1/4 in is written 6 mm (5.5 % off), 1/8 in 3 mm (common practice, no source).
  private static final double ROUNDED = 0.13;

  /** Lengths from an inch up are rounded to 25 mm for an inch: 12 in is written 300 mm. */
  private static final double ROUNDED_LENGTH = 0.05;

  private static final double SHORT_METRES = 0.02;

  /** Strengths are not rounded so far: 400 psi is written 2.8 or 3 MPa at most. */
  private static final double STRENGTH = 0.09;

  private static final double HALF_MILLIMETRE = 0.0006;
  private static final double DEGREES = 1.6;

  private static final Set<Unit> METRIC =
      EnumSet.of(
          Unit.MILLIMETRE,
          Unit.CENTIMETRE,
          Unit.METRE,
          Unit.MEGAPASCAL,
          Unit.NEWTON_PER_SQUARE_MILLIMETRE);

  /** "8 mm = 5/16 in", and not the "1/2 in = 1 ft" of a drawing. */
  private static final Pattern EQUALS = Pattern.compile("\\s*=\\s*");

  private static final String SIDE = "\\d[\\d./ -]*?";
  private static final String BESIDE = "\\s*[xX\u00d7]\\s*";
  private static final Pattern BY = Pattern.compile(BESIDE);

  private static final Pattern BARE_SIZES =
      Pattern.compile(
          "(?<![\\d.,/])("
              + SIDE
              + "(?:"
              + BESIDE
              + SIDE
              + "){1,2})\\s*\\((\\d[\\d.]*(?:"
              + BESIDE
              + "\\d[\\d.]*){1,2})\\)");

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    List<Finding> out = new ArrayList<>();
    // A schedule says few texts, each of them thousands of times.
    Memo<String, List<Slip>> known = Memo.ofTexts();
    Function<String, List<Slip>> slips = text -> known.get(text, () -> slips(text));
    scene
        .text()
        .each(
            (text, cell) -> !slips.apply(text).isEmpty(),
            piece -> {
              for (Slip slip : slips.apply(piece.text()))
                out.add(finding(rule, scene, piece, slip.a(), slip.b()));
            });
    return out;
  }

  private record Slip(Content a, Content b) {}

  private static List<Slip> slips(String text) {
    List<Slip> out = new ArrayList<>();
    String plain = PlainText.of(text);
    Quantities.Found before = null;
    Quantities.Found earlier = null;
    for (Quantities.Found f : Quantities.find(text)) {
      boolean pair = earlier != null && !slips(earlier.content(), f.content()) && kin(earlier, f);
      // "6 mm in 3 m (1/4 in in 10 ft)": the first in brackets restates the first before them.
      boolean equated =
          before != null
              && METRIC.contains(f.unit()) != METRIC.contains(before.unit())
              && before.end() <= f.start()
              && EQUALS.matcher(plain.substring(before.end(), f.start())).matches();
      boolean again = before != null && (f.restates() || equated);
      if (again && !pair && slips(before.content(), f.content()))
        out.add(new Slip(before.content(), f.content()));
      earlier = before;
      before = f;
    }
    bareSizes(text, out);
    return out;
  }

  /** "6 x 18 (152 x 357)" below a heading "in. (mm)": one side shows which units are meant. */
  private static void bareSizes(String text, List<Slip> out) {
    if (text.indexOf('(') < 0) return;
    Matcher m = BARE_SIZES.matcher(PlainText.of(text));
    while (m.find()) {
      List<Quantity> inches = sides(m.group(1), Unit.INCH);
      List<Quantity> metric = sides(m.group(2), Unit.MILLIMETRE);
      if (inches.size() != metric.size()) continue;
      boolean meant = false;
      boolean slips = false;
      for (int i = 0; i < inches.size(); i++) {
        boolean off = slips(inches.get(i), metric.get(i));
        meant |= !off && inches.get(i).number() > 0;
        slips |= off;
      }
      if (meant && slips) out.add(new Slip(new Content.Size(inches), new Content.Size(metric)));
    }
  }

  private static List<Quantity> sides(String written, Unit unit) {
    List<Quantity> out = new ArrayList<>();
    for (String side : BY.split(written.strip()))
      Quantities.parse(side + " " + unit.symbol(), Dimension.LENGTH, DecimalMark.UNKNOWN)
          .ifPresent(amount -> out.add(Quantity.of(amount.low().number(), unit)));
    return out;
  }

  private static boolean kin(Quantities.Found a, Quantities.Found b) {
    return a.content() instanceof Content.Amount x
        && b.content() instanceof Content.Amount y
        && x.low().unit().dimension() == y.low().unit().dimension()
        && x.low().unit() != y.low().unit();
  }

  private static boolean slips(Content a, Content b) {
    if (a instanceof Content.Amount x && b instanceof Content.Amount y)
      return slips(x.low(), y.low()) || slips(x.high(), y.high());
    if (a instanceof Content.Size x && b instanceof Content.Size y) {
      for (int i = 0; i < Math.min(x.sides().size(), y.sides().size()); i++) {
        if (slips(x.sides().get(i), y.sides().get(i))) return true;
      }
    }
    return false;
  }

  private static boolean slips(Quantity a, Quantity b) {
    if (a.unit().dimension() != b.unit().dimension() || a.unit() == b.unit()) return false;
    double x = a.in(b.unit());
    double y = b.number();
    if (a.unit().dimension() == Dimension.TEMPERATURE)
      return Math.abs(a.in(Unit.CELSIUS) - b.in(Unit.CELSIUS)) > DEGREES && !asDifference(a, b);
    boolean small =
        a.unit().dimension() == Dimension.LENGTH
            && Math.abs(a.in(Unit.METRE) - b.in(Unit.METRE)) <= HALF_MILLIMETRE;
    return !small && Math.abs(x - y) > rounded(a) * Math.max(Math.abs(x), Math.abs(y));
  }

  private static double rounded(Quantity a) {
    Dimension of = a.unit().dimension();
    if (of == Dimension.PRESSURE) return STRENGTH;
    boolean length = of == Dimension.LENGTH && Math.abs(a.in(Unit.METRE)) > SHORT_METRES;
    return length ? ROUNDED_LENGTH : ROUNDED;
  }

  /** "130 °F (72 °C)" is right for a range of temperature. */
  private static boolean asDifference(Quantity a, Quantity b) {
    double f = a.unit() == Unit.FAHRENHEIT ? a.number() : b.number();
    double c = a.unit() == Unit.FAHRENHEIT ? b.number() : a.number();
    return Math.abs(f * 5 / 9 - c) <= DEGREES;
  }

  private static Finding finding(
      Rule rule, Scene scene, SetText.TextPiece piece, Content a, Content b) {
    String found = a.text() + " against " + b.text();
    String message = "Two units of one figure disagree: " + a.text() + " is not " + b.text() + ".";
    return scene
        .writer()
        .write(
            rule,
            new FindingWriter.Case(
                piece.subject() + " " + found,
                "",
                FindingKind.CONFLICTING,
                rule.level(),
                piece.tags(),
                FoundAt.at(piece.origin()),
                new FindingWords(message, found, expected(a, b), steps(a, b), "")));
  }

  /** Either figure in both units: one of them is meant. */
  private static String expected(Content a, Content b) {
    List<String> ways = new ArrayList<>();
    for (TwoFigures pair : pairs(a, b)) {
      ways.add(
          BothUnits.inUnitOf(pair.one(), pair.other())
              + " or "
              + BothUnits.inUnitOf(pair.other(), pair.one()));
    }
    return ways.isEmpty() ? "one figure" : String.join("; ", ways);
  }

  private static List<String> steps(Content a, Content b) {
    List<String> steps = new ArrayList<>();
    for (TwoFigures pair : pairs(a, b)) {
      Quantity converted = pair.one().to(pair.other().unit());
      double off = Math.abs(converted.number() - pair.other().number());
      double percent = off / Math.abs(converted.number()) * 100;
      steps.add(
          "Conversion: "
              + BothUnits.inUnitOf(pair.one(), pair.other())
              + "; stated is "
              + pair.other()
              + (Double.isFinite(percent) ? ", " + Math.round(percent) + " % off" : ""));
    }
    return steps;
  }

  /** The figures of the two that disagree. */
  private record TwoFigures(Quantity one, Quantity other) {}

  private static List<TwoFigures> pairs(Content a, Content b) {
    List<TwoFigures> all = new ArrayList<>();
    if (a instanceof Content.Amount x && b instanceof Content.Amount y) {
      all.add(new TwoFigures(x.low(), y.low()));
      if (!x.low().equals(x.high())) all.add(new TwoFigures(x.high(), y.high()));
    }
    if (a instanceof Content.Size x && b instanceof Content.Size y) {
      for (int i = 0; i < Math.min(x.sides().size(), y.sides().size()); i++)
        all.add(new TwoFigures(x.sides().get(i), y.sides().get(i)));
    }
    return all.stream().filter(pair -> slips(pair.one(), pair.other())).toList();
  }
}
