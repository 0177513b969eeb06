package clearbed.recognise.statement.code;

import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Finds tags of tiles in a text, ranges of them spelt out. */
public final class TagFinder {
  private static final Pattern TAG_PARTS = Pattern.compile("([A-Z]{1,5})[-. ]?(\\d{1,3})([A-Z]?)");

  private static final Pattern TAG =
      Pattern.compile(
          "(?<![A-Za-z0-9.-])(?:("
              + Tags.LETTERS
              + ")[-. ]?(\\d{1,3})([A-Za-z]?)|(?!ANSI|ASTM|ISO|EN[-.]|BS[-.]|TCNA|UL-)[A-Z]{1,4}[-.][A-Z]{1,3}-?\\d{1,3}|([A-Z]{2,4})-([A-Z]))(?![A-Za-z0-9]|[.-](?:\\d|[xX]\\b))");

  // "GT-5-8" is a range, and no tag by itself.
  private static final Pattern FIGURES_APART =
      Pattern.compile(
          "(?<![A-Za-z0-9.-])(?:[A-Z]{1,5}|[A-Z]{1,4}-[A-Z]{1,3})[-.]?\\d{1,3}-\\d{1,3}(?![A-Za-z0-9]|[.-]\\d)");

  private static final Pattern JOIN = Pattern.compile("\\s*(?:[,;&/+]|and\\b)\\s*(?:and\\b\\s*)?");

  private TagFinder() {}

  /** A list of tags and where it stands. */
  public record TagsAt(List<String> tags, int start, int end) {}

  /**
   * Designations that look like tags, ranges spelt out; the caller knows which of them are tags.
   */
  public static Set<String> tags(String text) {
    Set<String> tags = new TreeSet<>();
    if (!mayHaveTags(text)) return tags;
    for (At list : lists(text)) list.found().tags().forEach(tag -> tags.add(tag(tag)));
    return tags;
  }

  /** The same, and those of forms that were taught. */
  public static Set<String> tags(String text, Vocabulary known) {
    Set<String> tags = tags(text);
    for (TagsAt at : TaughtTags.in(text, known.taught()))
      at.tags().forEach(tag -> tags.add(tag(tag)));
    return tags;
  }

  /** The first tags of a text, of known forms or such as were taught; null when there are none. */
  public static TagsAt firstTags(String text, Vocabulary known) {
    TagsAt first = firstTags(text);
    for (TagsAt at : TaughtTags.in(text, known.taught()))
      if (first == null || at.start() < first.start()) first = at;
    return first;
  }

  /** The first tags of a text, ranges spelt out, letter for letter; null when there are none. */
  public static TagsAt firstTags(String text) {
    if (!mayHaveTags(text)) return null;
    List<Citations.Found> cited = null;
    TagLookalikes lookalikes = new TagLookalikes(text);
    Matcher m = TAG.matcher(text);
    while (m.find()) {
      if (lookalikes.isOne(m)) continue;
      int at = m.start();
      if (cited == null) cited = Citations.find(text);
      if (cited.stream().anyMatch(c -> c.start() <= at && at < c.end())) continue;
      TagList.Found list = TagList.inText(text, m.start());
      return list == null
          ? new TagsAt(List.of(m.group()), m.start(), m.end())
          : new TagsAt(list.tags(), m.start(), list.end());
    }
    return null;
  }

  /** "GT-1, PT-4 and ST-2": all tags that a text opens with; null when it opens with none. */
  public static TagsAt opening(String text) {
    List<String> tags = new ArrayList<>();
    int end = 0;
    for (int at = 0; at >= 0; ) {
      TagsAt next = firstTags(text.substring(at));
      if (next == null || next.start() > 0) break;
      tags.addAll(next.tags());
      end = at + next.end();
      Matcher join = JOIN.matcher(text).region(end, text.length());
      at = join.lookingAt() ? join.end() : -1;
    }
    return tags.isEmpty() ? null : new TagsAt(List.copyOf(tags), 0, end);
  }

  /** A range of tags that stands for its ends alone, as there are too many between; or empty. */
  public static String unspelt(String text) {
    if (!mayHaveTags(text)) return "";
    return lists(text).stream()
        .map(list -> list.found().unspelt())
        .filter(range -> !range.isEmpty())
        .findFirst()
        .orElse("");
  }

  /** Tags of a text, letter for letter. */
  public static List<String> written(String text) {
    return TAG.matcher(text).results().map(r -> r.group()).toList();
  }

  /** One way of writing a tag: {@code gt 1} and {@code GT-1} are the same, {@code GT-01} is not. */
  static String tag(String written) {
    String s = written.trim().toUpperCase(Locale.ROOT);
    Matcher m = TAG_PARTS.matcher(s);
    return m.matches() ? m.group(1) + "-" + m.group(2) + m.group(3) : s;
  }

  /** Where tags stand, each by itself where they are spelt out; a range of them is one. */
  public static List<Phrases.Hit> places(String text) {
    return lists(text).stream().flatMap(list -> each(text, list)).toList();
  }

  private static Stream<Phrases.Hit> each(String text, At list) {
    Matcher m = TAG.matcher(text).region(list.start(), list.found().end());
    List<Phrases.Hit> each = m.results().map(r -> new Phrases.Hit(r.start(), r.end())).toList();
    boolean spelt = each.size() == list.found().tags().size();
    return spelt ? each.stream() : Stream.of(list.place());
  }

  private record At(int start, TagList.Found found) {
    Phrases.Hit place() {
      return new Phrases.Hit(start, found.end());
    }
  }

  /** Tags by themselves are lists of one. */
  private static List<At> lists(String text) {
    List<At> lists = new ArrayList<>();
    int covered = 0;
    TagLookalikes lookalikes = new TagLookalikes(text);
    Matcher m = TAG.matcher(text);
    while (m.find()) {
      if (lookalikes.isOne(m)) continue;
      // Of "TL-G03, G04" the second is no G04.
      if (m.start() < covered) continue;
      TagList.Found list = TagList.inText(text, m.start());
      if (list == null) list = new TagList.Found(List.of(m.group()), m.end(), "");
      lists.add(new At(m.start(), list));
      covered = Math.max(covered, list.end());
    }
    m = FIGURES_APART.matcher(text);
    while (m.find()) {
      TagList.Found list = TagList.inText(text, m.start());
      if (list != null && list.tags().size() > 1) lists.add(new At(m.start(), list));
    }
    return lists;
  }

  /** In every tag a capital stands before another, a figure, a mark or a blank. */
  public static boolean mayHaveTags(String text) {
    for (int at = text.length() - 2; at >= 0; at--) {
      char c = text.charAt(at);
      if (c < 'A' || c > 'Z') continue;
      char next = text.charAt(at + 1);
      boolean within = at > 0 && Character.isLetter(text.charAt(at - 1));
      if (next < 'a' || next > 'z' || within) return true;
    }
    return false;
  }
}
