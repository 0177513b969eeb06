package clearbed.read.text;

import clearbed.model.Block;
import clearbed.model.Document.Gap;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import clearbed.model.Paragraph.Region;
import clearbed.model.Table;
import clearbed.read.layout.AlignedTables;
import clearbed.read.layout.CleanText;
import clearbed.read.layout.Gaps;
import clearbed.read.layout.Hyphens;
import clearbed.read.layout.LineKind;
import clearbed.read.layout.MarkedText;
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

  private final String document;
  private final boolean markdown;
  private final List<Block> blocks = new ArrayList<>();
  private final Gaps gaps = new Gaps();
  private final List<String> pending = new ArrayList<>();
  private int ordinal;
  private int width;

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
    List<String> lines = DashedColumns.drawn(written);
    width = lines.stream().mapToInt(line -> line.stripTrailing().length()).max().orElse(0);
    SpacedTables spaced = new SpacedTables(lines);
    for (int i = 0; i < lines.size(); i++) {
      AlignedTables.Found table = spaced.at(i);
      int drawn = DrawnTable.end(lines, i);
      if (table != null) {
        blocks.add(inForce(table.table().build(ofTable())));
        i = table.end() - 1;
      } else if (drawn > i) {
        blocks.add(inForce(DrawnTable.of(lines.subList(i, drawn), ofTable())));
        i = drawn - 1;
      } else {
        line(lines.get(i).replace('\f', ' '));
      }
    }
    flush(0);
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
      if (!cells.isEmpty()) rows.add(new Table.Row(row.number(), cells, row.hidden()));
    }
    return new Table(table.origin(), rows, table.sheet(), table.turned());
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
    } else if (pending.size() == 1 && underline.matches() && !LineKind.opensItem(pending.get(0))) {
      flush(line.strip().startsWith("=") ? 1 : 2);
    } else if (RULE.matcher(line).matches()) {
      flush(0);
    } else {
      if (opensParagraph(line)) flush(0);
      pending.add(line);
    }
  }

  private boolean opensParagraph(String line) {
    if (pending.isEmpty()) return false;
    String last = pending.get(pending.size() - 1);
    if (LineKind.opensItem(line) || LineKind.isCapitals(last)) return true;
    if (endsShort(last, line)) return true;
    // Line after line of "Colour: white" are separate statements, not a wrapped sentence.
    boolean hangs = indent(line) > indent(pending.get(0));
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

  private static int indent(String line) {
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
