package clearbed.check.judge;

import clearbed.check.rules.Expectation;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.model.document.Origin;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Scope;
import clearbed.model.value.Value;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** Holds what the documents say of one attribute against what a rule accepts. */
public final class Judge {
  /** 400 psi is 2.758 MPa: a figure written as 2.76 MPa is the same figure. */
  private static final double ROUNDING = 0.004;

  private final Vocabulary vocabulary;

  public Judge(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  public Judgement judge(Rule rule, Entry entry) {
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty()) return unsaid(rule, entry);
    boolean emptyCell = entry.blanks().containsKey(rule.attribute());
    if (rule.emptyCellIsMissing()
        && emptyCell
        && values.stream().noneMatch(v -> v.scope() == Scope.ENTRY || v.scope() == Scope.PROJECT))
      return new Judgement.Missing();
    if (rule.everywhere()) values = everywhere(values, entry, rule.attribute());
    Expectation expected = rule.expectation();
    if (expected instanceof Expectation.AnyOf e)
      return each(rule, values, v -> accepts(e.accepted(), v));
    if (expected instanceof Expectation.NoneOf e)
      return each(rule, values, v -> e.refused().stream().noneMatch(r -> same(r, v)));
    if (expected instanceof Expectation.AllOf e) return allOf(rule, entry, e);
    if (expected instanceof Expectation.Limit e)
      return each(rule, values, v -> guarantees(v.content(), e.amount()));
    if (expected instanceof Expectation.Within e)
      return each(rule, values, v -> inside(v.content(), e.amount()));
    if (expected instanceof Expectation.AgreesWith e)
      return agrees(rule, values, entry.governing(e.attribute()));
    return values.stream().allMatch(v -> v.content() instanceof Content.Absent)
        ? new Judgement.Missing()
        : satisfied(values);
  }

  /** What governs, and what words on this very tile or on glass tile say elsewhere. */
  private static List<Value> everywhere(List<Value> governing, Entry entry, String attribute) {
    List<Value> all = new ArrayList<>(governing);
    Set<Value> known = new HashSet<>(governing);
    entry.values(attribute).stream()
        .filter(v -> v.specific() && !v.excluded() && !v.open() && known.add(v))
        .forEach(all::add);
    return all;
  }

  /**
   * Nothing is stated: open, refused, said another way, mistaken for something else, or missing.
   */
  private Judgement unsaid(Rule rule, Entry entry) {
    for (String other : rule.instead()) {
      List<Value> values = entry.governing(other);
      if (!values.isEmpty()) return satisfied(values);
    }
    for (String other : rule.instead()) {
      List<Value> unread = entry.unread(other);
      if (!unread.isEmpty()) return Judgement.Failed.unread(vocabulary.label(other), unread.get(0));
    }
    List<Value> all = entry.values(rule.attribute());
    Value open = all.stream().filter(Value::open).findFirst().orElse(null);
    if (open != null)
      return new Judgement.Undecided("left open: " + open.content().text(), open.origin());
    List<Value> excluded = all.stream().filter(Value::excluded).toList();
    boolean required =
        vocabulary
            .attribute(rule.attribute())
            .map(a -> a.kind() == Attribute.Kind.REQUIRED)
            .orElse(false);
    if (!excluded.isEmpty() && required) {
      Value v = excluded.get(0);
      return new Judgement.Failed(
          rule.kind(),
          FindingWords.of("", "not required: " + v.asWritten(), ""),
          FoundAt.at(v.origin()));
    }
    if (!excluded.isEmpty() && rule.expectation() instanceof Expectation.NoneOf)
      return satisfied(excluded);
    if (rule.mistaken() != null) {
      List<Value> mistaken = entry.governing(rule.mistaken().attribute());
      if (!mistaken.isEmpty()) {
        Value v = mistaken.get(0);
        return new Judgement.Failed(
            FindingKind.INADEQUATE,
            FindingWords.of(rule.mistaken().message(), v.asWritten(), ""),
            FoundAt.at(v.origin()));
      }
    }
    return new Judgement.Missing();
  }

  public static Judgement.Satisfied satisfied(List<Value> values) {
    return new Judgement.Satisfied(found(values), values.get(0).origin());
  }

  /** The distinct contents, in words. */
  public static String found(List<Value> values) {
    Set<String> texts =
        values.stream()
            .map(v -> v.content() instanceof Content.Required ? v.asWritten() : v.content().text())
            .collect(Collectors.toCollection(LinkedHashSet::new));
    return String.join("; ", texts);
  }

  private interface Test {
    boolean ok(Value value);
  }

  private Judgement each(Rule rule, List<Value> values, Test test) {
    List<Value> wrong =
        values.stream().filter(v -> !test.ok(v) && !addedToRight(v, values, test)).toList();
    if (wrong.isEmpty()) return satisfied(values.stream().filter(test::ok).toList());
    // A menu for all kinds of tile names some that are not for glass; the right one among them will
    // do unless the words
    // on glass itself, or one and the same clause, offer the wrong one as well.
    List<Value> right = values.stream().filter(test::ok).toList();
    boolean menu =
        !right.isEmpty()
            && wrong.stream()
                .noneMatch(
                    w ->
                        w.specific()
                            || right.stream().anyMatch(r -> r.origin().equals(w.origin())));
    // Of figures the worst governs.
    if (menu && values.stream().noneMatch(v -> v.content() instanceof Content.Amount))
      return satisfied(right);
    Value first = wrong.get(0);
    List<Origin> others = new ArrayList<>();
    wrong.stream().skip(1).map(Value::origin).distinct().forEach(others::add);
    return new Judgement.Failed(
        rule.kind(), FindingWords.of("", found(wrong), ""), new FoundAt(first.origin(), others));
  }

  /** "ISO 11600 F-25LM and EN 15651-3": a standard more does no harm where no choice is offered. */
  private boolean addedToRight(Value v, List<Value> values, Test test) {
    // What one paragraph asks of a membrane in two sentences it asks of the same one.
    boolean addsUp = v.attribute().startsWith("membrane.");
    return v.content() instanceof Content.Standard
        && !vocabulary.list("checks.choice").in(v.asWritten())
        && values.stream()
            .anyMatch(
                o ->
                    test.ok(o)
                        && (o.asWritten().equals(v.asWritten())
                            || addsUp && o.origin().place().equals(v.origin().place())
                            || o.origin().isBeside(v.origin())));
  }

  private boolean accepts(List<String> accepted, Value value) {
    return accepted.stream().anyMatch(a -> same(a, value));
  }

  private static boolean same(String wanted, Value value) {
    String said = value.content().text();
    if (said.equalsIgnoreCase(wanted)) return true;
    // A part of a standard in parts: EN 12004-1 for EN 12004.
    return value.content() instanceof Content.Standard
        && said.toUpperCase(Locale.ROOT).startsWith(wanted.toUpperCase(Locale.ROOT) + "-");
  }

  private Judgement allOf(Rule rule, Entry entry, Expectation.AllOf e) {
    List<Value> values =
        entry.values(rule.attribute()).stream().filter(v -> !v.excluded() && !v.open()).toList();
    List<String> missing =
        e.wanted().stream().filter(w -> values.stream().noneMatch(v -> same(w, v))).toList();
    if (missing.isEmpty()) return satisfied(values);
    return new Judgement.Failed(
        rule.kind(),
        FindingWords.of("", found(values) + "; not named: " + String.join(", ", missing), ""),
        FoundAt.at(values.get(0).origin()));
  }

  private Judgement agrees(Rule rule, List<Value> values, List<Value> others) {
    if (others.isEmpty()) return satisfied(values);
    boolean same =
        values.stream()
            .anyMatch(
                v -> others.stream().anyMatch(o -> o.content().text().equals(v.content().text())));
    if (same) return satisfied(values);
    return new Judgement.Failed(
        FindingKind.CONFLICTING,
        FindingWords.of("", found(values) + " against " + found(others), ""),
        new FoundAt(values.get(0).origin(), List.of(others.get(0).origin())));
  }

  /** True when whatever meets the stated figure also meets the wanted one. */
  public static boolean guarantees(Content content, Content.Amount wanted) {
    if (!(content instanceof Content.Amount said)) return false;
    Quantity limit = wanted.low();
    boolean low = wanted.bound() == Bound.ABOVE || wanted.bound() == Bound.AT_LEAST;
    Quantity worst = low ? said.low() : said.high();
    boolean open =
        low
            ? said.bound() == Bound.AT_MOST || said.bound() == Bound.BELOW
            : said.bound() == Bound.AT_LEAST || said.bound() == Bound.ABOVE;
    if (open) return false;
    int c = near(worst, limit) ? 0 : worst.compareTo(limit);
    return switch (wanted.bound()) {
      case ABOVE -> c > 0 || (c == 0 && said.bound() == Bound.ABOVE);
      case AT_LEAST -> c >= 0;
      case AT_MOST -> c <= 0;
      default -> c == 0;
    };
  }

  private static boolean inside(Content content, Content.Amount wanted) {
    if (!(content instanceof Content.Amount said)) return false;
    return (said.low().compareTo(wanted.low()) >= 0 || near(said.low(), wanted.low()))
        && (said.high().compareTo(wanted.high()) <= 0 || near(said.high(), wanted.high()));
  }

  /**
   * The same figure once converted and rounded to the digits people write; only between two units.
   */
  static boolean near(Quantity a, Quantity b) {
    if (a.unit() == b.unit() || a.unit().dimension() != b.unit().dimension()) return false;
    double x = b.in(a.unit());
    return Math.abs(a.number() - x) <= Math.abs(x) * ROUNDING;
  }
}
