package clearbed.recognise.schedule.card;

import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * Build-ups one below the other in a table, each under a line of its own that names its tiles:
 * "Pool, walls: GM-1" over "1 | Ground | Cast concrete", "2 | Adhesive | A2, white", "3 | Tile |
 * GM-1", and the next one below it. What a build-up says is said of its tiles, and of no others.
 */
public final class BuildUpCards {
  /** Fewer are no stack of cards. */
  private static final int FEWEST_CARDS = 2;

  /** Fewer rows of a name and a value make no card. */
  private static final int FEWEST = 3;

  private static final int LONGEST_NAME = 60;
  private static final int LONGEST_TITLE = 160;

  /** Before the name of a layer stands what counts it, or nothing. */
  private static final Pattern COUNTER =
      Pattern.compile("\\p{L}?\\d{1,2}[.)]?|\\p{L}[.)]?|[-\u2013\u2014\u2022*]");

  /** "P3 Pool, walls: GM-1", "3.2 Pool (GM-1)": what counts the build-up, and what is behind. */
  private static final Pattern CODE =
      Pattern.compile("^(?:\\p{Lu}{1,3}-?\\d{1,3}|\\d{1,2}(?:\\.\\d{1,2})*)[.):]?\\s+");

  private static final Pattern LOOSE =
      Pattern.compile("[\\s,:;(\\[\u2013\u2014-]+$|^[\\s,:;)\\]\u2013\u2014-]+");

  private record Layer(Table.Cell name, Table.Cell value) {}

  private record BuildUp(Table.Cell title, List<Layer> lines) {}

  private BuildUpCards() {}

  /** A paragraph for what each row says, led by its tiles; empty where the table is no stack. */
  public static List<Paragraph> paragraphs(Table table, Vocabulary vocabulary) {
    List<BuildUp> cards = cards(table);
    if (cards.size() < FEWEST_CARDS) return List.of();
    int parts = 0;
    List<Paragraph> out = new ArrayList<>();
    for (BuildUp card : cards) {
      Set<String> tags = tags(card, vocabulary);
      if (tags.isEmpty() || card.lines().size() < FEWEST) return List.of();
      // "GM-1 Glass mosaic" over its properties is the card of a tile.
      if (startsWithTag(card, vocabulary)) return List.of();
      // "Adhesive A2" over its properties is no build-up.
      if (WorkFamilies.MATERIALS.contains(vocabulary.family(text(card.title())))) return List.of();
      Set<String> families = new TreeSet<>();
      for (Layer line : card.lines()) families.add(vocabulary.family(text(line.name())));
      families.removeAll(Set.of("", "tile"));
      if (families.size() > 1) parts++;
      into(out, table, card, String.join(", ", tags) + ": ", vocabulary);
    }
    // What is built up has several parts of the work: others are cards of tiles or of rooms.
    return parts * 2 > cards.size() ? out : List.of();
  }

  private static void into(
      List<Paragraph> out, Table table, BuildUp card, String led, Vocabulary vocabulary) {
    String title = text(card.title());
    String place = CODE.matcher(title).replaceFirst("");
    for (String tag : TagFinder.written(place)) place = place.replace(tag, " ");
    place = LOOSE.matcher(place).replaceAll("");
    if (!place.isBlank()) add(out, table, card.title(), led + "Location: " + place);
    for (Layer line : card.lines()) {
      String value = text(line.value());
      // "Tile | GM-1" has been said by the title.
      TagFinder.TagsAt opening = TagFinder.firstTags(value, vocabulary);
      boolean alone = opening != null && opening.start() == 0 && opening.end() == value.length();
      if (alone && led.contains(opening.tags().get(0))) continue;
      String name = text(line.name()).replaceAll("[:?]+$", "");
      add(out, table, line.name(), led + name + ": " + value);
      Paragraph.remark(table, line.value()).ifPresent(out::add);
    }
  }

  private static void add(List<Paragraph> out, Table table, Table.Cell cell, String text) {
    out.add(Paragraph.body(table.origin(cell).withText(text), text));
  }

  private static boolean startsWithTag(BuildUp card, Vocabulary vocabulary) {
    String title = text(card.title());
    TagFinder.TagsAt first = TagFinder.firstTags(title, vocabulary);
    boolean code = CODE.matcher(title).lookingAt() && TagFinder.written(title).size() > 1;
    return first != null && first.start() == 0 && !code;
  }

  /** The tiles of the title; where it has none, those that stand alone behind a name. */
  private static Set<String> tags(BuildUp card, Vocabulary vocabulary) {
    String title = CODE.matcher(text(card.title())).replaceFirst("");
    Set<String> out = new TreeSet<>(TagFinder.tags(title, vocabulary));
    if (!out.isEmpty()) return out;
    for (Layer line : card.lines()) {
      if (!vocabulary.family(text(line.name())).equals("tile")) continue;
      TagFinder.TagsAt at = TagFinder.firstTags(text(line.value()), vocabulary);
      if (at != null && at.start() == 0) out.addAll(at.tags());
    }
    return out;
  }

  /** Empty where a row is neither the title of a card nor one of its lines. */
  private static List<BuildUp> cards(Table table) {
    List<BuildUp> out = new ArrayList<>();
    int first =
        table.rows().stream()
            .flatMap(row -> row.cells().stream())
            .filter(Table.Cell::hasOwnWords)
            .mapToInt(Table.Cell::column)
            .min()
            .orElse(0);
    for (Table.Row row : table.rows()) {
      List<Table.Cell> filled = row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
      if (filled.isEmpty()) continue;
      if (filled.size() == 1) {
        // What goes on below a value is no title.
        if (filled.get(0).column() > first) return List.of();
        if (text(filled.get(0)).length() > LONGEST_TITLE) return List.of();
        // A title without lines stands over all of them.
        if (!out.isEmpty() && out.get(out.size() - 1).lines().isEmpty()) out.remove(out.size() - 1);
        out.add(new BuildUp(filled.get(0), new ArrayList<>()));
        continue;
      }
      boolean counted = filled.size() == 3 && COUNTER.matcher(text(filled.get(0))).matches();
      if (filled.size() > (counted ? 3 : 2) || out.isEmpty()) return List.of();
      Table.Cell name = filled.get(counted ? 1 : 0);
      if (text(name).length() > LONGEST_NAME) return List.of();
      out.get(out.size() - 1).lines().add(new Layer(name, filled.get(counted ? 2 : 1)));
    }
    if (!out.isEmpty() && out.get(out.size() - 1).lines().isEmpty()) out.remove(out.size() - 1);
    return out;
  }

  private static String text(Table.Cell cell) {
    return PlainText.line(cell.text()).strip();
  }
}
