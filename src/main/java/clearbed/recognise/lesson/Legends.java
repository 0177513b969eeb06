package clearbed.recognise.lesson;

import clearbed.model.document.Table;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Legends that say which letters stand for glass tile. */
final class Legends {
  private static final Pattern SHORT_NAME = Pattern.compile("\\p{Lu}{1,6}(?:-\\p{Lu}{1,4})?");

  /** "GLS = glass tile", and in one line "MOS-GL = glass mosaic, TIL-PO = porcelain tile". */
  private static final Pattern EXPLAINED =
      Pattern.compile(
          "(?<![\\p{L}\\d.-])(\\p{Lu}{1,6}(?:-\\p{Lu}{1,4})?)\\s*(=|:|\u2013|\u2014|-(?=\\s)|\\b(?:means|stands for|denotes)\\b)\\s*((?:(?!\\s\\p{Lu}{1,6}(?:-\\p{Lu}{1,4})?\\s*=)[^,;=\\n]){4,60})");

  /**
   * "Class: EP emulsion paint; GLS glass tile": name after name, each before what it stands for.
   */
  private static final Pattern LISTED =
      Pattern.compile(
          "(?:^|[;,:])\\s*(\\p{Lu}{2,6}(?:-\\p{Lu}{1,4})?)\\s+(\\p{Ll}[^;,]{3,50})(?=[;,.]|$)");

  private static final Pattern SECTION =
      Pattern.compile(
          "(?<![\\d.])(\\d{2} \\d{2} \\d{2}(?:\\.\\d{2})?)\\s*[-:\u2013\u2014]?\\s*(\\p{L}[^;,.\\n]{3,40})");

  /** What a document calls glass tile: "'Glass tile' means all tiles FG". */
  private static final Pattern DEFINED =
      Pattern.compile(
          "[\"\u201c\u2018']([^\"\u201c\u201d\u2018\u2019']{4,40})[\"\u201d\u2019']\\s[^.;:]{0,60}?\\b(?:means|denotes|stands for)\\s[^.;:]{0,40}?(?<![\\p{L}\\d-])(\\p{Lu}{2,6})(?![\\p{L}\\d]|[-./ ]{1,2}\\d)");

  private static final Set<String> SAID_PLAINLY = Set.of("=", "means", "stands for", "denotes");

  /** Fewer might be words of any kind. */
  private static final int FEWEST = 2;

  /** Longer words explain nothing in a legend, in characters. */
  private static final int LONGEST_MEANING = 60;

  private final Vocabulary vocabulary;

  Legends(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** "Letter | Means": short names in the first column and what they mean in the only other. */
  List<String> in(Table table) {
    List<String> names = new ArrayList<>();
    List<String> glass = new ArrayList<>();
    for (Table.Row row : table.rows()) {
      List<Table.Cell> filled = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
      if (filled.size() < FEWEST) continue;
      // A key may stand over what it explains.
      if (filled.size() > FEWEST && names.size() >= FEWEST) break;
      if (filled.size() > FEWEST) return List.of();
      String name = PlainText.line(filled.get(0).text()).strip();
      String meaning = PlainText.line(filled.get(1).text()).strip();
      if (!SHORT_NAME.matcher(name).matches() || meaning.length() > LONGEST_MEANING) continue;
      names.add(name);
      if (isGlassTile(meaning)) glass.add(name);
    }
    return names.size() > glass.size() ? glass : List.of();
  }

  /** Adds the names that a text explains as glass tile. */
  void into(String text, Set<String> glass) {
    if (!vocabulary.list("glassTile").mayBeIn(text)) return;
    String plain = PlainText.of(text);
    Matcher m = EXPLAINED.matcher(plain);
    while (m.find()) {
      String meaning = m.group(3).strip();
      boolean told = SAID_PLAINLY.contains(m.group(2));
      // "WALLS: glass tile" explains no letters; "GT: glass tile" does.
      boolean abbreviates = m.group(1).length() >= FEWEST && abbreviates(m.group(1), meaning);
      if (isGlassTile(meaning) && (told || abbreviates)) glass.add(m.group(1));
    }
    Matcher defined = DEFINED.matcher(plain);
    while (defined.find()) if (isGlassTile(defined.group(1))) glass.add(defined.group(2));
    // "09 30 14 glass tiling; 09 68 00 carpet", and the title of a section.
    Matcher section = SECTION.matcher(plain);
    while (section.find())
      if (isGlassTile(section.group(2)) && !vocabulary.glass().namesOtherTile(section.group(2)))
        glass.add(section.group(1));
    List<MatchResult> listed =
        LISTED.matcher(plain).results().filter(r -> abbreviates(r.group(1), r.group(2))).toList();
    for (MatchResult each : listed)
      if (listed.size() >= FEWEST && isGlassTile(each.group(2))) glass.add(each.group(1));
  }

  private boolean isGlassTile(String meaning) {
    return vocabulary.glass().describesTile(meaning)
        && Set.of("", "tile").contains(vocabulary.family(meaning));
  }

  /** The letters stand in the words in their order, the first at the beginning. */
  private static boolean abbreviates(String name, String words) {
    String letters = name.replace("-", "").toLowerCase(Locale.ROOT);
    String in = words.toLowerCase(Locale.ROOT);
    if (in.isEmpty() || in.charAt(0) != letters.charAt(0)) return false;
    int at = 0;
    for (char letter : letters.toCharArray()) {
      at = in.indexOf(letter, at) + 1;
      if (at == 0) return false;
    }
    return true;
  }
}
