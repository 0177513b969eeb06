package clearbed.check.computed;

import clearbed.calc.Given;
import clearbed.calc.Interval;
import clearbed.calc.Measure;
import clearbed.calc.SealantDepth;
import clearbed.calc.Subject;
import clearbed.calc.Takeoff;
import clearbed.calc.TakeoffInputs;
import clearbed.check.rules.Stated;
import clearbed.model.Calculation;
import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Entry;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import clearbed.model.Value;
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
  private static final Given THICKNESS = Given.assumed(Quantity.of(1.0 / 4, Unit.INCH), PRACTICE);

  /** What the rest is taken off from, in words. */
  private static final Map<String, String> NEEDED = needed();

  private final Entry entry;
  private final Stated stated;

  private static Map<String, String> needed() {
    Map<String, String> out = new LinkedHashMap<>();
    out.put("location.area", "area");
    out.put("tile.size", "tile size");
    out.put("grout.width", "grout joint");
    return out;
  }

  public BidQuantities(Entry entry) {
    this.entry = entry;
    this.stated = new Stated(entry);
  }

  /**
   * Empty when the area, the size or the grout joint is not stated; without steps when one of them
   * is not understood.
   */
  public Optional<Calculation> calculation() {
    Subject subject = new Subject("quantities", entry.tag());
    String lacks = lacks();
    if (!lacks.isEmpty())
      return Optional.of(
          Calculation.lacking(subject.id(), subject.check(), subject.tag(), "Quantities", lacks));
    Optional<Given> area = area();
    List<Given> sides = sides();
    Optional<Given> grout = positive("grout.width");
    if (area.isEmpty() || sides.size() < 2 || grout.isEmpty()) return Optional.empty();
    MovementJoint joint = new MovementJoint(entry, List.of());
    boolean joints = joint.width().isPresent() && joint.spacing().isPresent();
    Given none = Given.assumed(Quantity.of(0, Unit.FOOT), withoutJoints());
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
            TakeoffInputs.Yields.common());
    return Optional.of(Takeoff.of(subject, inputs).calculation());
  }

  /** Small tile is set with a small notch, large tile with a large one and a buttered back. */
  private static Given bed(List<Given> sides) {
    Quantity longest =
        sides.get(0).high().compareTo(sides.get(1).high()) >= 0
            ? sides.get(0).high()
            : sides.get(1).high();
    double inches =
        longest.compareTo(SMALL) <= 0
            ? 1.0 / 16
            : longest.compareTo(LARGE) < 0 ? 3.0 / 32 : 1.0 / 8;
    return Given.assumed(
        Quantity.of(inches, Unit.INCH),
        PRACTICE + "; 1/16 in for sides up to 3 in, 1/8 in from 15 in, 3/32 in between");
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
        .orElse(sides.size() > 2 ? sides.get(2) : Stated.noted(entry, "tile.thickness", THICKNESS));
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
                        width.amount().map(w -> SealantDepth.depth(w, Measure.of(w.unit()))),
                        "half the joint's width, not under 1/8 in")));
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
