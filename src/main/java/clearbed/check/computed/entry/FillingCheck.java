package clearbed.check.computed.entry;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.judge.TilePlace;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Entry;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How many days pass before a pool is filled. Three weeks are usual (a mosaic maker's pool guide;
 * BS 5385-4 as a tile association reports it). Less than one is wrong for any mortar, and less than
 * two behind glass for one of cement (common practice, no source); longer the makers of fast ones
 * may allow it.
 */
public final class FillingCheck implements Computation {
  private static final double LEAST_DAYS = 7;
  private static final double LEAST_DAYS_OF_CEMENT = 14;
  private static final double USUAL_DAYS = 21;
  private static final int DAYS_OF_A_WEEK = 7;

  private static final Set<String> RESINS = Set.of("epoxy", "urethane");

  private static final Pattern WEEKS =
      Pattern.compile("(\\d{1,2}|two|three|four|six) weeks?\\b", Pattern.CASE_INSENSITIVE);

  private static final Map<String, Integer> COUNTED =
      Map.of("two", 2, "three", 3, "four", 4, "six", 6);

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> values =
        entry.governing(rule.attribute()).stream().filter(v -> !v.excluded()).toList();
    if (values.isEmpty()) return new Judgement.Missing();
    Value soonest = null;
    double least = 0;
    // What every issue repeats is weighed once.
    Set<List<String>> weighed = new HashSet<>();
    for (Value value : values) {
      if (!weighed.add(List.of(value.asWritten(), around(value)))) continue;
      double days = days(value.asWritten(), rules.vocabulary());
      if (days == 0) days = days(around(value), rules.vocabulary());
      if (days == 0 || soonest != null && days >= least) continue;
      soonest = value;
      least = days;
    }
    if (soonest == null || least >= USUAL_DAYS) return Judge.satisfied(values);
    return new Judgement.Failed(
        least < (isOfResin(entry) ? LEAST_DAYS : LEAST_DAYS_OF_CEMENT)
            ? FindingKind.INADEQUATE
            : FindingKind.UNRESOLVED,
        FindingWords.of(
            "",
            days(least),
            days(USUAL_DAYS) + ", or what the makers of mortar and grout allow in writing"),
        FoundAt.at(soonest.origin()));
  }

  /** Resin hardens in days; cement behind glass, which lets no water out, does not. */
  private static boolean isOfResin(Entry entry) {
    return RESINS.containsAll(TilePlace.terms(entry, "mortar.chemistry"))
        && RESINS.containsAll(TilePlace.terms(entry, "grout.type"))
        && !entry.governing("mortar.chemistry").isEmpty();
  }

  private static String days(double days) {
    long whole = Math.round(days);
    return whole == 1 ? "1 day" : whole + " days";
  }

  /** What is said once of showers and pool stands in the paragraph of both. */
  private static String around(Value value) {
    boolean known = value.origin() != null && value.origin().text() != null;
    return known ? value.origin().text() : "";
  }

  /** The longest time in the sentences on filling; 0 where none is stated. */
  private static double days(String text, Vocabulary vocabulary) {
    double most = 0;
    for (Sentences.Sentence sentence : Sentences.of(text)) {
      if (!vocabulary.list("checks.fills").in(sentence.text())) continue;
      if (vocabulary.list("checks.fillsOther").in(sentence.text())) continue;
      for (Quantities.Found found : Quantities.find(sentence.text())) {
        boolean time =
            found.content() instanceof Content.Amount
                && found.unit() != null
                && found.unit().dimension() == Dimension.TIME;
        if (time) most = Math.max(most, ((Content.Amount) found.content()).high().in(Unit.DAY));
      }
      Matcher weeks = WEEKS.matcher(sentence.text());
      while (weeks.find()) most = Math.max(most, DAYS_OF_A_WEEK * count(weeks.group(1)));
    }
    return most;
  }

  private static int count(String words) {
    Integer word = COUNTED.get(words.toLowerCase(Locale.ROOT));
    return word == null ? Integer.parseInt(words) : word;
  }
}
