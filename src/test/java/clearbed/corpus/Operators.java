package clearbed.corpus;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Every operator, and the few ways in which most of them are made. */
final class Operators {
  private Operators() {}

  static List<Operator> all() {
    List<Operator> all = new ArrayList<>();
    all.addAll(TileOperators.all());
    all.addAll(MortarOperators.all());
    all.addAll(SubstrateOperators.all());
    all.addAll(GroutOperators.all());
    all.addAll(MovementOperators.all());
    all.addAll(ProcessOperators.all());
    all.addAll(SetOperators.all());
    return all;
  }

  /** Takes every statement of a label away. */
  static Operator delete(String id, String label, String check, String... aside) {
    return of(
        id,
        "delete every statement of " + label,
        set -> Defect.in(set).delete(label).expect(check).aside("unresolved").aside(aside));
  }

  /** Deletes every statement of a label; due for those entries that the check is for. */
  static Operator deleteAmong(
      String id,
      String what,
      String label,
      String check,
      Function<DraftSet, Set<String>> needing,
      String... aside) {
    return of(
        id,
        what,
        set -> Defect.in(set).delete(label).expectAmong(check, needing.apply(set)).aside(aside));
  }

  /** Changes words of statements of a label wherever the pattern finds them. */
  static Operator swap(
      String id, String label, String pattern, String words, String check, String... aside) {
    return of(
        id,
        "in " + label + " put '" + words + "' for " + pattern,
        set ->
            Defect.in(set)
                .edit(label, text -> text.replaceAll(pattern, words))
                .expect(check)
                .aside(aside));
  }

  /** Puts other words in place of the clause that makes a statement. */
  static Operator rewrite(String id, String label, String words, String check, String... aside) {
    return of(
        id,
        "for " + label + " write '" + words + "'",
        set -> Defect.in(set).rewrite(label, words).expect(check).aside(aside));
  }

  /** Changes the cell of the first glass entry that has one. */
  static Operator firstCell(
      String id, String label, String pattern, String words, String check, String... aside) {
    return of(
        id,
        "in the first cell of " + label + " put '" + words + "' for " + pattern,
        set ->
            Defect.in(set)
                .firstCell(label, cell -> true, text -> text.replaceAll(pattern, words))
                .expect(check)
                .aside(aside));
  }

  /** Any other edit. A set that it changes nothing in does not fit. */
  static Operator of(String id, String what, Function<DraftSet, Defect> edit) {
    return new Operator(id, what, set -> edit.apply(set).mutant());
  }

  /** An operator that fits some sets only. */
  static Operator when(Operator operator, java.util.function.Predicate<DraftSet> fits) {
    return new Operator(
        operator.id(),
        operator.what(),
        set -> fits.test(set) ? operator.on(set) : Optional.empty());
  }
}
