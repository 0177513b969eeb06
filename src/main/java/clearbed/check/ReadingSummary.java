package clearbed.check;

import clearbed.check.rules.Rule;
import clearbed.model.report.Account;
import clearbed.model.report.ReadingAccount;
import clearbed.model.value.Entry;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.part.GlassWords;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Joins the accounts of all documents, with what was not understood beside the checks. */
final class ReadingSummary {
  private static final int MOST_UNDECIDED = 200;

  private final Project project;
  private final Vocabulary vocabulary;
  private final UnreadWords unread;
  private final List<Rule> rules;
  private final List<ReadingAccount.WholeSet> wholeSet;

  /**
   * @param wholeSet how the checks of the whole set came out
   */
  ReadingSummary(
      Project project,
      Vocabulary vocabulary,
      UnreadWords unread,
      List<Rule> rules,
      List<ReadingAccount.WholeSet> wholeSet) {
    this.wholeSet = wholeSet;
    this.project = project;
    this.vocabulary = vocabulary;
    this.unread = unread;
    this.rules = rules;
  }

  ReadingAccount account() {
    Account.Tally sentences = Account.Tally.NONE;
    Account.Tally cells = Account.Tally.NONE;
    List<Account.TableAccount> tables = new ArrayList<>();
    List<Account.SetAside> setAside = new ArrayList<>();
    for (Facts facts : project.facts()) {
      Account account = facts.account();
      sentences = sentences.plus(account.sentences());
      cells = cells.plus(account.cells());
      tables.addAll(account.tables());
      setAside.addAll(account.setAside());
    }
    List<ReadingAccount.WordsNotUnderstood> words = new ArrayList<>();
    for (Account.Unread w : unread.all()) {
      words.add(
          new ReadingAccount.WordsNotUnderstood(
              w, unread.couldAnswer(w, rules), List.copyOf(unread.tags(w))));
    }
    List<ReadingAccount.UndecidedTile> undecided = undecided();
    words.addAll(ofTheSet());
    words.addAll(perhapsGlass(undecided));
    return new ReadingAccount(
        sentences,
        cells,
        tables,
        words,
        setAside,
        undecided,
        List.copyOf(wholeSet),
        vocabulary.taught().forReaders());
  }

  /** References and designations that a check of the whole set could make nothing of. */
  private List<ReadingAccount.WordsNotUnderstood> ofTheSet() {
    Map<Account.Unread, List<String>> checks = new LinkedHashMap<>();
    Map<String, List<Account.Unread>> byPlace =
        unread.all().stream().collect(Collectors.groupingBy(u -> u.origin().place()));
    for (Rule rule : rules) {
      for (Account.Unread w : unread.ofTheSet(rule)) {
        if (!told(w, rule, byPlace.getOrDefault(w.origin().place(), List.of())))
          checks.computeIfAbsent(w, any -> new ArrayList<>()).add(rule.reportedAs());
      }
    }
    List<ReadingAccount.WordsNotUnderstood> out = new ArrayList<>();
    checks.forEach(
        (w, ids) ->
            out.add(new ReadingAccount.WordsNotUnderstood(w, ids, List.copyOf(unread.tags(w)))));
    return out;
  }

  /** True when the sentence that they stand in is in the account, and names the check. */
  private boolean told(Account.Unread words, Rule rule, List<Account.Unread> there) {
    return there.stream()
        .filter(u -> u.text().contains(words.text()))
        .anyMatch(u -> u.equals(words) || unread.couldAnswer(u, rules).contains(rule.reportedAs()));
  }

  /** Tags of schedules of which no document says what they are. */
  private List<ReadingAccount.UndecidedTile> undecided() {
    Map<String, List<String>> open = new LinkedHashMap<>();
    for (Facts facts : project.facts()) {
      List<String> beside = titlesOnGlass(facts);
      for (ScheduleRow row : facts.rows()) {
        if (!row.decided())
          open.computeIfAbsent(Tags.key(row.tag()), key -> new ArrayList<>()).addAll(beside);
      }
    }
    List<ReadingAccount.UndecidedTile> out = new ArrayList<>();
    for (Entry entry : project.entries()) {
      List<String> beside = open.get(Tags.key(entry.tag()));
      if (entry.glass() || beside == null || out.size() >= MOST_UNDECIDED) continue;
      out.add(
          new ReadingAccount.UndecidedTile(
              entry.tag(),
              entry.origin(),
              beside.stream().distinct().toList(),
              List.of(entry.evidence())));
    }
    return out;
  }

  /** A row below the title of a section on glass tile may well be one. */
  private List<String> titlesOnGlass(Facts facts) {
    return facts.sections().stream()
        .map(Section::title)
        .filter(new GlassWords(vocabulary)::areIn)
        .distinct()
        .toList();
  }

  /** Of a tile that may be glass nobody knows what is missing: it might answer anything. */
  private List<ReadingAccount.WordsNotUnderstood> perhapsGlass(
      List<ReadingAccount.UndecidedTile> undecided) {
    List<String> checks = rules.stream().map(Rule::reportedAs).distinct().toList();
    return undecided.stream()
        .filter(u -> !u.speaksFor().isEmpty())
        .map(
            u ->
                new ReadingAccount.WordsNotUnderstood(
                    new Account.Unread(
                        u.origin(),
                        u.origin().document(),
                        u.tag(),
                        List.of(),
                        List.of(),
                        List.of(u.tag()),
                        List.of()),
                    checks,
                    List.of(u.tag())))
        .toList();
  }
}
