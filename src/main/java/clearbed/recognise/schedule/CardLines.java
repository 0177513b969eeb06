package clearbed.recognise.schedule;

import clearbed.model.Block;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import clearbed.model.Table;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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

  /**
   * Paragraphs that are cards.
   *
   * @param from index of the first of them among the blocks
   * @param to index behind the last
   * @param table the same as a grid
   */
  public record Run(int from, int to, Table table) {}

  private enum Kind {
    TITLE,
    NAMED,
    BETWEEN,
    OTHER
  }

  private final List<Block> blocks;
  private final LabelColumns.Names names;
  private final Vocabulary vocabulary;
  private final Kind[] kinds;

  private CardLines(List<Block> blocks, LabelColumns.Names names, Vocabulary vocabulary) {
    this.blocks = blocks;
    this.names = names;
    this.vocabulary = vocabulary;
    this.kinds = blocks.stream().map(this::kind).toArray(Kind[]::new);
  }

  /** The runs of paragraphs that may be cards, by the index of their first block. */
  static Map<Integer, Run> of(List<Block> blocks, LabelColumns.Names names, Vocabulary vocabulary) {
    return new CardLines(blocks, names, vocabulary).runs();
  }

  private Map<Integer, Run> runs() {
    Map<Integer, Run> out = new TreeMap<>();
    for (int i = 0; i < kinds.length; i++) {
      if (kinds[i] != Kind.TITLE || !leadsOn(i)) continue;
      int end = end(i);
      int known = 0;
      for (int k = i; k < end; k++) if (kinds[k] == Kind.NAMED && isKnown(k)) known++;
      boolean whole = end == kinds.length || kinds[end] == Kind.TITLE || isHeading(end);
      // What a title and its lines say by colons alone is read as a section is.
      boolean apart = hasLeaders(i, end) || hasBetween(i, end);
      if (known >= FEWEST && whole && apart) out.put(i, new Run(i, end, table(i, end)));
      i = end - 1;
    }
    return out;
  }

  /** True where a block is no text of the card before it. */
  private boolean isHeading(int i) {
    return !(blocks.get(i) instanceof Paragraph p)
        || p.headingLevel() > 0
        || p.region() != Paragraph.Region.BODY
        || p.text().isBlank()
        || i > 0 && farBelow(i);
  }

  /** Another page, or words that are no item: a card ends there. */
  private boolean farBelow(int i) {
    Origin at = ((Paragraph) blocks.get(i)).origin();
    Origin before = ((Paragraph) blocks.get(i - 1)).origin();
    return at.page() != null && !at.page().equals(before.page());
  }

  private boolean hasLeaders(int from, int to) {
    int named = 0;
    int led = 0;
    for (int i = from; i < to; i++) {
      if (kinds[i] != Kind.NAMED) continue;
      named++;
      if (LEADERS.matcher(((Paragraph) blocks.get(i)).text()).find()) led++;
    }
    return led * 2 >= named;
  }

  private boolean hasBetween(int from, int to) {
    for (int i = from + 1; i < to; i++) if (kinds[i] == Kind.BETWEEN) return true;
    return false;
  }

  private Kind kind(Block block) {
    if (!(block instanceof Paragraph)) return Kind.OTHER;
    Paragraph p = (Paragraph) block;
    String text = PlainText.line(p.text()).strip();
    if (p.region() != Paragraph.Region.BODY || text.isEmpty()) return Kind.OTHER;
    boolean counted = !BULLET.matcher(p.label().strip()).matches();
    boolean title = text.length() <= LONGEST_TITLE && !text.endsWith(".") && !text.endsWith(":");
    if (title && CardTitle.of(text, vocabulary) != null) return Kind.TITLE;
    Matcher named = NAMED.matcher(text);
    if (named.matches())
      return counted || named.group(2).length() > LONGEST_VALUE ? Kind.OTHER : Kind.NAMED;
    return text.length() <= LONGEST_BETWEEN && !text.endsWith(".") ? Kind.BETWEEN : Kind.OTHER;
  }

  private boolean isKnown(int i) {
    Matcher named = NAMED.matcher(PlainText.line(((Paragraph) blocks.get(i)).text()).strip());
    return named.matches() && names.are(LabelColumns.name(named.group(1)));
  }

  /** A few short lines, and then one of a name and a value. */
  private boolean leadsOn(int i) {
    for (int k = i + 1; k < kinds.length && k <= i + 1 + MOST_BETWEEN; k++) {
      if (kinds[k] == Kind.NAMED) return true;
      if (kinds[k] != Kind.BETWEEN && kinds[k] != Kind.TITLE) return false;
    }
    return false;
  }

  private int end(int start) {
    int end = start + 1;
    while (end < kinds.length
        && kinds[end] != Kind.OTHER
        && (kinds[end] == Kind.NAMED || leadsOn(end))) end++;
    return end;
  }

  private Table table(int from, int to) {
    List<Table.Row> rows = new ArrayList<>();
    Map<Table.Place, Origin> apart = new HashMap<>();
    for (int i = from; i < to; i++) {
      Paragraph p = (Paragraph) blocks.get(i);
      int row = i - from + 1;
      String text = PlainText.line(p.text()).strip();
      Matcher named = NAMED.matcher(text);
      List<Table.Cell> cells = new ArrayList<>();
      boolean pair = kinds[i] == Kind.NAMED && named.matches();
      cells.add(Table.Cell.of(row, 0, pair ? named.group(1) : text));
      if (pair) cells.add(Table.Cell.of(row, 1, named.group(2).strip()));
      for (Table.Cell cell : cells) apart.put(new Table.Place(row, cell.column()), p.origin());
      rows.add(new Table.Row(row, cells, false));
    }
    return new Table(((Paragraph) blocks.get(from)).origin(), rows, false, false, apart);
  }
}
