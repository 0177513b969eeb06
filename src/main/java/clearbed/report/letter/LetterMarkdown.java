package clearbed.report.letter;

import clearbed.base.io.AtomicFile;
import clearbed.mark.ClosingLine;
import clearbed.mark.LetterWords;
import clearbed.mark.OutputKind;
import clearbed.report.wording.Deferral;
import clearbed.report.wording.SafeText;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Questions as Markdown (CommonMark 0.31.2), for mail and trackers. */
public final class LetterMarkdown {
  /**
   * Characters that begin a mark of their own in running text (CommonMark 2.4), or that trackers
   * make a link of.
   */
  private static final Pattern MARKS =
      Pattern.compile("[\\\\`*_\\[\\]<>#|~&@]|:(?=//)|(?<=\\bwww)\\.", Pattern.CASE_INSENSITIVE);

  /** What makes a list of a line. */
  private static final Pattern LIST = Pattern.compile("^(\\s*)([-+]|\\d+[.)])(?=\\s)");

  private static final Pattern ESCAPED = Pattern.compile("\\\\([\\\\`*_\\[\\]<>#|~&@:+.)0-9-])");

  private LetterMarkdown() {}

  /**
   * Writes the file whole or not at all.
   *
   * @throws IOException with one line that names the file and the reason
   */
  public static void write(Letter letter, Path file) throws IOException {
    AtomicFile.write(file, out -> out.write(text(letter).getBytes(StandardCharsets.UTF_8)));
  }

  /** The whole text, lines ended by {@code \n}. */
  public static String text(Letter letter) {
    StringBuilder out = new StringBuilder();
    out.append("# ").append(letter.title()).append("\n\n");
    letter.head().forEach(each -> line(out, each.getKey(), each.getValue()));
    out.append('\n').append(letter.opening()).append('\n');
    out.append('\n').append(Deferral.LINE).append('\n');
    letter.byAddressee().forEach((who, questions) -> group(out, letter.over(who), questions));
    return ClosingLine.closedMarkup(out.toString(), OutputKind.LETTER);
  }

  private static void group(StringBuilder out, String who, List<Letter.Question> questions) {
    if (!who.isEmpty()) out.append("\n## ").append(plain(who)).append('\n');
    for (Letter.Question question : questions) {
      out.append("\n### ").append(plain(question.heading())).append("\n\n");
      out.append(plain(question.words())).append("\n\n");
      question.particulars().forEach(each -> line(out, each.getKey(), each.getValue()));
      if (question.isAnswerable()) out.append("\n").append(LetterWords.ANSWER).append(":\n");
    }
  }

  private static void line(StringBuilder out, String label, String text) {
    if (!text.isBlank())
      out.append("- ").append(label).append(": ").append(plain(text)).append('\n');
  }

  /** Words that stay words: no marks, no line ends. */
  static String plain(String text) {
    String line =
        SafeText.xml(text)
            .strip()
            .replaceAll("\\s*\\R\\s*", " ")
            .replaceAll("\\p{Cntrl}", "\uFFFD");
    String escaped = MARKS.matcher(line).replaceAll(mark -> "\\\\" + escape(mark.group()));
    return LIST.matcher(escaped).replaceFirst("$1\\\\$2");
  }

  /** The words of a line without the backslashes that keep marks from being marks. */
  public static String unmarked(String line) {
    return ESCAPED.matcher(line).replaceAll("$1");
  }

  private static String escape(String mark) {
    return Matcher.quoteReplacement(mark);
  }
}
