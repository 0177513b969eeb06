package clearbed.check;

import clearbed.base.Parallel;
import clearbed.check.computed.set.BidQuantities;
import clearbed.check.computed.set.BidTotals;
import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.SetComputation;
import clearbed.check.judge.SetText;
import clearbed.check.judge.Subjects;
import clearbed.check.rules.Expectation;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.RuleSets;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.report.Account;
import clearbed.model.report.Calculation;
import clearbed.model.report.Calculations;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.ReadingAccount;
import clearbed.model.report.Verdict;
import clearbed.model.value.Entry;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Runs every rule of a set over every glass entry and over the set as a whole. */
public final class Checker {

  /** All that came of it. */
  public record CheckedProject(
      List<Finding> findings,
      List<Verdict> verdicts,
      List<Calculation> calculations,
      ReadingAccount reading) {}

  private static final int FEW = 2_000;

  /** The rule under which words that were not understood are reported, after all others. */
  private static final String UNREAD = "unread";

  private final Vocabulary vocabulary;
  private final RuleSet rules;

  public Checker(Vocabulary vocabulary, RuleSet rules) {
    this.vocabulary = vocabulary;
    this.rules = rules;
  }

  /** Reads rule sets whose rules may ask for everything that is computed here. */
  public static RuleSets ruleSets(Vocabulary vocabulary) {
    return new RuleSets(vocabulary, Computations.names());
  }

  public CheckedProject check(Project project, List<Document> documents) {
    List<Finding> findings = new ArrayList<>();
    VerdictTable verdicts = new VerdictTable(project.glass());
    Calculations calculations = new Calculations();
    FindingWriter writer = new FindingWriter();
    SetComputation.Scene scene =
        new SetComputation.Scene(project, documents, vocabulary, writer, new SetText(project));
    List<Rule> on = rules.rules().stream().filter(rule -> !rule.off()).toList();
    UnreadWords words = new UnreadWords(project, vocabulary, documents);
    List<ReadingAccount.WholeSet> wholeSet = new ArrayList<>();
    UnreadFindings unanswered = new UnreadFindings(vocabulary);
    boolean few = project.glass().size() <= FEW;
    Consumer<OfRule> join =
        one -> {
          findings.addAll(one.findings);
          verdicts.addAll(one.verdicts);
          calculations.addAll(one.calculations);
          unanswered.addAll(one.unanswered);
          wholeSet.addAll(one.wholeSet);
        };
    Map<String, OfRule> first = new HashMap<>();
    for (Rule rule : on)
      if (NamedAlone.FOUND_BY.contains(rule.id()))
        first.put(rule.id(), run(rule, scene, words, NamedAlone.NONE));
    NamedAlone alone =
        NamedAlone.in(project, first.values().stream().flatMap(r -> r.findings.stream()).toList());
    Function<Rule, OfRule> each =
        rule ->
            first.containsKey(rule.id()) ? first.get(rule.id()) : run(rule, scene, words, alone);
    // Of a long schedule the verdicts of several rules would take much memory.
    if (few) Parallel.map(on, each).forEach(join);
    else on.forEach(rule -> join.accept(each.apply(rule)));
    ReadingAccount reading = new ReadingSummary(project, vocabulary, words, on, wholeSet).account();
    for (Rule rule : on) {
      if (!rule.id().equals(UNREAD)) continue;
      List<Finding> unread = unanswered.findings(rule, writer, reading);
      List<Verdict> of = new ArrayList<>();
      setVerdicts(of, rule, project, unread, words);
      verdicts.addAll(of);
      findings.addAll(unread);
    }
    List<Finding> all = new ArrayList<>();
    for (Finding finding : unique(findings)) all.add(suppressed(finding));
    all.sort(
        Comparator.comparing(Finding::level)
            .thenComparing(Finding::check)
            .thenComparing(f -> String.join(",", f.tags()))
            .thenComparing(Finding::id));
    boolean wanted = BidQuantities.wanted(project);
    Iterator<Integer> counts =
        Parallel.mapAhead(project.glass(), e -> quantities(e, project, wanted).size()).iterator();
    for (Entry entry : project.glass()) {
      calculations.add(entry.tag(), counts.next(), () -> quantities(entry, project, wanted));
    }
    if (wanted && few) {
      for (Calculation total : new BidTotals(project, rules).calculations())
        calculations.add(total.tag(), 1, () -> List.of(total));
    }
    verdicts.show(shown(all, project.glass()));
    return new CheckedProject(all, verdicts, calculations, reading);
  }

  /** What came of one rule. */
  private final class OfRule {
    final UnreadFindings unanswered = new UnreadFindings(vocabulary);
    final List<Finding> findings = new ArrayList<>();
    final List<Verdict> verdicts = new ArrayList<>();
    final Calculations calculations = new Calculations();
    final List<ReadingAccount.WholeSet> wholeSet = new ArrayList<>(1);
  }

  private OfRule run(Rule rule, SetComputation.Scene scene, UnreadWords unread, NamedAlone alone) {
    OfRule out = new OfRule();
    if (rule.id().equals(UNREAD)) return out;
    if (rule.expectation() instanceof Expectation.Computed c
        && Computations.ofTheSet(c.name()) != null) {
      out.findings.addAll(Computations.ofTheSet(c.name()).find(rule, scene));
      setVerdicts(out.verdicts, rule, scene.project(), out.findings, unread);
      if (rule.ofTheSet() && !scene.project().glass().isEmpty())
        out.wholeSet.add(wholeSet(rule, out.findings.size(), unread.ofTheSet(rule).size()));
    } else {
      new RuleRun(rule, scene.project(), vocabulary, rules, scene.writer(), unread, alone)
          .run(out.findings, out.verdicts, out.calculations, out.unanswered);
    }
    return out;
  }

  private List<Calculation> quantities(Entry entry, Project project, boolean wanted) {
    return new BidQuantities(entry, project, rules)
        .calculation(wanted)
        .map(List::of)
        .orElse(List.of());
  }

  private static ReadingAccount.WholeSet wholeSet(Rule rule, int found, int unread) {
    Verdict.Outcome outcome =
        found > 0
            ? Verdict.Outcome.FINDING
            : unread > 0 ? Verdict.Outcome.UNREAD : Verdict.Outcome.SATISFIED;
    return new ReadingAccount.WholeSet(rule.id(), outcome, found, unread);
  }

  private static void setVerdicts(
      List<Verdict> out, Rule rule, Project project, List<Finding> found, UnreadWords unread) {
    Map<String, Finding> first = new HashMap<>();
    for (Finding f : found) f.tags().forEach(tag -> first.putIfAbsent(tag, f));
    for (Entry entry : project.glass()) {
      Finding finding = first.get(entry.tag());
      Account.Unread words = finding == null ? unread.ofTheSet(rule, entry) : null;
      out.add(
          finding != null
              ? verdict(rule, entry, Verdict.Outcome.FINDING, finding.found(), finding.origin())
              : words != null
                  ? verdict(rule, entry, Verdict.Outcome.UNREAD, words.text(), words.origin())
                  : verdict(rule, entry, Verdict.Outcome.SATISFIED, "", null));
    }
  }

  private static Verdict verdict(
      Rule rule, Entry entry, Verdict.Outcome outcome, String found, Origin origin) {
    return new Verdict(rule.id(), entry.tag(), outcome, found, origin);
  }

  /** Ids stay unique: findings that would share one are told apart by what they say. */
  private static List<Finding> unique(List<Finding> findings) {
    Map<String, Long> shared =
        findings.stream().collect(Collectors.groupingBy(Finding::id, Collectors.counting()));
    Map<String, Integer> seen = new HashMap<>();
    List<Finding> out = new ArrayList<>();
    for (Finding f : findings) {
      String id = shared.get(f.id()) == 1 ? f.id() : f.id() + "/" + print(f);
      int n = seen.merge(id, 1, Integer::sum);
      out.add(f.withId(n == 1 ? id : id + "/" + n));
    }
    return out;
  }

  /** Of what stays when its document is moved, renumbered or exported. */
  private static String print(Finding f) {
    // Where a section should have said something stands whatever stands there today.
    String place = f.origin().text() == null ? "" : f.origin().text();
    String words = f.kind() == FindingKind.MISSING && f.found().isEmpty() ? f.expected() : place;
    String all = f.found() + "|" + words + "|" + Subjects.document(f.origin());
    String plain = all.replaceAll("[^\\p{L}\\p{N}]+", " ").strip().toLowerCase(Locale.ROOT);
    return Integer.toHexString(plain.hashCode());
  }

  private Finding suppressed(Finding finding) {
    for (RuleSet.Suppression s : rules.suppressions()) {
      if (s.hits(finding)) return finding.withSuppressed(s.reason() + " (" + s.file() + ")");
    }
    return finding;
  }

  /** The check it is reported under, and the one that is part of that and found it. */
  private List<String> checks(Finding f) {
    List<String> out = new ArrayList<>(List.of(f.check()));
    rules.rules().stream()
        .filter(r -> r.partOf().equals(f.check()) && r.attribute().equals(f.attribute()))
        .forEach(r -> out.add(r.id()));
    return out;
  }

  /** Of each check the entries, by ordinal, whose findings are shown. */
  private Map<String, BitSet> shown(List<Finding> findings, List<Entry> entries) {
    Map<String, List<Integer>> ordinals = new HashMap<>();
    for (int i = 0; i < entries.size(); i++) {
      ordinals.computeIfAbsent(entries.get(i).tag(), tag -> new ArrayList<>(1)).add(i);
    }
    Map<String, BitSet> shown = new HashMap<>();
    for (Finding f : findings) {
      if (!f.suppressed().isEmpty()) continue;
      for (String check : checks(f)) {
        BitSet of = shown.computeIfAbsent(check, c -> new BitSet());
        for (String tag : f.tags()) ordinals.getOrDefault(tag, List.of()).forEach(of::set);
      }
    }
    return shown;
  }
}
