package clearbed.cli;

import clearbed.cache.ResultCache;
import clearbed.check.Checker;
import clearbed.check.RuleSet;
import clearbed.model.Report;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Works out what comes of a batch, or recalls it. */
final class Result {
  private Result() {}

  /**
   * Recalls it when all documents say what they said before under the same rules.
   *
   * @param results may be null
   * @param whole true when the values of all entries are wanted, which are not kept
   */
  static ResultCache.Outcome of(
      Reading reading,
      Rulebook rulebook,
      ResultCache results,
      LocalDate day,
      Instant started,
      boolean whole) {
    Report.Run run = run(rulebook.rules(), day, started);
    String key = results == null ? null : results.key(reading.known(), run);
    ResultCache.Outcome before = key == null || whole ? null : results.recalled(key, run);
    if (before != null) return before;
    Report report = report(reading.understood(), rulebook, run);
    return key == null ? new ResultCache.Outcome(report, null) : results.keep(key, report);
  }

  private static Report.Run run(RuleSet rules, LocalDate day, Instant started) {
    return new Report.Run(
        "clearbed",
        Version.number(),
        rules.name(),
        rules.digest(),
        started.toString(),
        day.toString(),
        rules.layers(),
        rules.facts().stream().map(f -> f.words()).toList());
  }

  /** The project is let go with the end of it: of a long schedule it takes much memory. */
  private static Report report(Understanding understood, Rulebook rulebook, Report.Run run) {
    Checker.Outcome outcome =
        new Checker(rulebook.vocabulary(), rulebook.rules())
            .check(understood.project(), understood.documents());
    return new Report(
        run,
        understood.summaries(),
        understood.project().entries(),
        outcome.findings(),
        outcome.verdicts(),
        outcome.calculations(),
        checks(rulebook.rules()),
        outcome.reading());
  }

  private static List<Report.CheckInfo> checks(RuleSet rules) {
    List<Report.CheckInfo> checks = new ArrayList<>();
    rules
        .rules()
        .forEach(
            r ->
                checks.add(
                    new Report.CheckInfo(
                        r.id(),
                        r.title(),
                        r.attribute(),
                        r.level(),
                        r.sourceWithMark(),
                        !r.off())));
    return checks;
  }
}
