package clearbed.recognise.lesson;

import clearbed.model.document.Paragraph;
import clearbed.recognise.section.MarksBehind;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Marks that a text counts its mortars, grouts and sealants by, line after line: {@code Gr1: CG2
 * WA. Gr2: RG, epoxy}, {@code Sa: neutral silicone. Sb: ...}. Schedules call for them by these.
 */
final class LabelledProducts {
  /** Letters, and a figure or a letter that counts. */
  private static final Pattern LABEL =
      Pattern.compile(
          "\\s*(?:"
              + MarksBehind.BULLET
              + ")?(?:\\([a-z\\d]\\)\\s+|\\d{1,3}(?:\\.\\d{1,2}){0,3}\\.?\\s+)?"
              + "(\\p{Lu}\\p{L}{0,3}?)([-.]?(?:\\d{1,2}|\\p{Ll}))\\s*(?:[:=\u2013\u2014]|-(?=\\s))\\s*(?=\\S)");

  /** What a product is stands among its first words, in characters. */
  private static final int OPENING = 60;

  /** Longer lines are no title, in characters. */
  private static final int TITLE = 60;

  /** Fewer might be words of any kind. */
  private static final int FEWEST = 2;

  private final Vocabulary vocabulary;

  LabelledProducts(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** The marks that are of no known form. */
  Set<String> in(List<Paragraph> paragraphs) {
    Map<String, Set<String>> alike = new TreeMap<>();
    boolean titled = false;
    for (Paragraph p : paragraphs) {
      String text = PlainText.of(p.text());
      Matcher m = LABEL.matcher(text);
      if (!m.lookingAt()) {
        if (text.length() <= TITLE) titled = isOfProducts(text);
        continue;
      }
      String opening = text.substring(m.end(), Math.min(text.length(), m.end() + OPENING));
      if (titled || isOfProducts(opening))
        alike.computeIfAbsent(m.group(1), any -> new TreeSet<>()).add(m.group(1) + m.group(2));
    }
    Set<String> out = new TreeSet<>();
    alike.values().stream().filter(marks -> marks.size() >= FEWEST).forEach(out::addAll);
    out.removeIf(mark -> Tags.isMark(mark, vocabulary));
    return out;
  }

  private boolean isOfProducts(String words) {
    return WorkFamilies.MATERIALS.contains(vocabulary.family(words));
  }
}
