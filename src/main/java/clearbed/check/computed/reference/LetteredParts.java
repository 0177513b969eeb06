package clearbed.check.computed.reference;

import clearbed.model.document.Document;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Appendices and annexes with a letter. "Appendix D of this standard" leads to nothing where no
 * title and no file is called so; of other papers nobody knows whether they have one, unless the
 * set has its others.
 */
final class LetteredParts {
  private static final String WORD = "(appendix|annex|annexure|attachment|exhibit)";

  private static final Pattern REFERENCE =
      Pattern.compile(
          "\\b" + WORD + "\\s+(?-i:([A-Z]))(?![\\w.-]?\\d|\\w)(\\s+(?:of|to|in) this\\b)?",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern TITLE =
      Pattern.compile("\\s*" + WORD + "\\s+(?-i:([A-Z]))(?!\\w)", Pattern.CASE_INSENSITIVE);

  /** Longer words are a sentence that opens with a reference, in characters. */
  private static final int LONGEST_TITLE = 90;

  private final Set<String> titled = new HashSet<>();

  LetteredParts(Project project, List<Document> documents) {
    for (Document d : documents) {
      Matcher m = REFERENCE.matcher(d.path().replace('_', ' '));
      while (m.find()) titled.add(key(m));
    }
    for (Section section : project.sections()) {
      title(section.title());
      for (Clause clause : section.clauses()) {
        title(clause.heading());
        title(clause.text());
      }
    }
  }

  private void title(String text) {
    Matcher m = TITLE.matcher(text);
    if (text.length() < LONGEST_TITLE && m.lookingAt()) titled.add(key(m));
  }

  private static String key(Matcher m) {
    return m.group(1).toLowerCase(Locale.ROOT) + " " + m.group(2);
  }

  /** True of most texts. */
  static boolean mayBeIn(String text) {
    return REFERENCE.matcher(text).find();
  }

  /** What a text refers to and the set does not have, as written. */
  List<String> missedIn(String text) {
    List<String> out = new ArrayList<>();
    if (text.length() < LONGEST_TITLE && TITLE.matcher(text).lookingAt()) return out;
    Matcher m = REFERENCE.matcher(text);
    while (m.find()) {
      if (titled.contains(key(m)) || References.ofAStandard(text, m.start(), m.end())) continue;
      String word = m.group(1).toLowerCase(Locale.ROOT) + " ";
      boolean others = titled.stream().anyMatch(t -> t.startsWith(word));
      if (m.group(3) != null || others) out.add(m.group(1) + " " + m.group(2));
    }
    return out;
  }
}
