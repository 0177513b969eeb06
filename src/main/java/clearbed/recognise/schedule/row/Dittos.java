package clearbed.recognise.schedule.row;

import clearbed.model.document.Table;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Cells that repeat the one above: "ditto", "Ditto, mirror back". */
final class Dittos {
  private static final Pattern BEHIND_DITTO =
      Pattern.compile("\\s*(?:[,;:-]|but\\b)\\s*(?=\\S)", Pattern.CASE_INSENSITIVE);

  private static final String STROKES = "-\u2013\u2014";

  /** The strokes around a word: "- do -". */
  private static final Pattern BETWEEN_RULES =
      Pattern.compile("^[-\u2013\u2014\\s]+|[-\u2013\u2014\\s]+$");

  private final Vocabulary vocabulary;

  Dittos(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** The row with every ditto mark outside the tag column replaced by what it repeats. */
  Table.Row repeated(Table.Row row, Table.Row above, int tagColumn) {
    if (above == null || row.cells().stream().noneMatch(c -> is(c) || behind(c) != null))
      return row;
    List<Table.Cell> cells = new ArrayList<>();
    for (Table.Cell cell : row.cells()) {
      Table.Cell from = above.at(cell.column());
      String more = behind(cell);
      boolean repeats = cell.column() != tagColumn && (is(cell) || more != null) && from != null;
      cells.add(
          repeats
              ? new Table.Cell(
                  cell.column(),
                  cell.columnSpan(),
                  false,
                  more == null ? from.text() : from.text() + ", " + more,
                  from.remark(),
                  from.firstRow(),
                  from.page())
              : cell);
    }
    return row.withCells(cells);
  }

  boolean is(Table.Cell cell) {
    String text = PlainText.of(cell.text()).trim();
    if (vocabulary.list("ditto").matches(text)) return true;
    // Most cells begin with no stroke and end with none.
    if (!isRuled(text)) return false;
    return vocabulary.list("ditto").matches(BETWEEN_RULES.matcher(text).replaceAll(""));
  }

  private static boolean isRuled(String text) {
    return !text.isEmpty()
        && (STROKES.indexOf(text.charAt(0)) >= 0
            || STROKES.indexOf(text.charAt(text.length() - 1)) >= 0);
  }

  /** "Ditto, mirror back": what is said beside the repetition; null when nothing is. */
  String behind(Table.Cell cell) {
    String text = PlainText.of(cell.text()).trim();
    Phrases.Hit hit = vocabulary.list("ditto").first(text);
    if (hit == null || hit.start() > 0) return null;
    String rest = text.substring(hit.end());
    Matcher more = BEHIND_DITTO.matcher(rest);
    return more.lookingAt() ? rest.substring(more.end()) : null;
  }
}
