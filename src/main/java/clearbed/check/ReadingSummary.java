package clearbed.check;

import clearbed.model.Account;
import clearbed.model.Entry;
import clearbed.model.ReadingAccount;
import clearbed.recognise.Facts;
import clearbed.recognise.ScheduleRow;
import clearbed.recognise.Section;
import clearbed.recognise.Tags;
import clearbed.recognise.Vocabulary;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Joins the accounts of all documents, with what was not understood beside the checks. */
final class ReadingSummary {
  private static final int MOST_UNDECIDED = 200;

  private final Project project;
  private final Vocabulary vocabulary;
  private final UnreadWords unread;
  private final List<Rule> rules;

  ReadingSummary(Project project, Vocabulary vocabulary, UnreadWords unread, List<Rule> rules) {
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
    List<ReadingAccount.NotUnderstood> words = new ArrayList<>();
    for (Account.Unread w : unread.all()) {
      words.add(
          new ReadingAccount.NotUnderstood(
              w, unread.couldAnswer(w, rules), List.copyOf(unread.tags(w))));
    }
    List<ReadingAccount.Undecided> undecided = undecided();
    words.addAll(perhapsGlass(undecided));
    return new ReadingAccount(sentences, cells, tables, words, setAside, undecided);
  }

  /** Tags of schedules of which no document says what they are. */
  private List<ReadingAccount.Undecided> undecided() {
    Map<String, List<String>> open = new LinkedHashMap<>();
    for (Facts facts : project.facts()) {
      List<String> beside = titlesOnGlass(facts);
      for (ScheduleRow row : facts.rows()) {
        if (!row.decided())
          open.computeIfAbsent(Tags.key(row.tag()), key -> new ArrayList<>()).addAll(beside);
      }
    }
    List<ReadingAccount.Undecided> out = new ArrayList<>();
    for (Entry entry : project.entries()) {
      List<String> beside = open.get(Tags.key(entry.tag()));
      if (entry.glass() || beside == null || out.size() >= MOST_UNDECIDED) continue;
      out.add(
          new ReadingAccount.Undecided(
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
        .filter(vocabulary::assertsGlassTile)
        .distinct()
        .toList();
  }

  /** Of a tile that may be glass nobody knows what is missing: it might answer anything. */
  private List<ReadingAccount.NotUnderstood> perhapsGlass(
      List<ReadingAccount.Undecided> undecided) {
    List<String> checks = rules.stream().map(Rule::reportedAs).distinct().toList();
    return undecided.stream()
        .filter(u -> !u.speaksFor().isEmpty())
        .map(
            u ->
                new ReadingAccount.NotUnderstood(
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
