package clearbed.report.annotate.office;

import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.xmlbeans.XmlCursor;
import org.apache.xmlbeans.XmlObject;

/** Tells whether a paragraph can be the one that words were taken from. */
final class SameWords {
  private SameWords() {}

  /**
   * True when they share a word, or there is none to share: fields, symbols and tracked changes
   * keep the two from being equal.
   */
  static boolean share(XmlObject paragraph, String words) {
    if (words == null) return true;
    Set<String> wanted = words(words);
    if (wanted.isEmpty()) return true;
    String there = squeezed(text(paragraph));
    return wanted.stream().anyMatch(there::contains);
  }

  private static String text(XmlObject paragraph) {
    try (XmlCursor cursor = paragraph.newCursor()) {
      return cursor.getTextValue();
    }
  }

  private static Set<String> words(String text) {
    return Arrays.stream(text.split("\\s+"))
        .map(SameWords::squeezed)
        .filter(word -> !word.isEmpty())
        .collect(Collectors.toSet());
  }

  private static String squeezed(String text) {
    return text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "");
  }
}
