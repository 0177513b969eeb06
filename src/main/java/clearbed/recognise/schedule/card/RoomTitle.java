package clearbed.recognise.schedule.card;

import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.Collection;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * "Room 2.14 Plunge pool", "Space B-07: Bar", "1.03 Showers": a heading that names a room, by the
 * word for one before its number, or by a name that tells what it is exposed to.
 */
public final class RoomTitle {
  /** "Room 2.14 " and "1.03 - " before the name. */
  private static final Pattern NUMBERED =
      Pattern.compile(
          "^(?:(\\p{L}{2,12}\\.?) )?(?:no\\.? ?)?((?:\\p{Lu}{1,3}[-. ]?)?\\d[\\w.-]*)(?:[\\s:,;\u2013\u2014-]+|$)");

  private static final int LONGEST = 70;

  private RoomTitle() {}

  static boolean is(String heading, Vocabulary vocabulary) {
    String words = PlainText.of(heading).strip();
    if (words.isEmpty() || words.length() > LONGEST || !vocabulary.isVerbless(words)) return false;
    if (isNumbered(words, vocabulary)) return true;
    return terms("location.exposure", vocabulary).stream().anyMatch(term -> term.in(words));
  }

  /** "Room S1 Concourse": what looks like a mark is the number of a room. */
  public static boolean isNumbered(String heading, Vocabulary vocabulary) {
    Matcher m = NUMBERED.matcher(PlainText.of(heading).strip());
    return m.find() && m.group(1) != null && isRoom(m.group(1), vocabulary);
  }

  /** Its name alone, or all of it where it has none. */
  static String name(String heading, Vocabulary vocabulary) {
    String words = PlainText.of(heading).strip();
    Matcher m = NUMBERED.matcher(words);
    if (!m.find() || (m.group(1) != null && !isRoom(m.group(1), vocabulary))) return words;
    String name = words.substring(m.end()).strip();
    return name.isEmpty() ? words : name;
  }

  /** "West wall", "Walls and ceiling", "Floor inlay". */
  static boolean isSurface(String name, Vocabulary vocabulary) {
    return terms("location.surface", vocabulary).stream().anyMatch(term -> term.in(name))
        || vocabulary.surfaceHeaders().values().stream().anyMatch(term -> term.in(name));
  }

  static boolean isRoom(String word, Vocabulary vocabulary) {
    String plain = word.toLowerCase(Locale.ROOT).replace(".", "");
    return vocabulary.list("schedule.roomNumber").matches(plain)
        || vocabulary
            .attribute("location.room")
            .map(a -> a.words().headers().matches(plain))
            .orElse(false);
  }

  private static Collection<Phrases> terms(String attribute, Vocabulary vocabulary) {
    return vocabulary
        .attribute(attribute)
        .map(Attribute::words)
        .map(words -> words.terms().values())
        .orElseThrow();
  }
}
