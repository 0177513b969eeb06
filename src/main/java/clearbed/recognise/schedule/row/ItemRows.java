package clearbed.recognise.schedule.row;

import clearbed.model.document.Table;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * Rows that a bill or a list counts, "7 | Glass mosaic GT-3, bedded in AD-1": the number is the
 * item's, and the tile has its mark in the words.
 */
public final class ItemRows {
  /** {@code 7}, {@code 12.3}, {@code 4-2}, {@code B}. */
  private static final Pattern NUMBER = Pattern.compile("\\d{1,3}(?:[-./]\\d{1,3}){0,2}\\.?|[A-Z]");

  /** A mark that comes later is that of something beside the tile, in characters. */
  private static final int OPENING = 60;

  /** What a tile is stands close behind the mark that its words open with, in characters. */
  private static final int NAMED = 40;

  private static final int BETWEEN = 3;

  /** The first rows tell: of long schedules the others would take time. */
  private static final int SEARCHED = 60;

  private static final Set<String> TILE = Set.of("", "tile");

  private final Vocabulary vocabulary;
  private final Attribute mockUp;

  public ItemRows(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.mockUp = vocabulary.attribute("process.mockup").orElseThrow();
  }

  /** True for what counts a row, and may be a mark where its words have none. */
  public static boolean isNumber(String tag) {
    return NUMBER.matcher(tag.strip()).matches();
  }

  /** The one mark in the words, as written, or that which their tile is called by; or empty. */
  public String named(String material) {
    String text = PlainText.of(material);
    String own = opening(text);
    if (!own.isEmpty()) return own;
    Set<String> tags = TagFinder.tags(text);
    for (Phrases.Hit hit : vocabulary.taught().tagsIn(text))
      tags.add(text.substring(hit.start(), hit.end()));
    if (tags.size() == 1) return Tags.asWritten(tags.iterator().next(), text);
    return tags.isEmpty() ? "" : called(text);
  }

  /**
   * True of a mark that stands by itself in a column beside that of the tags, and has the like of
   * it there: "A.1 | GT-1 | ..." over "E.1 | | Mock-ups".
   */
  public static boolean countsLines(
      String mark, Table.Row row, List<Table.Row> all, int tagColumn) {
    for (Table.Cell cell : row.cells()) {
      if (cell.column() == tagColumn || !cell.text().strip().equals(mark)) continue;
      int both = 0;
      for (Table.Row other : all.subList(0, Math.min(all.size(), SEARCHED)))
        if (isMark(other.at(tagColumn)) && isMark(other.at(cell.column()))) both++;
      if (both >= 2) return true;
    }
    return false;
  }

  private static boolean isMark(Table.Cell cell) {
    return cell != null && Tags.isMark(cell.text().strip());
  }

  /** "PF1" of "Glass mosaic PF1, fixed with A1": right behind the word of a tile. */
  private static String called(String text) {
    TagFinder.TagsAt first = TagFinder.firstTags(text);
    boolean one = first != null && first.tags().size() == 1 && first.start() <= OPENING;
    if (!one) return "";
    String before = text.substring(0, first.start()).stripTrailing();
    String last = before.substring(before.lastIndexOf(' ') + 1);
    return TileWords.tile(last) ? first.tags().get(0) : "";
  }

  /** "GM-2" of "GM-2 Glass mosaic as GM-1 but ...", bedded in C2: the words open with it. */
  private String opening(String text) {
    TagFinder.TagsAt first = TagFinder.firstTags(text);
    if (first == null || first.start() > 0 || first.tags().size() != 1) return "";
    String behind = text.substring(first.end(), Math.min(text.length(), first.end() + NAMED));
    Phrases.Hit tile = vocabulary.list("glassTile").first(behind);
    boolean named = tile != null && behind.substring(0, tile.start()).strip().length() < BETWEEN;
    return named ? first.tags().get(0) : "";
  }

  /**
   * False for "Movement joints to glass" and "Sample panels of glass tile": what comes before the
   * glass names the work.
   */
  public boolean isTile(String material) {
    String text = PlainText.of(material);
    Phrases.Hit glass = vocabulary.list("glassAlone").first(text);
    if (glass == null) return true;
    String before = text.substring(0, glass.start());
    return TILE.contains(vocabulary.family(before)) && !mockUp.words().cues().in(before);
  }

  /** True of a table whose rows are counted, and most of whose words call a tile by its mark. */
  public boolean areItems(List<Table.Row> below, int numbers) {
    Set<String> marks = new TreeSet<>();
    int counted = 0;
    int calling = 0;
    for (Table.Row row : below.subList(0, Math.min(below.size(), SEARCHED))) {
      Table.Cell number = row.at(numbers);
      if (number == null || !isNumber(number.text())) continue;
      counted++;
      String mark = mark(row, numbers);
      if (mark.isEmpty()) continue;
      calling++;
      marks.add(mark);
    }
    return marks.size() >= 2 && calling * 2 > counted;
  }

  private String mark(Table.Row row, int numbers) {
    for (Table.Cell cell : row.cells()) {
      String mark = cell.column() == numbers ? "" : named(cell.text());
      if (!mark.isEmpty()) return mark;
    }
    return "";
  }
}
