package clearbed.recognise.schedule.card;

import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.cell.GlassTest;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.schedule.row.RowReader;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.UnitWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A card of a room: "Room | Lobby", "East wall | GT-1, 9 ft high", "East wall is on | cement backer
 * board", "Movement joints | every 20 ft". What it says is said of the tiles that it names: of
 * those of a part of the room where the name opens with that part, or ends with it ("Build-up of
 * walls"), else of all on the card. The room stands in a row, or over the card.
 */
public final class PlaceCard {
  /** "X.10 Court" looks like the mark of a tile. */
  private static final Pattern ROOM_NUMBER = Pattern.compile("^[A-Z]{1,3}[-. ]?\\d[\\w.-]*\\s+");

  private static final Pattern PLURAL = Pattern.compile("(?<=\\p{L}{3})s\\b");

  /** The part of the room in "Build-up of walls". */
  private static final Pattern BEHIND =
      Pattern.compile("\\b(?:of|under|behind|at|to|for) (?:the )?(\\p{L}+(?: \\p{L}+)?)$");

  /** ", 25 m" of a pool and " to 8 ft" of a wall: neither is a place. */
  private static final Pattern MEASURE =
      Pattern.compile("(?:,| (?:to|up to|above|below)) \\d[\\d.,]* ?(?:m|mm|cm|ft|in)\\b\\.?");

  /** "31 m2 / 2.90 m" beside "Area / height" names no room. */
  private static final Pattern MEASURED =
      Pattern.compile(
          "^\\d[\\d.,]*\\s?(?:" + UnitWords.PATTERN + ")(?!\\p{L})", Pattern.CASE_INSENSITIVE);

  private static final String LOCATION = "location.";
  private static final String ROOM = "location.room";
  private static final String EXPOSURE = "location.exposure";
  private static final String SUBMERGED = "submerged";
  private static final String TILE = "tile.";

  /** Fewer rows of a name and a value make no card. */
  private static final int FEWEST = 4;

  /** The room stands in one of its first rows. */
  private static final int FIRST_ROWS = 4;

  /** One less where the room stands over the card. */
  private static final int FEWEST_UNDER_ROOM = 3;

  /** Longer tables have their room in one of their first rows. */
  private static final int MOST_UNDER_ROOM = 40;

  private static final int LONGEST_NAME = 60;

  /**
   * @param of attribute that the name is one of; or empty
   * @param room true where the value names the room, whatever numbers it has
   */
  private record RoomLine(Table.Cell name, Table.Cell value, String of, boolean room) {
    /** False where the name is that of a mortar, a grout or another property. */
    boolean part() {
      return !room && (of.isEmpty() || of.startsWith(LOCATION));
    }

    /** What it says of tiles; empty where it opens with none. */
    List<LaidTiles> laid() {
      return part() ? LaidTiles.in(value.text()) : List.of();
    }

    String words() {
      return PlainText.of(value.text()).strip();
    }

    String title() {
      return PlainText.of(name.text()).strip().replaceAll("[:?]+$", "");
    }
  }

  private final Vocabulary vocabulary;
  private final GlassTest glassTest;
  private final RowReader rows;

  public PlaceCard(Vocabulary vocabulary, StatementFinder finder) {
    this.vocabulary = vocabulary;
    this.rows = new RowReader(vocabulary, finder);
    this.glassTest = new GlassTest(vocabulary);
  }

  /**
   * A paragraph for what each row says, led by its tiles, and what the tiles are where it is said
   * beside their marks; empty where the table is no such card.
   *
   * @param over the heading that the table stands under; empty when there is none
   */
  public PropertySheet.Sheet read(Table table, String over) {
    List<RoomLine> lines = lines(table);
    boolean named = lines.stream().anyMatch(RoomLine::room);
    if (!named && !isUnderRoom(lines, over)) return PropertySheet.NONE;
    if (lines.size() < (named ? FEWEST : FEWEST_UNDER_ROOM)) return PropertySheet.NONE;
    Map<String, String> parts = parts(lines);
    if (parts.isEmpty()) return PropertySheet.NONE;
    String room = named ? "" : RoomTitle.name(over, vocabulary);
    String exposed = place(lines);
    String between = room.isEmpty() || exposed.isEmpty() ? "" : ", ";
    String place = MEASURE.matcher(room + between + exposed).replaceAll("");
    String under = underWater(lines);
    String all = String.join(", ", new LinkedHashSet<>(parts.values()));
    List<Paragraph> out = new ArrayList<>();
    List<ScheduleRow> told = new ArrayList<>();
    for (RoomLine line : lines) {
      List<LaidTiles> tiles = line.laid();
      for (LaidTiles laid : tiles) {
        String own = surface(line.title() + (laid.place().isEmpty() ? "" : ", " + laid.place()));
        // "Pool tank" of a pool hall says more of its tiles than the name of the hall.
        String at = isUnderWater(own) || place.isEmpty() ? own : place + ", " + own;
        add(out, table, line, laid.led() + "Location: " + at);
        laid.lines().stream()
            .filter(said -> !said.isEmpty())
            .forEach(said -> add(out, table, line, laid.led() + said));
        GlassTest.Result glass = glassTest.of(laid.what());
        if (glass.decided() && laid.tags().tags().size() == 1) {
          Origin origin =
              table.origin(line.value()).withText(laid.said().lines().findFirst().orElse(""));
          told.add(
              ScheduleRow.told(laid.tags().tags().get(0), laid.what(), glass, origin).onCard());
        }
      }
      if (tiles.isEmpty()) {
        String said = line.title() + ": " + line.words();
        boolean own = line.room() || !TagFinder.tags(said).isEmpty();
        String of = !under.isEmpty() && tellsWater(line) ? under : of(line.title(), parts, all);
        add(out, table, line, own ? said : of + ": " + said);
      }
      for (Table.Cell cell : List.of(line.name(), line.value()))
        Paragraph.remark(table, cell).ifPresent(out::add);
    }
    return new PropertySheet.Sheet(out, told);
  }

  /** The tiles of pools and basins on the card; empty where there are none. */
  private String underWater(List<RoomLine> lines) {
    return lines.stream()
        .flatMap(
            line ->
                line.laid().stream()
                    .filter(laid -> isUnderWater(line.title() + " " + laid.place()))
                    .flatMap(laid -> laid.tags().tags().stream()))
        .distinct()
        .collect(Collectors.joining(", "));
  }

  /** "Water 28 \u00b0C" of a room with a pool is not of its walls. */
  private boolean tellsWater(RoomLine line) {
    if (!line.of().equals(EXPOSURE)) return false;
    Header.Column named = HeadingWords.named(vocabulary, line.title());
    Origin nowhere = Origin.ofDocument("");
    return named != null
        && rows.property(named, line.words(), nowhere).stream()
            .anyMatch(s -> s.content().text().equals(SUBMERGED));
  }

  private boolean isUnderWater(String words) {
    return vocabulary
        .attribute(EXPOSURE)
        .map(a -> a.words().terms().get(SUBMERGED).in(words))
        .orElse(false);
  }

  private static void add(List<Paragraph> out, Table table, RoomLine line, String text) {
    out.add(Paragraph.body(table.origin(line.name()).withText(text), text));
  }

  /**
   * True where a heading names the room, a row one of its surfaces with what is on it, and another
   * what it is exposed to or built of.
   */
  private boolean isUnderRoom(List<RoomLine> lines, String over) {
    boolean surface =
        lines.stream()
            .filter(line -> !line.laid().isEmpty())
            .anyMatch(line -> RoomTitle.isSurface(line.title(), vocabulary));
    boolean property =
        lines.stream()
            .filter(line -> line.laid().isEmpty())
            .anyMatch(line -> !line.of().isEmpty() || !vocabulary.family(line.title()).isEmpty());
    return surface && property && RoomTitle.is(over, vocabulary);
  }

  /** Rows of two cells, the first of which is short; empty where other rows stand among them. */
  private List<RoomLine> lines(Table table) {
    List<RoomLine> out = new ArrayList<>();
    for (Table.Row row : table.rows()) {
      List<Table.Cell> filled = row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
      if (filled.size() < 2) continue;
      String name = filled.get(0).text().strip();
      if (filled.size() > 2 || name.length() > LONGEST_NAME || Tags.isMark(name)) return List.of();
      Header.Column named = HeadingWords.named(vocabulary, name);
      String of = named == null || named.attribute() == null ? "" : named.attribute().id();
      // What gives size and back is the card of a tile.
      if (of.startsWith(TILE)) return List.of();
      boolean first = out.size() < FIRST_ROWS;
      if (out.size() == MOST_UNDER_ROOM && out.stream().noneMatch(RoomLine::room)) return List.of();
      boolean measured = MEASURED.matcher(filled.get(1).text().strip()).find();
      boolean room = first && of.equals(ROOM) && !measured;
      out.add(new RoomLine(filled.get(0), filled.get(1), of, room));
    }
    return out;
  }

  /** What the first rows say of the room and what it is exposed to. */
  private String place(List<RoomLine> lines) {
    return lines.stream()
        .limit(FIRST_ROWS)
        .filter(line -> line.room() || line.of().equals(EXPOSURE))
        .filter(line -> !tellsWater(line) || underWater(lines).isEmpty())
        .filter(line -> line.laid().isEmpty())
        .map(
            line -> line.room() ? ROOM_NUMBER.matcher(line.words()).replaceFirst("") : line.words())
        .collect(Collectors.joining(", "));
  }

  /** The tiles of each part of the room, by its name. */
  private static Map<String, String> parts(List<RoomLine> lines) {
    Map<String, String> out = new LinkedHashMap<>();
    for (RoomLine line : lines) {
      for (LaidTiles laid : line.laid())
        out.merge(line.title(), String.join(", ", laid.tags().tags()), (a, b) -> a + ", " + b);
    }
    return out;
  }

  /**
   * "East wall is on" is of what "East wall" has; "Shower walls are on" of "Shower walls, high";
   * "Build-up of floor" of "Floor inlay" and "Floor, else".
   */
  private static String of(String name, Map<String, String> parts, String all) {
    String words = singular(name);
    Matcher m = BEHIND.matcher(words);
    String behind = m.find() ? " " + m.group(1) + " " : null;
    String opening = null;
    Set<String> named = new LinkedHashSet<>();
    for (Map.Entry<String, String> part : parts.entrySet()) {
      String title = singular(part.getKey());
      String opens = title.split("[,;(]", 2)[0].strip() + " ";
      if (opening == null && words.startsWith(opens)) opening = part.getValue();
      String whole = " " + title.replaceAll("[^\\p{L}\\d]+", " ") + " ";
      if (behind != null && whole.contains(behind)) named.add(part.getValue());
    }
    if (opening != null) return opening;
    return named.isEmpty() ? all : String.join(", ", named);
  }

  private static String surface(String title) {
    return MEASURE.matcher(title).replaceAll("");
  }

  private static String singular(String name) {
    return PLURAL.matcher(name.toLowerCase(Locale.ROOT)).replaceAll("");
  }
}
