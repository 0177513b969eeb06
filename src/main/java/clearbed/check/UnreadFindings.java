package clearbed.check;

import clearbed.base.DisplayText;
import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.Subjects;
import clearbed.check.judge.TagWords;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Rule;
import clearbed.model.document.Origin;
import clearbed.model.report.Account;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.ReadingAccount;
import clearbed.model.value.Entry;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * One finding for each table or article whose words were not understood and might answer a check
 * that nothing else answers.
 */
final class UnreadFindings {
  private static final int QUOTED = 3;
  private static final int LONGEST = 90;

  private record ArticlePlace(String document, String article) {}

  /** What is asked of one table or article. */
  private static final class AskedThere {
    final Set<Account.Unread> words = new LinkedHashSet<>();
    final Set<String> labels = new LinkedHashSet<>();
    final Set<String> tags = new LinkedHashSet<>();
  }

  private final Map<ArticlePlace, AskedThere> places = new LinkedHashMap<>();
  private final Vocabulary vocabulary;

  UnreadFindings(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  void add(Rule rule, Entry entry, List<Account.Unread> words) {
    for (Account.Unread w : words) {
      AskedThere asked =
          places.computeIfAbsent(
              new ArticlePlace(w.origin().document(), w.article()), place -> new AskedThere());
      asked.words.add(w);
      asked.labels.add(
          rule.attribute().isEmpty()
              ? rule.title()
              : vocabulary.label(rule.attribute()).toLowerCase(java.util.Locale.ROOT));
      asked.tags.add(entry.tag());
    }
  }

  void addAll(UnreadFindings other) {
    other.places.forEach(
        (place, asked) -> {
          AskedThere mine = places.computeIfAbsent(place, p -> new AskedThere());
          mine.words.addAll(asked.words);
          mine.labels.addAll(asked.labels);
          mine.tags.addAll(asked.tags);
        });
  }

  /**
   * @param rule that says how they are reported
   */
  List<Finding> findings(Rule rule, FindingWriter writer, ReadingAccount reading) {
    List<Finding> out = new ArrayList<>();
    Map<String, List<ReadingAccount.UndecidedTile>> perhaps = new LinkedHashMap<>();
    for (ReadingAccount.UndecidedTile u : reading.undecided()) {
      if (!u.speaksFor().isEmpty())
        perhaps.computeIfAbsent(u.origin().document(), d -> new ArrayList<>()).add(u);
    }
    perhaps.values().forEach(tags -> out.add(perhapsGlass(rule, writer, tags)));
    places.forEach((place, asked) -> out.add(finding(rule, writer, place, asked)));
    return out;
  }

  /** Tags of which nothing says what they are, below a title that speaks of glass tile. */
  private static Finding perhapsGlass(
      Rule rule, FindingWriter writer, List<ReadingAccount.UndecidedTile> undecided) {
    List<String> tags = undecided.stream().map(ReadingAccount.UndecidedTile::tag).toList();
    Origin first = undecided.get(0).origin();
    String title = undecided.get(0).speaksFor().get(0);
    return writer.write(
        rule,
        new FindingWriter.Case(
            Subjects.document(first) + " glass or not",
            "",
            FindingKind.UNREAD,
            rule.level(),
            tags,
            new FoundAt(
                first,
                undecided.stream().skip(1).map(ReadingAccount.UndecidedTile::origin).toList()),
            new FindingWords(
                "Nothing says whether {tag} is glass tile, in a document titled '"
                    + title
                    + "'. It was not checked.",
                TagWords.of(tags),
                "a material for each tag",
                List.of(),
                "Is {tag} glass tile?")));
  }

  private static Finding finding(
      Rule rule, FindingWriter writer, ArticlePlace place, AskedThere asked) {
    List<Account.Unread> words = List.copyOf(asked.words);
    String found = quoted(words);
    String about = some(asked.labels);
    List<Origin> places = words.stream().map(Account.Unread::origin).toList();
    return writer.write(
        rule,
        new FindingWriter.Case(
            Subjects.document(places.get(0)) + " " + place.article(),
            "",
            FindingKind.UNREAD,
            rule.level(),
            List.copyOf(asked.tags),
            new FoundAt(places.get(0), places.subList(1, places.size())),
            new FindingWords(
                rule.wording().missing().replace("{found}", found),
                found,
                about,
                List.of(),
                rule.wording().question())));
  }

  private static String quoted(List<Account.Unread> words) {
    String some =
        words.stream().limit(QUOTED).map(UnreadFindings::quoted).collect(Collectors.joining("; "));
    return words.size() > QUOTED ? some + "; and " + (words.size() - QUOTED) + " more" : some;
  }

  private static String quoted(Account.Unread words) {
    if (words.samples().isEmpty())
      return "'"
          + DisplayText.shortened(words.text(), LONGEST)
          + "' ("
          + words.origin().place()
          + ")";
    String under =
        words.text().isEmpty() ? "" : " under " + DisplayText.shortened(words.text(), LONGEST);
    return "'"
        + DisplayText.shortened(String.join("', '", words.samples()), LONGEST)
        + "'"
        + under
        + " ("
        + words.origin().place()
        + ")";
  }

  private static String some(Collection<String> labels) {
    List<String> all = List.copyOf(labels);
    if (all.size() <= 4) return String.join(", ", all);
    return String.join(", ", all.subList(0, 4)) + " or " + (all.size() - 4) + " other things";
  }
}
