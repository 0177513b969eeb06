package clearbed.recognise.statement.code;

import clearbed.recognise.statement.code.TagFinder.TagsAt;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.recognise.vocabulary.taught.Taught;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tags of the forms that an office has, with ranges spelt out: {@code G/01 to G/09}. */
final class TaughtTags {
  /** The figures by which tags are counted stand last. */
  private static final Pattern COUNTED = Pattern.compile("(.*?)(\\d{1,4})");

  private TaughtTags() {}

  /** In the order of the text; a range of them is one. */
  static List<TagsAt> in(String text, Taught taught) {
    List<Phrases.Hit> hits =
        taught.tagsIn(text).stream().sorted(Comparator.comparingInt(Phrases.Hit::start)).toList();
    List<TagsAt> out = new ArrayList<>();
    for (int i = 0; i < hits.size(); i++) {
      Phrases.Hit hit = hits.get(i);
      List<String> range = i + 1 < hits.size() ? range(text, hit, hits.get(i + 1)) : List.of();
      if (range.isEmpty()) out.add(new TagsAt(List.of(of(text, hit)), hit.start(), hit.end()));
      else out.add(new TagsAt(range, hit.start(), hits.get(++i).end()));
    }
    return out;
  }

  private static String of(String text, Phrases.Hit hit) {
    return text.substring(hit.start(), hit.end());
  }

  /** All from the one to the other; empty where the words between them make no range. */
  private static List<String> range(String text, Phrases.Hit from, Phrases.Hit to) {
    if (to.start() <= from.end()) return List.of();
    String between = text.substring(from.end(), to.start());
    Matcher first = COUNTED.matcher(of(text, from));
    Matcher last = COUNTED.matcher(of(text, to));
    boolean range =
        TagList.RANGE.matcher(between).matches()
            && first.matches()
            && last.matches()
            && first.group(1).equals(last.group(1));
    if (!range) return List.of();
    int low = Integer.parseInt(first.group(2));
    int high = Integer.parseInt(last.group(2));
    if (high <= low || high - low >= TagList.MOST) return List.of();
    String form = "%0" + first.group(2).length() + "d";
    List<String> out = new ArrayList<>();
    for (int n = low; n <= high; n++) out.add(first.group(1) + String.format(form, n));
    return out;
  }
}
