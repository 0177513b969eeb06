package clearbed.read.text;

import clearbed.model.document.Block;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Paragraph.Region;
import clearbed.model.document.Table;
import clearbed.read.block.CleanText;
import clearbed.read.block.Gaps;
import clearbed.read.block.MarkedText;
import clearbed.read.layout.AlignedTables;
import clearbed.read.layout.Hyphens;
import clearbed.read.layout.LineKind;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Splits lines of text into paragraphs and drawn tables. Each paragraph and each table counts one
 * in the ordinals.
 */
final class TextBlocks {
  private static final Pattern HASHES = Pattern.compile("^\\s{0,3}(#{1,6})\\s+(.*?)\\s*#*\\s*$");
  private static final Pattern UNDERLINE = Pattern.compile("^\\s{0,3}(=+|-+)\\s*$");
  private static final Pattern RULE = Pattern.compile("^\\s*([-=_*~])(\\s*\\1){3,}\\s*$");
  private static final Pattern EMPHASIS = Pattern.compile("(\\*\\*|__|`)(?=\\S)(.+?)(?<=\\S)\\1");

  // Columns that programs and people wrap plain text at.
  private static final int NARROWEST = 55;
  private static final int WIDEST = 110;

  /** {@code GT-1 Shower walls}: a mark in the margin. */
  private static final Pattern MARKED =
      Pattern.compile("\\s{0,8}[A-Z]{1,5}[-.]?\\d{1,3}[A-Z]?(?::|\\s{2,}|\\t)\\s*\\p{L}");

  private static final Pattern CLOSED_BY_MARK =
      Pattern.compile("\\[" + SpacedTables.ONE_MARK + "\\]\\s*$");

  /** A line between two rules is a title, whatever opens it; longer ones are sentences. */
  private static final int LONGEST_TITLE = 60;

  /** Letters of a line that tells in which letters a text is typed, and how many lines tell it. */
  private static final int WORDED = 10;

  private static final int FEWEST = 8;

  private final String document;
  private final boolean markdown;
  private final List<Block> blocks = new ArrayList<>();
  private final Gaps gaps = new Gaps();

  /** True behind a rule, and behind one line below it. */
  private boolean framed;

  private final List<String> pending = new ArrayList<>();
  private int ordinal;
  private int width;

  /** Typed in capitals as a whole, as notes of drawings are: a line in capitals is no heading. */
  private boolean capitals;

  TextBlocks(String document, boolean markdown) {
    this.document = document;
    this.markdown = markdown;
  }

  List<Block> blocks() {
    return blocks;
  }

  List<Gap> gaps() {
    return gaps.list();
  }

  void add(List<String> written) {
    List<String> lines = RuledColumns.drawn(DashedColumns.drawn(written));
    width = lines.stream().mapToInt(line -> line.stripTrailing().length()).max().orElse(0);
    capitals = inCapitals(lines);
    SpacedTables spaced = new SpacedTables(lines);
    boolean[] counted = HangingNumbers.in(lines);
    for (int i = 0; i < lines.size(); i++) {
      AlignedTables.FoundTable table = spaced.at(i);
      int drawn = DrawnTable.end(lines, i);
      if (table != null) {
        blocks.add(inForce(table.table().build(ofTable())));
        i = table.end() - 1;
      } else if (drawn > i) {
        blocks.add(inForce(DrawnTable.of(lines.subList(i, drawn), ofTable())));
        i = drawn - 1;
      } else {
        if (counted[i]) flush(0);
        line(lines.get(i).replace('\f', ' '));
      }
    }
    flush(0);
  }

  private static boolean inCapitals(List<String> lines) {
    List<String> worded =
        lines.stream()
            .filter(l -> l.chars().filter(Character::isLetter).count() >= WORDED)
            .toList();
    long capital = worded.stream().filter(l -> l.chars().noneMatch(Character::isLowerCase)).count();
    return worded.size() >= FEWEST && capital * 3 >= worded.size() * 2L;
  }

  /** The origin of a table that follows what is pending. */
  private Origin ofTable() {
    flush(0);
    return new Origin(document, null, null, null, ++ordinal, null, null);
  }

  /** The table without words that are struck through. */
  private Table inForce(Table table) {
    if (!markdown) return table;
    List<Table.Row> rows = new ArrayList<>();
    for (Table.Row row : table.rows()) {
      List<Table.Cell> cells = new ArrayList<>();
      for (Table.Cell cell : row.cells()) {
        MarkedText words = MarkdownStrikes.of(cell.text());
        gaps.add(table.origin(cell), words);
        String left = CleanText.of(words.raw());
        if (!left.isEmpty()) cells.add(words.isCut() ? cell.withText(left) : cell);
      }
      if (!cells.isEmpty()) rows.add(row.withCells(cells));
    }
    return table.withRows(rows);
  }

  private void line(String line) {
    Matcher hashes = HASHES.matcher(line);
    Matcher underline = UNDERLINE.matcher(line);
    if (line.isBlank()) {
      flush(0);
    } else if (markdown && hashes.matches()) {
      flush(0);
      pending.add(hashes.group(2));
      flush(hashes.group(1).length());
    } else if (pending.size() == 1
        && underline.matches()
        && (framed || !LineKind.opensItem(pending.get(0)))) {
      flush(line.strip().startsWith("=") ? 1 : 2);
      framed = false;
    } else if (RULE.matcher(line).matches()) {
      flush(0);
      framed = true;
    } else {
      if (opensParagraph(line)) flush(0);
      framed &= pending.isEmpty() && line.length() <= LONGEST_TITLE;
      pending.add(line);
      // "Glass mosaic, pearl [WC-14]": the mark at its end ends an item.
      if (CLOSED_BY_MARK.matcher(line).find()) flush(0);
    }
  }

  private boolean opensParagraph(String line) {
    if (pending.isEmpty()) return false;
    String last = pending.get(pending.size() - 1);
    if (LineKind.opensItem(line) || MARKED.matcher(line).lookingAt()) return true;
    // "T-09  SETTING. ..." hangs out over the lines that belong to it.
    boolean hangs = indent(line) > indent(pending.get(0));
    boolean full = last.stripTrailing().length() * 4 >= width * 3;
    boolean heading = LineKind.isCapitals(last) && !(capitals && (hangs || full));
    if (heading) return true;
    if (!hangs && endsShort(last, line)) return true;
    // Line after line of "Colour: white" are separate statements, not a wrapped sentence.
    return LineKind.isKeyed(line) && !hangs && (LineKind.isKeyed(last) || last.length() < 60);
  }

  /**
   * A sentence that ends where the next word still had room on its line ends a paragraph of text
   * that was wrapped by a program.
   */
  private boolean endsShort(String last, String next) {
    if (markdown || width < NARROWEST || width > WIDEST) return false;
    String end = last.stripTrailing();
    boolean sentence = end.endsWith(".") || end.endsWith(":") || end.endsWith(";");
    String word = next.strip().split("\\s+", 2)[0];
    return sentence && end.length() + 1 + word.length() < width;
  }

  /** Blanks before the words. */
  static int indent(String line) {
    int n = 0;
    while (n < line.length() && Character.isWhitespace(line.charAt(n))) n++;
    return n;
  }

  private void flush(int heading) {
    if (pending.isEmpty()) return;
    StringBuilder joined = new StringBuilder();
    for (String line : pending) Hyphens.append(joined, line.strip());
    pending.clear();
    String whole = joined.toString();
    MarkedText marked = markdown ? MarkdownStrikes.of(whole) : new MarkedText();
    String text = CleanText.of(markdown ? marked.raw() : whole);
    if (markdown) text = EMPHASIS.matcher(text).replaceAll("$2");
    if (text.isEmpty() && !marked.isCut()) return;
    Origin origin = new Origin(document, null, null, null, ++ordinal, null, text);
    gaps.add(origin, marked);
    if (text.isEmpty()) return;
    blocks.add(new Paragraph(origin, "", heading, -1, text, Region.BODY));
  }
}
