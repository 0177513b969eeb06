package clearbed.recognise;

import java.util.Set;

/** Tags of tiles, as schedules and articles write them. */
public final class Tags {
  private static final int OPENING = 100;

  private Tags() {}

  /** One way of writing a tag, to compare by. */
  public static String key(String tag) {
    return LimitFinder.tag(PlainText.of(tag).replaceAll("\\s+", " "));
  }

  /** The letters of a tag: {@code GT} of {@code GT-12}. */
  public static String prefix(String key) {
    return key.replaceAll("[^A-Z].*$", "");
  }

  /** Tags in the opening words of a clause, which name what it is about. */
  public static Set<String> inOpening(String text) {
    String plain = PlainText.of(text);
    return LimitFinder.tags(plain.length() > OPENING ? plain.substring(0, OPENING) : plain);
  }
}
