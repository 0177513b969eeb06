package clearbed.recognise.lesson;

import clearbed.model.document.Table;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Columns of codes of an office's own, no two alike, beside descriptions of which some are glass
 * tile.
 */
final class CodeColumns {
  /** "093023.A1", "B1-a", "24.GLT.01": letters and figures. */
  private static final Pattern CODE =
      Pattern.compile(
          "(?=.{2,14}$)(?=.*\\p{L})(?=.*\\d)[\\p{L}\\d]{1,8}(?:[-./_][\\p{L}\\d]{1,6}){0,3}");

  /** "gt-xi", "R-α", "cs.i": letters in two parts. */
  private static final Pattern LETTERS = Pattern.compile("(?=.{3,8}$)\\p{L}{1,3}[-./]\\p{L}{1,4}");

  /** "Tile A", "BLUE 3": a word and what counts it. */
  private static final Pattern COUNTED =
      Pattern.compile("(?=.{3,16}$)\\p{Lu}\\p{L}{2,10} (?:\\p{Lu}|\\d{1,3}\\p{Ll}?)");

  private static final Pattern NUMBER = Pattern.compile("\\d{3,6}");

  /** "300x600", "12mm", "1st" are no codes. */
  private static final Pattern MEASURE =
      Pattern.compile("(?i)\\d.*?(?:x.*|mm|cm|m|m2|in|ft|sf|lf|st|nd|rd|th|k|kg)");

  private static final int COLUMNS = 8;

  /** Rows in which codes are looked for. */
  private static final int MOST_ROWS = 200;

  /** Fewer might be words of any kind. */
  private static final int FEWEST = 2;

  /** Of so many cells one may be something else: a remark, a total. */
  private static final int ODD_ONE = 5;

  private final Vocabulary vocabulary;

  /**
   * The first rows of a table, which tell.
   *
   * @param title over the table, or empty
   */
  record Grid(List<Table.Row> rows, String title) {}

  CodeColumns(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * The codes of the first column that has such and nothing else, but for marks of known forms.
   *
   * @param alike tables of the same headings
   * @param named short names of glass tile by the legends of the document
   */
  List<String> in(List<Grid> alike, Set<String> named) {
    List<CodedLine> lines = new ArrayList<>();
    List<Table.Row> rows = new ArrayList<>();
    for (Grid grid : alike) {
      if (rows.size() > MOST_ROWS) break;
      // What heads the first heads all.
      List<Table.Row> own = grid.rows().subList(rows.isEmpty() ? 0 : 1, grid.rows().size());
      rows.addAll(own);
      lines.addAll(lines(own, isOnGlass(grid.title())));
    }
    for (int column = 0; column < COLUMNS; column++) {
      List<String> codes = codes(lines, hasProperties(rows, column), column, named);
      if (codes.size() >= FEWEST)
        return codes.stream().filter(code -> !Tags.isMark(code, vocabulary)).toList();
    }
    return List.of();
  }

  /**
   * A row of several cells.
   *
   * @param under true below a line of its own on glass tile: "200 series: glass mosaic"
   */
  private record CodedLine(Table.Row row, boolean under) {}

  /** "Tile schedule B: glass", and not "Glass and ceramic tile". */
  private boolean isOnGlass(String title) {
    boolean glass = vocabulary.glass().describesTile(title);
    return (glass || TileWords.tile(title) && vocabulary.glass().isNamed(title))
        && !vocabulary.glass().namesOtherTile(title);
  }

  private List<CodedLine> lines(List<Table.Row> rows, boolean onGlass) {
    List<CodedLine> out = new ArrayList<>();
    boolean under = onGlass;
    for (Table.Row row : rows) {
      List<Table.Cell> filled = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
      if (filled.size() == 1) under = vocabulary.glass().describesTile(filled.get(0).text());
      if (filled.size() >= FEWEST) out.add(new CodedLine(row, under));
    }
    return out;
  }

  /**
   * @param properties true where a number may be the code of one thing over several rows
   */
  private List<String> codes(
      List<CodedLine> lines, boolean properties, int column, Set<String> named) {
    Set<String> codes = new LinkedHashSet<>();
    Set<String> glass = new LinkedHashSet<>();
    int others = 0;
    int again = 0;
    String last = "";
    for (CodedLine line : lines) {
      Table.Cell cell = line.row().at(column);
      if (cell == null || cell.continued() || cell.text().isBlank()) continue;
      String text = PlainText.line(cell.text()).strip();
      // One property of a tile to a row.
      boolean goesOn = text.equals(last);
      last = text;
      boolean number = properties && NUMBER.matcher(text).matches();
      if (!number && !isCode(text) && !Tags.isMark(text)) {
        // What stands over the first code is a heading.
        if (!codes.isEmpty()) others++;
        continue;
      }
      if (!codes.add(text) && !goesOn) again++;
      if (line.under() || isDescribed(line.row(), column, named)) glass.add(text);
    }
    boolean all = (others + again) * ODD_ONE <= codes.size();
    return all && glass.size() >= FEWEST ? List.copyOf(codes) : List.of();
  }

  /** "0417 | Size | ...", "0417 | Colour | ...": a property of one thing to a row. */
  private static boolean hasProperties(List<Table.Row> rows, int column) {
    int again = 0;
    String last = "";
    for (Table.Row row : rows) {
      Table.Cell cell = row.at(column);
      String text = cell == null ? "" : cell.text().strip();
      if (!text.isEmpty() && text.equals(last)) again++;
      last = text;
    }
    return again * 2 > rows.size();
  }

  private boolean isDescribed(Table.Row row, int column, Set<String> named) {
    StringBuilder words = new StringBuilder();
    for (Table.Cell cell : row.cells()) {
      boolean code = cell.column() == column;
      if (!code && vocabulary.glass().describesTileAnywhere(cell.text())) return true;
      if (!code && named.contains(cell.text().strip())) return true;
      words.append(cell.text()).append(" | ");
    }
    // "Tile B | glass"
    String all = words.toString();
    return TileWords.tile(all) && vocabulary.glass().isNamed(all);
  }

  private static boolean isCode(String text) {
    boolean code =
        CODE.matcher(text).matches()
            || LETTERS.matcher(text).matches()
            || COUNTED.matcher(text).matches();
    return code && !MEASURE.matcher(text).matches() && Citations.find(text).isEmpty();
  }
}
