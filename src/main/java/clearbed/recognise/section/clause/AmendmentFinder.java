package clearbed.recognise.section.clause;

import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Needed;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads clauses that change others: "delete X and substitute Y", "change from X to Y", "item 3 is
 * now Y". The forms stand in the vocabulary, with the groups {@code subject}, {@code old}, {@code
 * now} and {@code gone}.
 */
public final class AmendmentFinder {
  private static final Pattern CLAUSE =
      Pattern.compile(
          "(?:\\b(?:item|note|clause|paragraph|para\\.?|article)\\s+(\\d{1,3})(?![\\d.]*\\d)"
              + "|(?<![\\d.])(\\d{1,2}\\.\\d{1,2}))(?:\\s*\\.?\\s?([A-Z])(?![\\w-]))?(?:\\.(\\d{1,2})(?!\\d))?",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern NOTHING_ELSE =
      Pattern.compile(
          "(?:[\\s.,]|\\b(?:the|all|of|and|whole|entire|paragraphs?|clauses?|articles?|sections?|items?|notes?"
              + "|rows?|types?|tiles?|cards?|entry|entries|lines?|finish|in|its|their|entirety|entirely)\\b)*",
          Pattern.CASE_INSENSITIVE);

  /** A change is said at once, in characters; what is longer is no change. */
  private static final int LONGEST = 600;

  private static final Pattern QUOTES = Pattern.compile("[\"'\u201c\u201d\u2018\u2019]");

  /**
   * @param needed one of these words is in every text of this form; most texts have none, and the
   *     forms take time
   */
  private record ChangeForm(Pattern pattern, List<String> needed) {
    boolean mayBeIn(String lower) {
      return needed.isEmpty() || needed.stream().anyMatch(lower::contains);
    }
  }

  private final List<ChangeForm> forms;

  public AmendmentFinder(Vocabulary vocabulary) {
    this.forms =
        vocabulary.amendments().stream()
            .map(form -> new ChangeForm(form, Needed.by(form.pattern())))
            .toList();
  }

  /**
   * @param whole text of the clause, in plain form
   * @param amending true in a document that is issued to change others, whose every such word
   *     counts
   * @param find the statements of a text
   */
  public Amendment in(String whole, boolean amending, Function<String, List<Statement>> find) {
    String text = whole.length() > LONGEST ? whole.substring(0, LONGEST) : whole;
    String lower = text.toLowerCase(Locale.ROOT);
    for (ChangeForm form : forms) {
      if (!form.mayBeIn(lower)) continue;
      Matcher m = form.pattern().matcher(text);
      if (!m.find()) continue;
      String before = text.substring(0, m.start());
      String subject = group(m, "subject").isBlank() ? lead(before) : group(m, "subject");
      String gone = group(m, "gone");
      String target = before + " " + group(m, "subject") + " " + gone;
      List<Statement> old = find.apply(said(subject, group(m, "old")));
      List<Statement> now = find.apply(said(subject, firstSentence(group(m, "now"))));
      boolean same =
          old.stream()
              .anyMatch(o -> now.stream().anyMatch(n -> n.attribute().equals(o.attribute())));
      Set<String> tags = new TreeSet<>(TagFinder.tags(target));
      String clause = clause(target);
      boolean all = isWhole(gone) && amending && !(clause.isEmpty() && tags.isEmpty());
      if (same || amending && !now.isEmpty() || all)
        return new Amendment(clause, tags, all ? List.of() : old, now, all);
    }
    return Amendment.NONE;
  }

  /** "Card GT-7, mortar: delete ..." is about the mortar of GT-7. */
  private static String lead(String before) {
    return before.strip().replaceAll("[:,;-]+$", "").replaceFirst("^[\\d. ]+", "");
  }

  /** "Delete paragraph 2.3 B": all of it goes, and nothing else is named. */
  private static boolean isWhole(String gone) {
    String rest = CLAUSE.matcher(gone).replaceAll(" ");
    for (String tag : TagFinder.written(rest)) rest = rest.replace(tag, " ");
    return !gone.isBlank() && NOTHING_ELSE.matcher(rest).matches();
  }

  private static String said(String subject, String words) {
    String plain = QUOTES.matcher(words).replaceAll("").strip();
    if (plain.isEmpty()) return "";
    return subject.isBlank() ? plain : subject.strip() + ": " + plain;
  }

  private static String firstSentence(String words) {
    List<Sentences.Sentence> sentences = Sentences.of(words);
    return sentences.isEmpty() ? "" : sentences.get(0).text();
  }

  /** As clauses are numbered: {@code 2.3 B.1}. */
  private static String clause(String target) {
    Matcher m = CLAUSE.matcher(target);
    if (!m.find()) return "";
    String number = m.group(1) != null ? m.group(1) : m.group(2);
    if (m.group(3) != null) number += " " + m.group(3).toUpperCase(Locale.ROOT);
    return m.group(4) == null ? number : number + "." + m.group(4);
  }

  private static String group(Matcher m, String name) {
    if (!m.pattern().pattern().contains("(?<" + name + ">")) return "";
    String found = m.group(name);
    return found == null ? "" : found;
  }
}
