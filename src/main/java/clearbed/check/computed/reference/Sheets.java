package clearbed.check.computed.reference;

import clearbed.check.judge.SetComputation.Scene;
import clearbed.recognise.Facts;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Drawing sheets of a set and the details on them. */
final class Sheets {
  private static final int LONGEST_TITLE = 60;

  /** So many details that a sheet calls by number are a count that a missing one is missed in. */
  private static final int COUNTED = 2;

  private static final Pattern FIGURES = Pattern.compile("\\d{1,3}");

  /** The number that a count of details ends with, and what little may stand behind. */
  private static final Pattern LAST = Pattern.compile("(\\d{1,2})\\b[^.]{0,40}");

  private Sheets() {}

  /** True where the set has the sheet, and nothing tells that the detail is not on it. */
  static boolean show(Scene scene, References.Detail detail) {
    Pattern named = named(detail.sheet());
    boolean titled =
        scene.project().sections().stream()
            .anyMatch(
                s ->
                    named.matcher(s.title()).find()
                        || s.clauses().stream()
                            .anyMatch(c -> titled(named, c.text(), scene.vocabulary())));
    boolean there = scene.documents().stream().anyMatch(d -> named.matcher(d.path()).find());
    if (!there) return titled;
    if (isBeyond(scene, named, detail.number())) return false;
    Set<String> numbers = numbersOn(scene, detail.sheet());
    return numbers.size() < COUNTED || numbers.contains(detail.number());
  }

  /** True where the sheet has "DETAILS 1 TO 3" and is asked for the fifth. */
  private static boolean isBeyond(Scene scene, Pattern sheet, String number) {
    if (!FIGURES.matcher(number).matches()) return false;
    int last = 0;
    for (Section section : scene.project().sections())
      for (Clause clause : section.clauses()) {
        if (!sheet.matcher(clause.origin().document()).find()) continue;
        Phrases.Hit from = scene.vocabulary().list("checks.detailsFrom").first(clause.text());
        if (from == null) continue;
        Matcher m = LAST.matcher(clause.text()).region(from.end(), clause.text().length());
        if (m.matches()) last = Math.max(last, Integer.parseInt(m.group(1)));
      }
    return last > 0 && Integer.parseInt(number) > last;
  }

  /** "1/A6.02" below each figure of the sheet A6.02. */
  private static Set<String> numbersOn(Scene scene, String sheet) {
    Set<String> numbers = new HashSet<>();
    for (Facts facts : scene.project().facts())
      for (String one : facts.numbered())
        if (one.endsWith("/" + sheet)) numbers.add(one.substring(0, one.indexOf('/')));
    return numbers;
  }

  private static Pattern named(String sheet) {
    return Pattern.compile(
        "(?<![A-Z0-9])" + Pattern.quote(sheet).replace("-", "\\E[-. ]?\\Q") + "(?![0-9])",
        Pattern.CASE_INSENSITIVE);
  }

  private static boolean titled(Pattern named, String text, Vocabulary vocabulary) {
    return text.length() < LONGEST_TITLE
        && References.in(text, vocabulary).details().isEmpty()
        && named.matcher(text).find();
  }
}
