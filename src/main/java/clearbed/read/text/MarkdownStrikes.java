package clearbed.read.text;

import clearbed.read.block.Mark;
import clearbed.read.block.MarkedText;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Words that Markdown strikes through: {@code ~~so~~}, or by an element of HTML. */
final class MarkdownStrikes {
  // As GitHub Flavored Markdown 6.5 has it: one or two tildes, none more beside them.
  private static final Pattern STRUCK =
      Pattern.compile(
          "(?<![~\\\\])(~{1,2})(?![~\\s])(.+?)(?<![~\\s])\\1(?!~)" + "|<(s|strike|del)>(.*?)</\\3>",
          Pattern.CASE_INSENSITIVE | Pattern.DOTALL);

  // A single tilde before a figure says "about".
  private static final Pattern ABOUT = Pattern.compile("~\\s?\\d");

  private MarkdownStrikes() {}

  static MarkedText of(String text) {
    MarkedText marked = new MarkedText();
    Matcher struck = STRUCK.matcher(text);
    int from = 0;
    while (struck.find(from)) {
      boolean tildes = struck.group(1) != null;
      if (tildes && ABOUT.matcher(text).region(struck.start(), text.length()).lookingAt()) {
        marked.append(text.substring(from, struck.start() + 1), Set.of());
        from = struck.start() + 1;
        continue;
      }
      marked.append(text.substring(from, struck.start()), Set.of());
      String words = tildes ? struck.group(2) : struck.group(4);
      marked.append(words, Set.of(Mark.STRUCK));
      from = struck.end();
    }
    marked.append(text.substring(from), Set.of());
    return marked;
  }
}
