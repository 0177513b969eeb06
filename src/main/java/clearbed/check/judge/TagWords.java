package clearbed.check.judge;

import clearbed.model.report.Finding;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Says a sentence of one entry, of several or of the set; tags that follow each other become a
 * range.
 */
public final class TagWords {
  private static final String TAG = Finding.FindingWording.TAG;
  private static final Map<String, String> PLURAL =
      Map.of("is", "are", "has", "have", "stands", "stand");
  private static final Pattern SUBJECT =
      Pattern.compile(
          "(^|[.;:] |\\bthat |\\bwhether |\\bWhether |\\bwhere |\\bwhen )\\{tag} (is|has|stands) ");

  private static final Map<String, String> PLURAL_ASKED =
      Map.of("Is", "Are", "is", "are", "Has", "Have", "has", "have", "Does", "Do", "does", "do");

  /** "Is GT-1 glass?", "How is GT-1 cleaned?" */
  private static final Pattern ASKED =
      Pattern.compile("(^|[.;:] |\\bHow |\\bhow )(Is|is|Has|has|Does|does) \\{tag} ");

  private static final Pattern NUMBERED = Pattern.compile("(.*?)(\\d{1,6})");

  /** Shorter ranges are listed. */
  private static final int LEAST_RANGE = 3;

  /** More than this nobody reads in a sentence; the column of tags has them all. */
  private static final int MOST = 12;

  private TagWords() {}

  /** The sentence with the tags in place of {@code {tag}}, and its verbs to fit. */
  public static String of(String sentence, List<String> tags) {
    String text = tags.size() > 1 ? plural(sentence) : sentence;
    return text.replace(TAG, tags.isEmpty() ? "the set" : of(tags));
  }

  /** {@code GT-1}, {@code GT-1 and GT-4}, {@code GT-1 to GT-8 and GT-10}. */
  public static String of(List<String> tags) {
    List<String> parts = parts(tags);
    if (parts.size() == 1) return parts.get(0);
    if (parts.size() > MOST) {
      String named = String.join(", ", parts.subList(0, MOST - 1));
      return named + " and others, " + tags.size() + " in all";
    }
    String last = parts.get(parts.size() - 1);
    return String.join(", ", parts.subList(0, parts.size() - 1)) + " and " + last;
  }

  /** The verb behind a tag that is its subject, for several tags. */
  private static String plural(String sentence) {
    // "The mortar of {tag} is": there the mortar is the subject.
    boolean subject = sentence.startsWith(TAG);
    String whole =
        subject
            ? sentence.replace(" and is ", " and are ").replaceAll("\\bits\\b", "their")
            : sentence;
    String stated =
        SUBJECT
            .matcher(whole)
            .replaceAll(m -> m.group(1) + "{tag} " + PLURAL.get(m.group(2)) + " ");
    return ASKED
        .matcher(stated)
        .replaceAll(m -> m.group(1) + PLURAL_ASKED.get(m.group(2)) + " {tag} ");
  }

  private static List<String> parts(List<String> tags) {
    List<String> parts = new ArrayList<>();
    int from = 0;
    while (from < tags.size()) {
      int to = from;
      while (to + 1 < tags.size() && follows(tags.get(to), tags.get(to + 1))) to++;
      boolean range = to - from + 1 >= LEAST_RANGE;
      if (range) parts.add(tags.get(from) + " to " + tags.get(to));
      else parts.addAll(tags.subList(from, to + 1));
      from = to + 1;
    }
    return parts;
  }

  private static boolean follows(String one, String next) {
    Matcher first = NUMBERED.matcher(one);
    Matcher second = NUMBERED.matcher(next);
    return first.matches()
        && second.matches()
        && first.group(1).equals(second.group(1))
        && first.group(2).length() <= second.group(2).length()
        && Integer.parseInt(first.group(2)) + 1 == Integer.parseInt(second.group(2));
  }
}
