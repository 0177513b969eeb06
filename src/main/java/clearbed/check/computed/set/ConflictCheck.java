package clearbed.check.computed.set;

import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.Judge;
import clearbed.check.judge.SetComputation;
import clearbed.check.judge.Subjects;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Rule;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Scope;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.StandardInfo;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Two places that give one attribute of one entry different values. */
public final class ConflictCheck implements SetComputation {
  private static final double SAME = 0.02;

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    // One cause may hold for many entries: the same two places, the same words.
    Map<String, List<Entry>> tags = new LinkedHashMap<>();
    Map<String, ValuePair> pairs = new LinkedHashMap<>();
    for (Entry entry : scene.project().glass()) {
      for (Attribute attribute : scene.vocabulary().attributes()) {
        if (!attribute.single()) continue;
        ValuePair pair = pair(entry, attribute, scene.vocabulary());
        if (pair == null) continue;
        String key = attribute.id() + pair.a().get(0).origin() + pair.b().get(0).origin();
        pairs.putIfAbsent(key, pair);
        tags.computeIfAbsent(key, k -> new ArrayList<>()).add(entry);
      }
    }
    List<Finding> out = new ArrayList<>();
    pairs.forEach((key, pair) -> out.add(finding(rule, scene, pair, tags.get(key))));
    return out;
  }

  /** One of the two places is the entry's own. */
  private static boolean ofEntry(ValuePair pair) {
    return Stream.concat(pair.a().stream(), pair.b().stream())
        .anyMatch(value -> value.scope() == Scope.ENTRY);
  }

  private record ValuePair(Attribute attribute, List<Value> a, List<Value> b) {}

  private static ValuePair pair(Entry entry, Attribute attribute, Vocabulary vocabulary) {
    Map<String, List<Value>> places = new LinkedHashMap<>();
    for (Value v : entry.values(attribute.id())) {
      boolean compares =
          !v.excluded()
              && !v.open()
              && !(v.content() instanceof Content.Words)
              && !(v.content() instanceof Content.Absent)
              && !(v.content() instanceof Content.NotUnderstood)
              && !attribute.alongside().contains(v.content().text())
              && v.scope().compareTo(Scope.PROJECT) < 0;
      if (compares && (v.specific() || v.scope() == Scope.ENTRY))
        places.computeIfAbsent(place(v.origin()), p -> new ArrayList<>()).add(v);
    }
    // Issue after issue says the same of it.
    Map<List<Content>, List<Value>> different = new LinkedHashMap<>();
    for (List<Value> group : places.values())
      different.putIfAbsent(group.stream().map(Value::content).toList(), group);
    List<List<Value>> groups = List.copyOf(different.values());
    for (int i = 0; i < groups.size(); i++) {
      for (int j = i + 1; j < groups.size(); j++) {
        if (disagree(groups.get(i), groups.get(j), attribute, vocabulary))
          return new ValuePair(attribute, groups.get(i), groups.get(j));
      }
    }
    return null;
  }

  /**
   * A cell, or an article: alternatives listed under one article are a choice, not a contradiction.
   */
  private static String place(Origin o) {
    String article = o.heading() == null ? "" : o.heading().split(" ")[0];
    return o.document() + "|" + o.sheet() + "|" + (o.cell() == null ? article : o.cell());
  }

  private static boolean disagree(
      List<Value> a, List<Value> b, Attribute attribute, Vocabulary vocabulary) {
    for (Value x : a) {
      for (Value y : b) {
        boolean alike =
            attribute.alike().contains(x.content().text())
                && attribute.alike().contains(y.content().text());
        boolean refined = refines(x, y) || refines(y, x);
        if (alike || refined || agree(x.content(), y.content()) || ofOneSubject(x, y, vocabulary))
          return false;
      }
    }
    return true;
  }

  /** "At least 3 N/mm2" of the tile itself keeps "at least 2.8 N/mm2" of all of them. */
  private static boolean refines(Value own, Value common) {
    if (own.scope() != Scope.ENTRY || common.scope() == Scope.ENTRY) return false;
    if (!(own.content() instanceof Content.Amount a)) return false;
    if (!(common.content() instanceof Content.Amount b) || a.bound() != b.bound()) return false;
    if (a.low().unit().dimension() != b.low().unit().dimension()) return false;
    return switch (a.bound()) {
      case AT_LEAST, ABOVE -> a.low().compareTo(b.low()) >= 0;
      case AT_MOST, BELOW -> a.high().compareTo(b.high()) <= 0;
      default -> false;
    };
  }

  /** ISO 13007-1 and EN 12004 are one standard of two publishers. */
  private static boolean ofOneSubject(Value x, Value y, Vocabulary vocabulary) {
    Optional<String> a = subject(x, vocabulary);
    return a.isPresent() && a.equals(subject(y, vocabulary));
  }

  private static Optional<String> subject(Value v, Vocabulary vocabulary) {
    return v.content() instanceof Content.Standard s
            && (s.designation().startsWith("ISO ") || s.designation().startsWith("EN "))
        ? vocabulary.standards().of(s.designation()).map(StandardInfo::subject)
        : Optional.empty();
  }

  static boolean agree(Content x, Content y) {
    if (x instanceof Content.Amount a && y instanceof Content.Amount b) {
      if (a.low().unit().dimension() != b.low().unit().dimension()) return true;
      return amountsAgree(a, b);
    }
    if (x instanceof Content.Size a && y instanceof Content.Size b) return sizesAgree(a, b);
    return !x.getClass().equals(y.getClass()) || x.text().equalsIgnoreCase(y.text());
  }

  /** Equal figures, or an exact one inside the other's bounds. */
  private static boolean amountsAgree(Content.Amount a, Content.Amount b) {
    if (close(a.low(), b.low()) && close(a.high(), b.high())) return true;
    if (a.bound() != Bound.EXACT && b.bound() != Bound.EXACT) return false;
    if (a.bound() == Bound.EXACT && b.bound() == Bound.EXACT)
      return b.low().compareTo(a.low()) >= 0 && b.high().compareTo(a.high()) <= 0
          || a.low().compareTo(b.low()) >= 0 && a.high().compareTo(b.high()) <= 0;
    Content.Amount exact = a.bound() == Bound.EXACT ? a : b;
    Content.Amount bound = exact == a ? b : a;
    return switch (bound.bound()) {
      case AT_LEAST, ABOVE -> exact.low().compareTo(bound.low()) >= 0;
      default -> exact.high().compareTo(bound.high()) <= 0;
    };
  }

  private static boolean sizesAgree(Content.Size a, Content.Size b) {
    int n = Math.min(a.sides().size(), b.sides().size());
    if (n == 0) return true;
    List<Double> x = a.sides().stream().limit(n).map(q -> q.in(Unit.METRE)).sorted().toList();
    List<Double> y = b.sides().stream().limit(n).map(q -> q.in(Unit.METRE)).sorted().toList();
    for (int i = 0; i < n; i++) {
      // Nominal sizes in two unit systems differ by a few per cent: 12 in is sold as 300 mm.
      if (Math.abs(x.get(i) - y.get(i)) > 0.04 * Math.max(x.get(i), y.get(i))) return false;
    }
    return true;
  }

  private static boolean close(Quantity a, Quantity b) {
    double y = b.in(a.unit());
    double tolerance = a.unit() == b.unit() ? 1e-9 : SAME;
    return Math.abs(a.number() - y) <= tolerance * Math.max(Math.abs(a.number()), Math.abs(y));
  }

  private static Finding finding(Rule rule, Scene scene, ValuePair pair, List<Entry> entries) {
    Value a = pair.a().get(0);
    Value b = pair.b().get(0);
    List<String> tags = entries.stream().map(Entry::tag).toList();
    String found =
        Judge.found(pair.a())
            + " ("
            + a.origin().place()
            + ") against "
            + Judge.found(pair.b())
            + " ("
            + b.origin().place()
            + ")";
    String subject =
        tags.size() == 1 && ofEntry(pair)
            ? Subjects.tags(tags)
            // Which of the two comes first hangs on the names of their folders.
            : Stream.of(Judge.found(pair.a()), Judge.found(pair.b()))
                .sorted()
                .collect(Collectors.joining(" "));
    String message =
        pair.attribute().label()
            + " of {tag} is given twice: "
            + Judge.found(pair.a())
            + " in "
            + a.origin().place()
            + ", "
            + Judge.found(pair.b())
            + " in "
            + b.origin().place()
            + ".";
    return scene
        .writer()
        .write(
            rule,
            new FindingWriter.Case(
                subject,
                pair.attribute().id(),
                FindingKind.CONFLICTING,
                rule.level(),
                tags,
                new FoundAt(a.origin(), List.of(b.origin())),
                FindingWords.of(message, found, "one value")));
  }
}
