package clearbed.corpus;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.Predicate;

/**
 * Every operator on every set it fits, checked and scored; tuned, held-back and unseen ones apart.
 *
 * @param checker what is measured
 * @param sets which sets take part
 * @param operators which operators take part
 * @param log gets a line for every defect missed and every false alarm
 */
record Trial(Checker checker, List<DraftSet> sets, List<Operator> operators, Consumer<String> log) {

  /**
   * The figures.
   *
   * @param tuned sets and operators that rules and vocabulary may be improved on
   * @param heldBack those where the set, the operator, or both are held back
   * @param unseen every operator on the sets that were written apart from the tool
   * @param entries wrong or missing glass entries on clean sets, a line each
   */
  record Result(Tally tuned, Tally heldBack, Tally unseen, int mutants, List<String> entries) {}

  Result run() throws IOException {
    Tally tuned = new Tally();
    Tally heldBack = new Tally();
    Tally unseen = new Tally();
    List<String> entries = new ArrayList<>();
    int mutants = 0;
    for (DraftSet set : sets) {
      var json = checked(set);
      List<Reported> clean = Reported.of(json);
      entries.addAll(Entries.wrong(set, json));
      Tally own = set.unseen() ? unseen : set.heldBack() ? heldBack : tuned;
      own.scoreClean(clean);
      report(set.name() + ", clean", clean, finding -> finding.loud());
      Set<String> keys = new LinkedHashSet<>();
      clean.forEach(finding -> keys.addAll(finding.keys()));
      for (Operator operator : operators) {
        Optional<Mutant> mutant = operator.on(set);
        if (mutant.isEmpty()) continue;
        boolean apart = !set.unseen() && operator.heldBack();
        score(mutant.get(), operator, apart ? heldBack : own, keys);
        mutants++;
      }
    }
    return new Result(tuned, heldBack, unseen, mutants, entries);
  }

  private void score(Mutant mutant, Operator operator, Tally tally, Set<String> onCleanSet)
      throws IOException {
    List<Reported> reported = Reported.of(checked(mutant.set()));
    tally.score(mutant, reported, onCleanSet);
    String where = mutant.set().name() + ", " + operator.id();
    for (Expected due : mutant.expected()) {
      Tally one = new Tally();
      one.score(new Mutant(mutant.set(), List.of(due), Set.of(), Set.of()), reported, onCleanSet);
      if (one.line(due.check()).found() == 0) {
        log.accept("missed: " + where + ": " + due.check() + " " + new TreeSet<>(due.tags()));
      }
    }
    report(
        where,
        reported,
        finding -> finding.loud() && !Tally.warranted(finding, mutant, onCleanSet));
  }

  private void report(String where, List<Reported> found, Predicate<Reported> alarm) {
    found.stream()
        .filter(alarm)
        .forEach(
            finding ->
                log.accept(
                    "false alarm: "
                        + where
                        + ": "
                        + finding.check()
                        + " "
                        + new TreeSet<>(finding.tags())
                        + " "
                        + finding.message()));
  }

  private com.fasterxml.jackson.databind.JsonNode checked(DraftSet set) throws IOException {
    Path folder = Files.createTempDirectory("clearbed-corpus");
    try {
      set.write(folder);
      return checker.check(folder, set.rules());
    } finally {
      Folders.delete(folder);
    }
  }
}
