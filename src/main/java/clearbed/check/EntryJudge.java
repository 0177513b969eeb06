package clearbed.check;

import clearbed.check.judge.Judge;
import clearbed.check.rules.Applicability;
import clearbed.check.rules.Expectation;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.document.Origin;
import clearbed.model.report.Account;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/** What a rule says of one entry, by what was understood of the set and what was not. */
final class EntryJudge {
  private final Rule rule;
  private final Project project;
  private final Vocabulary vocabulary;
  private final RuleSet rules;
  private final UnreadWords unread;
  private final OtherTile others;
  private final Applicability applicability;
  private final Judge judge;

  EntryJudge(
      Rule rule,
      Project project,
      Vocabulary vocabulary,
      RuleSet rules,
      UnreadWords unread,
      OtherTile others) {
    this.rule = rule;
    this.project = project;
    this.vocabulary = vocabulary;
    this.rules = rules;
    this.unread = unread;
    this.others = others;
    this.applicability = new Applicability(vocabulary);
    this.judge = new Judge(vocabulary);
  }

  /** "Not stated" is said only where nothing that was not understood could state it. */
  Judgement of(Entry entry) {
    Judgement judgement = ofWhatWasRead(entry);
    boolean open = judgement instanceof Judgement.Missing || isCallAlone(judgement, entry);
    if (!open && !statedInWordsAlone(judgement, entry)) return judgement;
    if (rule.emptyCellIsMissing() && entry.blanks().containsKey(rule.attribute())) return judgement;
    List<Account.Unread> words = unread.thatMightAnswer(rule, entry);
    return words.isEmpty() ? judgement : new Judgement.NotRead(words);
  }

  /** Satisfied by a cell whose words mean nothing that is known: they were kept, not read. */
  private boolean statedInWordsAlone(Judgement judgement, Entry entry) {
    if (!(judgement instanceof Judgement.Satisfied) || rule.attribute().isEmpty()) return false;
    Attribute attribute = vocabulary.attribute(rule.attribute()).orElse(null);
    if (attribute == null || attribute.kind() == Attribute.Kind.WORDS) return false;
    return inWordsAlone(entry, words -> true);
  }

  /** Wrong by a code alone, "PS", of which nobody knows what it stands for. */
  private boolean isCallAlone(Judgement judgement, Entry entry) {
    if (!(judgement instanceof Judgement.Failed) || rule.attribute().isEmpty()) return false;
    return inWordsAlone(entry, unread::isStray);
  }

  /** True where all that is said of what the rule asks for was kept in its words. */
  private boolean inWordsAlone(Entry entry, Predicate<String> such) {
    List<Value> values = entry.governing(rule.attribute());
    return !values.isEmpty()
        && values.stream()
            .allMatch(v -> v.content() instanceof Content.Words w && such.test(w.text()));
  }

  private Judgement ofWhatWasRead(Entry entry) {
    Applicability.Answer answer = applicability.of(rule, entry);
    if (answer.applies() == null) return new Judgement.Undecided(answer.why(), null);
    if (!answer.applies()) return new Judgement.NotApplicable(answer.why());
    if (!others.concerns(rule, entry))
      return new Judgement.NotApplicable("of no other glass tile is it asked");
    Judgement judgement = known(entry);
    List<Value> unread = rule.attribute().isEmpty() ? List.of() : entry.unread(rule.attribute());
    // What is wrong is wrong, whatever else stands there; nothing else can be said for sure.
    return unread.isEmpty() || judgement instanceof Judgement.Failed
        ? judgement
        : Judgement.Failed.unread(vocabulary.label(rule.attribute()), unread.get(0));
  }

  /** By what was understood. */
  private Judgement known(Entry entry) {
    if (rule.expectation() instanceof Expectation.Computed c)
      return Computations.ofAnEntry(c.name()).judge(rule, entry, project, rules);
    Judgement judgement = judge.judge(rule, entry);
    if (judgement instanceof Judgement.Failed f && f.kind() == FindingKind.INCOMPATIBLE) {
      return withOtherSide(f, entry);
    }
    if (judgement instanceof Judgement.Missing && rule.silentWhenMissing()) {
      return new Judgement.Undecided(
          "depends on "
              + vocabulary.label(rule.attribute()).toLowerCase(Locale.ROOT)
              + ", which is not stated",
          null);
    }
    return judgement;
  }

  /** What does not go together stands in two places: the value, and what makes the rule apply. */
  private Judgement withOtherSide(Judgement.Failed f, Entry entry) {
    Set<Origin> places = new LinkedHashSet<>(f.at().others());
    for (Map<String, List<String>> way : rule.when()) {
      for (String attribute : way.keySet()) {
        entry.governing(attribute).stream()
            .map(v -> v.origin())
            .filter(o -> !o.equals(f.at().origin()))
            .forEach(places::add);
      }
    }
    return new Judgement.Failed(
        f.kind(),
        f.words(),
        new FoundAt(f.at().origin(), new ArrayList<>(places)),
        f.calculations());
  }
}
