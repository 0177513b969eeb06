package clearbed.check.computed.entry;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Whether a wet floor falls enough to its drain. A slope without a figure is not judged; of several
 * the least is. The figures: 2 % in American plumbing codes on shower floors, 1 in 80 as the least
 * of British guidance (both from memory).
 */
public final class SlopeCheck implements Computation {
  private static final Pattern RATIO = Pattern.compile("(?<![\\d:])1 ?(?::|in) ?(\\d{2,3})(?!\\d)");

  /** Two per cent as written "1:50" and "1/4 in per foot" with their rounding. */
  private static final double ROUNDING = 0.98;

  private final double least;

  /**
   * @param least the least fall, as a share of the length: 0.02 for 2 %
   */
  public SlopeCheck(double least) {
    this.least = least;
  }

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> values =
        entry.governing(rule.attribute()).stream().filter(v -> !v.excluded()).toList();
    if (values.isEmpty()) return new Judgement.Missing();
    for (Value value : values) {
      OptionalDouble slope = slope(value.asWritten(), rules.vocabulary());
      if (slope.isEmpty() || slope.getAsDouble() >= least * ROUNDING) continue;
      return new Judgement.Failed(
          FindingKind.INADEQUATE,
          FindingWords.of("", percent(slope.getAsDouble()), percent(least) + " or more"),
          FoundAt.at(value.origin()));
    }
    return Judge.satisfied(values);
  }

  private static String percent(double share) {
    return Quantity.figure(Math.round(share * 1e4) / 100.0) + " %";
  }

  /** The least slope in the words, as a share of the length; empty where no figure is. */
  static OptionalDouble slope(String text, Vocabulary vocabulary) {
    double least = Double.MAX_VALUE;
    for (Quantities.Found found : Quantities.find(text)) {
      if (!(found.content() instanceof Content.Amount amount)) continue;
      if (found.unit() == Unit.PERCENT) least = Math.min(least, amount.low().in(Unit.ONE));
      if (found.unit() == null || found.unit().dimension() != Dimension.LENGTH) continue;
      if (vocabulary.list("checks.perFoot").startsAt(text, found.end()))
        least = Math.min(least, amount.low().in(Unit.FOOT));
      else if (vocabulary.list("checks.perMetre").startsAt(text, found.end()))
        least = Math.min(least, amount.low().in(Unit.METRE));
    }
    Matcher ratio = RATIO.matcher(text);
    while (ratio.find()) least = Math.min(least, 1 / Double.parseDouble(ratio.group(1)));
    return least == Double.MAX_VALUE ? OptionalDouble.empty() : OptionalDouble.of(least);
  }
}
