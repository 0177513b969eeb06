package clearbed.recognise.schedule.card;

import clearbed.model.document.Block;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.cell.GlassTest;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Cards in running text: "GT-1 Glass mosaic" over lines such as "Size: 1 x 1 in" and "Grout .......
 * epoxy". The lines are put on a grid, names beside values.
 */
public final class CardLines {
  /** "Size: 1 x 1 in", "- Size: 1 x 1 in", "Size ...... 1 x 1 in". */
  private static final Pattern NAMED =
      Pattern.compile(
          "^(?:[-*+\u2022\u25AA\u25E6\u2013\u2014\u00B7\uF0B7]\\s+)?(\\p{L}[^:.\u2026_]{0,40}?)\\s*(?::|(?:\\.{3,}|\u2026{2,}|_{3,}|(?:\\. ){3,}\\.?)\\s?:?)\\s*([^\\s.\u2026_:].*)$",
          Pattern.DOTALL);

  private static final Pattern LEADERS = Pattern.compile("\\.{3,}|\u2026{2,}|_{3,}|(?:\\. ){3,}");

  private static final Pattern BULLET =
      Pattern.compile("[-*+\u2022\u25AA\u25E6\u2013\u2014\u00B7\uF0B7o]?");

  /** "1. Product" over some of the lines of a card; also what stands between two cards. */
  private static final int LONGEST_BETWEEN = 60;

  private static final int MOST_BETWEEN = 3;
  private static final int LONGEST_TITLE = 80;
  private static final int LONGEST_VALUE = 160;
  private static final int FEWEST = 3;

  /** What a line without a name stands under. */
  private static final String REMARKS = "Remarks";

  /** More names are asked for where nothing parts them from their values. */
  private static final int FEWEST_BARE = 5;

  /** Of a name that nothing parts from its value. */
  private static final int MOST_WORDS = 3;

  /**
   * Paragraphs that are cards.
   *
   * @param from index of the first of them among the blocks
   * @param to index behind the last
   * @param table the same as a grid
   */
  public record Run(int from, int to, Table table) {}

  private enum CardLineKind {
    TITLE,
    NAMED,
    BETWEEN,
    OTHER
  }

  /**
   * What a block is to cards.
   *
   * @param name with its value, of a {@link CardLineKind#NAMED} one; else the whole words and
   *     nothing
   * @param led true where dots lead from the one to the other
   * @param bare true where nothing parts the one from the other: "Joint 2 mm"
   */
  private record CardLine(CardLineKind kind, String name, String value, boolean led, boolean bare) {
    CardLine(CardLineKind kind, String name) {
      this(kind, name, "", false, false);
    }
  }

  private static final CardLine OTHER = new CardLine(CardLineKind.OTHER, "");

  private final List<Block> blocks;
  private final LabelColumns.Names names;
  private final Vocabulary vocabulary;
  private final GlassTest glassTest;

  private final List<CardLine> lines;

  private CardLines(List<Block> blocks, LabelColumns.Names names, Vocabulary vocabulary) {
    this.blocks = blocks;
    this.names = names;
    this.vocabulary = vocabulary;
    this.glassTest = new GlassTest(vocabulary);
    this.lines = new ArrayList<>();
    List<CardTitle> titles = new ArrayList<>();
    for (Block block : blocks) titles.add(title(block));
    boolean titled = titles.stream().anyMatch(Objects::nonNull);
    for (int i = 0; i < blocks.size(); i++) lines.add(line(blocks.get(i), titles.get(i), titled));
  }

  /** The runs of paragraphs that may be cards, by the index of their first block. */
  static Map<Integer, Run> of(List<Block> blocks, LabelColumns.Names names, Vocabulary vocabulary) {
    return new CardLines(blocks, names, vocabulary).runs();
  }

  private Map<Integer, Run> runs() {
    Map<Integer, Run> out = new TreeMap<>();
    for (int i = 0; i < lines.size(); i++) {
      if (kind(i) != CardLineKind.TITLE || !leadsOn(i)) continue;
      int end = end(i);
      List<CardLine> card = lines.subList(i, end);
      List<CardLine> named =
          card.stream().filter(line -> line.kind() == CardLineKind.NAMED).toList();
      long known = named.stream().filter(line -> names.are(LabelColumns.name(line.name()))).count();
      boolean led = named.stream().filter(CardLine::led).count() * 2 >= named.size();
      boolean parted = card.stream().anyMatch(line -> line.kind() == CardLineKind.BETWEEN);
      boolean whole = end == lines.size() || kind(end) == CardLineKind.TITLE || isHeading(end);
      boolean bare = known >= FEWEST_BARE && isBare(named) && areOfFinishes(card);
      // What a title and its lines say by colons alone is read as a section is.
      if (known >= FEWEST && whole && (led || parted || bare))
        out.put(i, new Run(i, end, table(i, end, bare)));
      i = end - 1;
    }
    return out;
  }

  /** Most of its names stand before their values, and nothing between. */
  private static boolean isBare(List<CardLine> named) {
    return named.stream().filter(CardLine::bare).count() * 4 >= named.size() * 3;
  }

  /** "MB-01 Glass mosaic" says what the tile is. */
  private boolean areOfFinishes(List<CardLine> card) {
    return card.stream()
        .filter(line -> line.kind() == CardLineKind.TITLE)
        .map(line -> CardTitle.of(line.name(), vocabulary))
        .anyMatch(title -> !title.isAlone() && glassTest.of(title.rest()).decided());
  }

  private CardLineKind kind(int i) {
    return lines.get(i).kind();
  }

  /** True where a block is no text of the card before it: a table, a heading, another page. */
  private boolean isHeading(int i) {
    return !(blocks.get(i) instanceof Paragraph p)
        || p.headingLevel() > 0
        || p.region() != Paragraph.Region.BODY
        || p.text().isBlank()
        || p.origin().page() != null
            && !p.origin().page().equals(((Paragraph) blocks.get(i - 1)).origin().page());
  }

  /** What the words of a block are as the title of a card; null where they are none. */
  private CardTitle title(Block block) {
    if (!(block instanceof Paragraph p) || p.region() != Paragraph.Region.BODY) return null;
    String text = PlainText.line(p.text()).strip();
    boolean title = text.length() <= LONGEST_TITLE && !text.endsWith(".") && !text.endsWith(":");
    return title ? CardTitle.of(text, vocabulary) : null;
  }

  /**
   * @param mark with its words where the block may be the title of a card; else null
   * @param titled false where no block may be one: most texts have none
   */
  private CardLine line(Block block, CardTitle mark, boolean titled) {
    if (!(block instanceof Paragraph p)) return OTHER;
    String text = PlainText.line(p.text()).strip();
    if (p.region() != Paragraph.Region.BODY || text.isEmpty()) return OTHER;
    boolean counted = !BULLET.matcher(p.label().strip()).matches();
    if (mark != null && (text.startsWith(mark.mark()) || bare(text) == null))
      return new CardLine(CardLineKind.TITLE, text);
    Matcher named = NAMED.matcher(text);
    if (named.matches()) {
      if (counted || named.group(2).length() > LONGEST_VALUE) return OTHER;
      boolean led = LEADERS.matcher(p.text()).find();
      return new CardLine(CardLineKind.NAMED, named.group(1), named.group(2).strip(), led, false);
    }
    if (text.length() > LONGEST_BETWEEN || text.endsWith(".")) return OTHER;
    CardLine bare = titled && p.label().isBlank() && p.listLevel() < 0 ? bare(text) : null;
    return bare == null ? new CardLine(CardLineKind.BETWEEN, text) : bare;
  }

  /** "Joint 2 mm" opens with a name, the longest that it can be; null where it does not. */
  private CardLine bare(String text) {
    String[] words = text.split(" ");
    for (int count = Math.min(MOST_WORDS, words.length - 1); count > 0; count--) {
      String name = String.join(" ", Arrays.asList(words).subList(0, count));
      boolean known = names.are(name) && !HeadingWords.isOfTags(vocabulary, name);
      if (known || vocabulary.list("schedule.looks").matches(name))
        return new CardLine(
            CardLineKind.NAMED, name, text.substring(name.length()).strip(), false, true);
    }
    return null;
  }

  /** A few short lines, and then one of a name and a value. */
  private boolean leadsOn(int i) {
    for (int k = i + 1; k < lines.size() && k <= i + 1 + MOST_BETWEEN; k++) {
      if (kind(k) == CardLineKind.NAMED) return true;
      if (kind(k) == CardLineKind.OTHER) return false;
    }
    return false;
  }

  private int end(int start) {
    int end = start + 1;
    while (end < lines.size()
        && kind(end) != CardLineKind.OTHER
        && (kind(end) == CardLineKind.NAMED || leadsOn(end))) end++;
    int last = end;
    while (last < lines.size() && last - end < MOST_BETWEEN && kind(last) == CardLineKind.BETWEEN)
      last++;
    // A line that no name opens may be the last of a card whose lines have nothing between.
    boolean bare = lines.get(end - 1).bare() && last > end;
    return bare && (last == lines.size() || kind(last) == CardLineKind.TITLE) ? last : end;
  }

  /**
   * @param bare true of cards whose names nothing parts from their values: a line without a name
   *     says something of its tile, and heads no others
   */
  private Table table(int from, int to, boolean bare) {
    List<Table.Row> rows = new ArrayList<>();
    Map<Table.Place, Origin> apart = new HashMap<>();
    for (int i = from; i < to; i++) {
      CardLine line = lines.get(i);
      int row = i - from + 1;
      List<Table.Cell> cells = new ArrayList<>();
      boolean remark = bare && line.kind() == CardLineKind.BETWEEN;
      cells.add(Table.Cell.of(row, 0, remark ? REMARKS : line.name()));
      if (remark) cells.add(Table.Cell.of(row, 1, line.name()));
      if (!line.value().isEmpty()) cells.add(Table.Cell.of(row, 1, line.value()));
      Origin at = ((Paragraph) blocks.get(i)).origin();
      for (Table.Cell cell : cells) apart.put(new Table.Place(row, cell.column()), at);
      rows.add(new Table.Row(row, cells, false));
    }
    return new Table(((Paragraph) blocks.get(from)).origin(), rows, false, false, apart);
  }
}
