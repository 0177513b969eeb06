package clearbed.recognise.schedule.row;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.value.Content;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.statement.limit.TermReader;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Lines of a bill that describe a tile by its mark, without a number, over the counted items that
 * say where it goes: "GM1 glass mosaic 25 x 25 mm, ..." over "A | To walls, Spa 1.11 | m2 | 38".
 */
public final class BillHeads {
  private static final String ROOM = "location.room";
  private static final String SURFACE = "location.surface";
  private static final int FEWEST = 2;

  /** Fewer words behind a mark describe nothing. */
  private static final int FEWEST_WORDS = 3;

  /** The first rows tell: of long bills the others would take time. */
  private static final int SEARCHED = 60;

  private static final int LONGEST_ROOM = 40;

  /** What repeats a line stands among its first parts. */
  private static final int MOST_PARTS = 4;

  /** "To walls, Spa 1.11": the surface, then the room. */
  private static final Pattern PLACED =
      Pattern.compile("(?:to|on|in|at)\\s+[^,;]{3,40}[,;]\\s+", Pattern.CASE_INSENSITIVE);

  /** One to three words that join nothing to others. */
  private static final Pattern OF_WORK =
      Pattern.compile("(?!.*\\b(?:in|at|of|to|for|and|with)\\b)\\p{L}+(?: \\p{L}+){0,2}");

  private static final Pattern STOP = Pattern.compile("[,;]\\s+");

  private final Vocabulary vocabulary;
  private final TermReader terms;

  public BillHeads(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.terms = new TermReader(vocabulary);
  }

  /** True of a table whose rows are counted, under lines that open with marks. */
  public boolean are(List<Table.Row> below, int numbers) {
    int heads = 0;
    int items = 0;
    for (Table.Row row : below.subList(0, Math.min(below.size(), SEARCHED))) {
      Table.Cell number = row.at(numbers);
      boolean counted = number != null && !number.text().isBlank();
      if (counted && ItemRows.isNumber(number.text())) items++;
      else if (counted && isMark(number)) return false;
      else if (!counted && !mark(row).isEmpty()) heads++;
    }
    return heads >= FEWEST && items >= heads;
  }

  private static boolean isMark(Table.Cell cell) {
    return Tags.isMark(cell.text().strip());
  }

  /** The mark that the only words of a row open with; empty where they do not. */
  public String mark(Table.Row row) {
    List<Table.Cell> filled = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
    if (filled.size() != 1) return "";
    String text = PlainText.line(filled.get(0).text()).strip();
    TagFinder.TagsAt first = TagFinder.firstTags(text, vocabulary);
    if (first == null || first.tags().size() != 1) return "";
    // "Wall tiling GM1; ..." calls the work before its mark.
    String before = text.substring(0, first.start()).strip();
    boolean ends = first.end() < text.length() && ";:,".indexOf(text.charAt(first.end())) >= 0;
    boolean opens = before.isEmpty() || ends && OF_WORK.matcher(before).matches();
    if (!opens) return "";
    String behind = text.substring(first.end()).strip();
    return behind.split("\\s+").length >= FEWEST_WORDS ? first.tags().get(0) : "";
  }

  /** "Wall tiling GM2; ditto but 20 x 20 mm": the rest is as in the line before. */
  public boolean repeats(Table.Row row) {
    String text =
        row.cells().stream()
            .map(c -> PlainText.line(c.text()).strip())
            .filter(words -> !words.isEmpty())
            .findFirst()
            .orElse("");
    for (String part : STOP.split(text, MOST_PARTS))
      for (Phrases.Hit hit : vocabulary.list("ditto").all(part)) if (hit.start() == 0) return true;
    return false;
  }

  /** What an item states of its tile, with the room that its words name. */
  public List<Statement> of(Table table, Table.Row row, Header header, List<Statement> said) {
    List<Statement> out = new ArrayList<>(said);
    // "22 m" of a joint is no area.
    out.removeIf(s -> s.content() instanceof Content.NotUnderstood);
    for (Header.Column column : header.all(Header.Role.MATERIAL)) {
      Table.Cell cell = row.at(column.index());
      if (cell == null || out.stream().anyMatch(s -> s.attribute().equals(ROOM))) continue;
      String text = PlainText.line(cell.text()).strip();
      if (!PLACED.matcher(text).lookingAt()) continue;
      String[] parts = STOP.split(text, 2);
      Set<String> surfaces = terms.in(SURFACE, parts[0]);
      boolean room = parts[1].length() <= LONGEST_ROOM && vocabulary.family(parts[1]).isEmpty();
      Origin at = table.origin(cell);
      if (surfaces.isEmpty() || !room) continue;
      out.add(new Statement(ROOM, new Content.Words(parts[1]), false, parts[1], at, Limits.NONE));
      if (out.stream().noneMatch(s -> s.attribute().equals(SURFACE)))
        for (String term : surfaces)
          out.add(new Statement(SURFACE, new Content.Term(term), false, text, at, Limits.NONE));
    }
    return out;
  }
}
