package clearbed.check.computed.set;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Measure;
import clearbed.calc.joint.SealantDepth;
import clearbed.calc.takeoff.Takeoff;
import clearbed.calc.takeoff.TakeoffInputs;
import clearbed.check.computed.joint.MovementJoint;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.Stated;
import clearbed.model.report.Calculation;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a bidder prices for an entry, where its area, tile size and grout joint are stated. */
public final class BidQuantities {
  private static final String PRACTICE = "common practice, no source";
  private static final Quantity SMALL = Quantity.of(3, Unit.INCH);
  private static final Quantity LARGE = Quantity.of(15, Unit.INCH);

  /** What the rest is taken off from, in words. */
  private static final Map<String, String> NEEDED = needed();

  private final Entry entry;
  private final Stated stated;
  private final Project project;
  private final RuleSet rules;

  private static Map<String, String> needed() {
    Map<String, String> out = new LinkedHashMap<>();
    out.put("location.area", "area");
    out.put("tile.size", "tile size");
    out.put("grout.width", "grout joint");
    return out;
  }

  public BidQuantities(Entry entry, Project project, RuleSet rules) {
    this.entry = entry;
    this.stated = new Stated(entry);
    this.project = project;
    this.rules = rules;
  }

  /** True where any tile has an area, so that quantities are wanted of all. */
  public static boolean wanted(Project project) {
    return project.glass().stream().anyMatch(e -> !e.governing("location.area").isEmpty());
  }

  /**
   * Without steps when the area, the size or the grout joint is not understood or not stated.
   *
   * @param wanted false to leave out what is not stated, as nobody takes off here
   */
  public Optional<Calculation> calculation(boolean wanted) {
    Optional<Calculation> lacking = lacking(wanted);
    return lacking.isPresent() ? lacking : takeoff().map(Takeoff::calculation);
  }

  private Optional<Calculation> lacking(boolean wanted) {
    CalculationSubject subject = subject();
    String lacks = lacks();
    if (lacks.isEmpty() && wanted) lacks = notStated();
    return lacks.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Calculation.lacking(subject.id(), subject.check(), subject.tag(), "Quantities", lacks));
  }

  private CalculationSubject subject() {
    return rules.subject("quantities", entry.tag());
  }

  /** Empty where a figure is lacking that it cannot do without. */
  Optional<Takeoff> takeoff() {
    if (!lacks().isEmpty()) return Optional.empty();
    Optional<Given> area = area();
    List<Given> sides = sides();
    Optional<Given> grout = positive("grout.width");
    if (area.isEmpty() || sides.size() < 2 || grout.isEmpty()) return Optional.empty();
    MovementJoint joint = new MovementJoint(entry, project, rules);
    boolean joints = joint.width().isPresent() && joint.spacing().isPresent();
    Given none = Given.assumed(Quantity.of(0, rules.units().large()), withoutJoints());
    TakeoffInputs inputs =
        new TakeoffInputs(
            area.get(),
            sides.get(0),
            sides.get(1),
            grout.get(),
            thickness(sides),
            bed(sides),
            joints ? length(area.get(), joint.spacing().orElseThrow()) : none,
            joints ? joint.width().orElseThrow() : none,
            joints ? depth(joint) : none,
            rules.yields());
    return Optional.of(Takeoff.of(subject(), inputs));
  }

  /** Small tile is set with a small notch, large tile with a large one and a buttered back. */
  private Given bed(List<Given> sides) {
    Quantity longest =
        sides.get(0).high().compareTo(sides.get(1).high()) >= 0
            ? sides.get(0).high()
            : sides.get(1).high();
    int step = longest.compareTo(SMALL) <= 0 ? 0 : longest.compareTo(LARGE) < 0 ? 1 : 2;
    return metric()
        ? Given.assumed(
            Quantity.of(List.of(1.5, 2.5, 3.0).get(step), Unit.MILLIMETRE),
            PRACTICE + "; 1.5 mm for sides up to 75 mm, 3 mm from 380 mm, 2.5 mm between")
        : Given.assumed(
            Quantity.of((step + 2) / 32.0, Unit.INCH),
            PRACTICE + "; 1/16 in for sides up to 3 in, 1/8 in from 15 in, 3/32 in between");
  }

  private boolean metric() {
    return rules.units().alone();
  }

  private String notStated() {
    String lacking =
        NEEDED.entrySet().stream()
            .filter(one -> entry.governing(one.getKey()).isEmpty())
            .map(Map.Entry::getValue)
            .collect(Collectors.joining(", "));
    return lacking.isEmpty() ? "" : "not stated: " + lacking;
  }

  /** The figures that were not understood and cannot be done without; mostly empty. */
  private String lacks() {
    return NEEDED.entrySet().stream()
        .map(one -> named(one.getValue(), one.getKey()))
        .filter(words -> !words.isEmpty())
        .collect(Collectors.joining("; "));
  }

  private String named(String label, String attribute) {
    String unread = Stated.unread(entry, attribute);
    return unread.isEmpty() ? "" : label + " " + unread;
  }

  private String withoutJoints() {
    String unread =
        Stream.of(
                named("width of movement joints", "movement.width"),
                named("spacing of movement joints", "movement.spacing"))
            .filter(words -> !words.isEmpty())
            .collect(Collectors.joining("; "));
    return unread.isEmpty() ? "no movement joint is stated in full" : unread;
  }

  private Optional<Given> positive(String attribute) {
    return stated.largest(attribute, Dimension.LENGTH).filter(given -> given.low().number() > 0);
  }

  private Given thickness(List<Given> sides) {
    return positive("tile.thickness")
        .orElse(
            sides.size() > 2 ? sides.get(2) : Stated.noted(entry, "tile.thickness", thickness()));
  }

  private Given thickness() {
    Quantity usual = metric() ? Quantity.of(6, Unit.MILLIMETRE) : Quantity.of(1.0 / 4, Unit.INCH);
    return Given.assumed(usual, PRACTICE);
  }

  private Given depth(MovementJoint joint) {
    Given width = joint.width().orElseThrow();
    return positive("sealant.depth")
        .orElseGet(
            () ->
                Stated.noted(
                    entry,
                    "sealant.depth",
                    Given.assumed(
                        width.amount().map(w -> SealantDepth.depth(w, depthMeasure(w))),
                        "half the joint's width, not under " + (metric() ? "3 mm" : "1/8 in"))));
  }

  private Measure depthMeasure(Quantity width) {
    return metric() ? rules.units() : Measure.of(width.unit());
  }

  /** Joints both ways at the spacing and around a square field: any other has more edge. */
  private static Given length(Given area, Given spacing) {
    double square = area.high().in(Unit.SQUARE_METRE);
    double metres = 2 * square / spacing.low().in(Unit.METRE) + 4 * Math.sqrt(square);
    Unit unit = Measure.of(spacing.low().unit()).large();
    return Given.assumed(
        Quantity.of(metres, Unit.METRE).to(unit),
        "2 × area ÷ spacing for joints both ways, 4 × √area for those at the edges, the least there are;"
            + " corners are not counted");
  }

  /** The sides of the tile: length and width, then the thickness where it is given with them. */
  private List<Given> sides() {
    for (Value v : entry.governing("tile.size")) {
      if (!(v.content() instanceof Content.Size size) || size.sides().size() < 2) continue;
      if (size.sides().stream().anyMatch(side -> side.number() <= 0)) continue;
      List<Given> out = new ArrayList<>();
      for (Quantity side : size.sides()) out.add(Stated.given(v, Interval.of(side)));
      return out;
    }
    return List.of();
  }

  /** Rows of one schedule add up; the same area in another schedule is not counted again. */
  private Optional<Given> area() {
    Map<String, List<Value>> schedules = new LinkedHashMap<>();
    for (Value v : entry.governing("location.area")) {
      if (!(v.content() instanceof Content.Amount a) || !isArea(a)) continue;
      String schedule = v.origin().document() + "|" + v.origin().sheet();
      schedules.computeIfAbsent(schedule, key -> new ArrayList<>()).add(v);
    }
    return schedules.values().stream()
        .map(BidQuantities::sum)
        .max(Comparator.comparing(Given::high));
  }

  private static boolean isArea(Content.Amount amount) {
    return amount.low().unit().dimension() == Dimension.AREA && amount.low().number() > 0;
  }

  private static Given sum(List<Value> values) {
    Quantity low = Quantity.of(0, first(values).low().unit());
    Quantity high = low;
    for (Value v : values) {
      low = low.plus(((Content.Amount) v.content()).low());
      high = high.plus(((Content.Amount) v.content()).high());
    }
    String words =
        values.size() == 1 ? values.get(0).asWritten() : "sum of " + values.size() + " rows";
    return Given.stated(new Interval(low, high), values.get(0).origin(), words);
  }

  private static Content.Amount first(List<Value> values) {
    return (Content.Amount) values.get(0).content();
  }
}
