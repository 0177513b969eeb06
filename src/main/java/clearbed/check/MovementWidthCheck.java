package clearbed.check;

import clearbed.calc.Fit;
import clearbed.calc.Given;
import clearbed.calc.MovementDesign;
import clearbed.calc.SealantClass;
import clearbed.model.Calculation;
import clearbed.model.Entry;
import clearbed.model.Kind;
import clearbed.model.Origin;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import clearbed.model.Value;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The stated width is at least the guideline's and the computed one, whichever is larger. */
final class MovementWidthCheck implements Computation {
  // A weaker sealant is the sealant's fault (movement-class), not the joint's.
  private static final SealantClass COMMON = SealantClass.of("25").orElseThrow();

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    MovementJoint joint = new MovementJoint(entry);
    if (joint.width().isEmpty()) {
      Value open =
          entry.values(rule.attribute()).stream().filter(Value::open).findFirst().orElse(null);
      return open == null
          ? new Judgement.Missing()
          : new Judgement.Undecided("left open: " + open.content().text(), open.origin());
    }
    List<Value> values = entry.governing(rule.attribute());
    Origin origin = joint.width().get().origin();
    if (joint.exposure().isEmpty())
      return new Judgement.Undecided("depends on the exposure, which is not stated", origin);
    MovementDesign design =
        joint.design(rule.id(), rules.guideline(), Optional.of(capability(joint)));
    List<Calculation> calculations = List.of(design.calculation());
    if (design.widthFit() == Fit.MEETS)
      return new Judgement.Satisfied(Judge.found(values), origin, calculations);
    List<String> unknown =
        design.unknowns().stream()
            .filter(MovementDesign.Unknown::changesVerdict)
            .map(u -> u.label() + " (reckoned with " + u.taken() + ")")
            .toList();
    boolean depends = design.widthFit() == Fit.DEPENDS;
    String message =
        depends
            ? "Whether a joint of {found} is wide enough for {tag} depends on what is not stated: "
                + String.join(", ", unknown)
                + "."
            : "The movement joint of {tag} is {found}; it needs {expected}.";
    String expected = expected(design);
    return new Judgement.Failed(
        depends ? Kind.UNRESOLVED : Kind.INADEQUATE,
        message,
        Judge.found(values),
        expected,
        origin,
        List.of(),
        steps(design.calculation()),
        calculations);
  }

  private static Given capability(MovementJoint joint) {
    SealantClass stated = joint.sealantClass().orElse(COMMON);
    boolean weaker = stated.capability().compareTo(COMMON.capability()) < 0;
    return weaker || joint.sealantClass().isEmpty()
        ? Given.assumed(COMMON.capability(), "Class 25, the class commonly used in tile work")
        : Given.stated(stated, null, "Class " + stated.name());
  }

  /** Both ways out: a wider joint, or closer joints. */
  private static String expected(MovementDesign design) {
    String wider = both(design.requiredWidth().high());
    if (!design.requiredWidth().isExact()) wider = design.requiredWidth().low() + " to " + wider;
    Optional<Quantity> closer =
        design.largestSpacing().map(i -> i.low()).filter(q -> q.number() > 0);
    return wider
        + closer
            .map(
                q ->
                    ", or joints no farther apart than "
                        + Quantity.figure(Math.floor(q.number() * 10) / 10)
                        + " "
                        + q.unit().symbol())
            .orElse("");
  }

  private static String both(Quantity width) {
    Unit other = width.unit() == Unit.INCH ? Unit.MILLIMETRE : Unit.INCH;
    return width
        + " ("
        + Quantity.figure(Math.round(width.in(other) * 100) / 100.0)
        + " "
        + other.symbol()
        + ")";
  }

  static List<String> steps(Calculation calculation) {
    List<String> out = new ArrayList<>();
    out.add(
        calculation.inputs().stream()
            .map(
                i ->
                    i.label()
                        + " "
                        + i.quantity()
                        + (i.assumed() ? " (assumed: " + i.basis() + ")" : ""))
            .collect(Collectors.joining("; ")));
    calculation.steps().forEach(s -> out.add(s.label() + ": " + s.formula() + " = " + s.result()));
    return out;
  }
}
