package clearbed.recognise.schedule.card;

import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * "GT-1", "GT-1 Glass mosaic, washroom", "Card GT-1 | Glass tile", "2.3 GT-1 Washbasin wall": words
 * that open with the mark of a tile, and what they say of it.
 *
 * @param rest behind the mark, or empty
 */
public record CardTitle(String mark, String rest) {
  private static final int LONGEST = 120;

  /** "2.3", "A." and "Card", "Type no." before the mark. */
  private static final Pattern BEFORE =
      Pattern.compile(
          "^(?:(?:\\d{1,2}(?:\\.\\d{1,2})*\\.?|\\p{Lu}[.)])\\s+)?(?:(\\p{L}{3,14}) (?:(?i:no)\\.? ?)?(?=\\S*\\d))?");

  /** As British sections of work are coded. */
  private static final Pattern SECTION = Pattern.compile("\\p{Lu}\\d{2}");

  private static final Pattern WORK = Pattern.compile("\\btiling\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern WORD = Pattern.compile("\\S+(?: (?=\\d)\\S+)?");
  private static final Pattern LOOSE =
      Pattern.compile("^[\\s|:,;\u2013\u2014(-]+|[\\s)|:;,\u2013\u2014-]+$");

  /** The mark and the words behind it; null where the text opens with no mark. */
  public static CardTitle of(String text, Vocabulary vocabulary) {
    String plain = PlainText.line(text).strip().replaceAll("\\s+", " ");
    if (plain.isEmpty() || plain.length() > LONGEST) return null;
    CardTitle bare = at(plain, 0, vocabulary);
    if (bare != null) return bare;
    Matcher before = BEFORE.matcher(plain);
    if (!before.find() || before.end() == 0) return null;
    // "Space B-07" is a room.
    String kind = before.group(1);
    if (kind != null && RoomTitle.isRoom(kind, vocabulary)) return null;
    return at(plain, before.end(), vocabulary);
  }

  private static CardTitle at(String plain, int start, Vocabulary vocabulary) {
    for (Phrases.Hit hit : vocabulary.taught().tagsIn(plain))
      if (hit.start() == start) return of(plain, start, hit.end());
    // "GT-1 and GT-2 Glass mosaic" is the card of both.
    TagFinder.TagsAt several = TagFinder.opening(plain.substring(start));
    if (several != null && several.tags().size() > 1)
      return of(plain, start, start + several.end());
    Matcher word = WORD.matcher(plain).region(start, plain.length());
    if (!word.lookingAt()) return null;
    for (int end : new int[] {word.end(), plain.indexOf(' ', start)}) {
      if (end <= start || end > word.end()) continue;
      String mark = plain.substring(start, end).replaceAll("[:,;.\u2013\u2014-]+$", "");
      // "A118.15 mortar" opens with a standard.
      boolean cited = Citations.find(plain).stream().anyMatch(c -> c.start() <= start);
      if (cited || !Tags.isMark(mark)) continue;
      CardTitle title = of(plain, start, start + mark.length());
      return isSection(title, vocabulary) ? null : title;
    }
    return null;
  }

  private static CardTitle of(String plain, int start, int end) {
    String rest = LOOSE.matcher(plain.substring(end)).replaceAll("");
    return new CardTitle(plain.substring(start, end), rest);
  }

  /** "M40 Tiling" is the title of a section. */
  private static boolean isSection(CardTitle title, Vocabulary vocabulary) {
    return SECTION.matcher(title.mark()).matches()
        && WORK.matcher(title.rest()).find()
        && vocabulary.sections().of(title.mark(), "").isPresent();
  }

  boolean isAlone() {
    return rest.isEmpty();
  }
}
