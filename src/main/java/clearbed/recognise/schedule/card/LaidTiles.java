package clearbed.recognise.schedule.card;

import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.text.PlainText;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Tiles of one part of a room, as the card of a room has them: "North wall: GT-1 glass mosaic.
 * South wall: PT-2, with skirting" are two.
 *
 * @param place as the value names it; or empty
 * @param said from their marks on
 */
record LaidTiles(String place, TagFinder.TagsAt tags, String said) {
  /** What begins within a value: "North wall: GT-1 glass mosaic. South wall: PT-2". */
  private static final Pattern BEGINS =
      Pattern.compile("(?:^|[.;]\\s+|\\n\\s*)(?:(\\p{Lu}[^:.;\\n]{1,40}):\\s+)?(?=\\p{Lu})");

  private static final Pattern ENDS = Pattern.compile("[.;](?=\\s)|\\n");

  /** Of a longer sentence the opening mark is a part, in characters. */
  private static final int LONGEST_PLACE = 90;

  /** Those that a value opens with, and what it says of others behind them. */
  static List<LaidTiles> in(String value) {
    List<LaidTiles> out = new ArrayList<>();
    String text = value.strip().lines().map(PlainText::of).collect(Collectors.joining("\n"));
    Matcher m = BEGINS.matcher(text);
    while (m.find()) {
      String behind = text.substring(m.end());
      TagFinder.TagsAt tags = TagFinder.opening(behind);
      Matcher end = ENDS.matcher(behind);
      int length = end.find() ? end.start() : behind.length();
      boolean laid = tags != null && length <= LONGEST_PLACE && tags.end() <= length;
      if (!laid && out.isEmpty()) return out;
      if (!laid) continue;
      if (!out.isEmpty()) {
        LaidTiles before = out.remove(out.size() - 1);
        int from = text.length() - before.said().length();
        out.add(new LaidTiles(before.place(), before.tags(), text.substring(from, m.start())));
      }
      out.add(new LaidTiles(m.group(1) == null ? "" : m.group(1), tags, behind));
    }
    return out;
  }

  String led() {
    return String.join(", ", tags.tags()) + ": ";
  }

  /** "GT-1 glass mosaic" over "Grout: epoxy": each line says something of its own. */
  List<String> lines() {
    List<String> out = new ArrayList<>();
    said.substring(tags.end()).lines().map(String::strip).forEach(out::add);
    if (!out.isEmpty()) out.set(0, out.get(0).replaceFirst("^[\\s,;:]+", ""));
    return out;
  }

  /** The words beside the marks. */
  String what() {
    return lines().isEmpty() ? "" : ENDS.split(lines().get(0), 2)[0];
  }
}
