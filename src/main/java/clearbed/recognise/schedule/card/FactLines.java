package clearbed.recognise.schedule.card;

import clearbed.model.document.Table;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.UnitWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * A line for each fact, as data are handed over: "GL-1 | Size | 1 x 2 | in", "GL-1 | Mortar | ANSI
 * A118.15 | | white". The lines of a mark are its card.
 */
final class FactLines {
  /** Fewer lines to a mark, in the mean, are no card. */
  private static final int FEWEST = 3;

  private static final int FEWEST_MARKS = 2;

  /** Mark, name, value, unit and a remark or two. */
  private static final int WIDEST = 7;

  private static final Pattern UNIT =
      Pattern.compile("(?:" + UnitWords.PATTERN + ")\\.?", Pattern.CASE_INSENSITIVE);

  private final Table table;
  private final LabelColumns.Names names;
  private final Vocabulary vocabulary;

  private FactLines(Table table, LabelColumns.Names names, Vocabulary vocabulary) {
    this.table = table;
    this.names = names;
    this.vocabulary = vocabulary;
  }

  static CardFinder.Found of(Table table, LabelColumns.Names names, Vocabulary vocabulary) {
    return new FactLines(table, names, vocabulary).found();
  }

  private CardFinder.Found found() {
    Set<Integer> columns = new TreeSet<>();
    for (Table.Row row : table.rows()) {
      for (Table.Cell cell : row.cells()) if (cell.hasOwnWords()) columns.add(cell.column());
      if (columns.size() > WIDEST) return CardFinder.Found.NONE;
    }
    if (columns.size() < 3) return CardFinder.Found.NONE;
    List<Integer> at = new ArrayList<>(columns);
    return isOfFacts(at.get(0), at.get(1))
        ? found(at.get(0), at.get(1), at.subList(2, at.size()))
        : CardFinder.Found.NONE;
  }

  /** Marks that come again line after line, beside names no two of which say the same of one. */
  private boolean isOfFacts(int marks, int labels) {
    Set<String> marked = new LinkedHashSet<>();
    int lines = 0;
    int known = 0;
    for (Table.Row row : table.rows()) {
      Table.Cell mark = row.at(marks);
      Table.Cell name = row.at(labels);
      if (!isFact(mark, name)) continue;
      lines++;
      marked.add(mark.text().strip());
      if (names.are(LabelColumns.words(name))) known++;
    }
    return marked.size() >= FEWEST_MARKS
        && lines >= FEWEST * marked.size()
        && known * 3 >= lines * 2
        && lines * 4 >= table.rows().size() * 3;
  }

  private boolean isFact(Table.Cell mark, Table.Cell name) {
    return mark != null && name != null && Tags.isMark(mark.text().strip(), vocabulary);
  }

  private CardFinder.Found found(int marks, int labels, List<Integer> values) {
    Map<String, Card> cards = new LinkedHashMap<>();
    List<Card.Said> context = new ArrayList<>();
    List<Table.Row> above = new ArrayList<>();
    List<Table.Row> below = new ArrayList<>();
    for (Table.Row row : table.rows()) {
      Table.Cell mark = row.at(marks);
      Table.Cell name = row.at(labels);
      if (!isFact(mark, name)) {
        if (row.cells().stream().filter(Table.Cell::hasOwnWords).count() > 2)
          for (Table.Cell cell : row.cells()) context.add(said(cell));
        else (cards.isEmpty() ? above : below).add(row);
        continue;
      }
      Card card =
          cards.computeIfAbsent(
              mark.text().strip(), any -> new Card(said(mark), List.of(), new ArrayList<>()));
      if (!card.mark().at().equals(table.origin(mark))) context.add(said(mark));
      Card.Said of = said(name).withText(LabelColumns.words(name));
      card.pairs().add(new Card.Pair(of, of.text(), value(row, values, of)));
    }
    return new CardFinder.Found(List.copyOf(cards.values()), above, below, context);
  }

  /** The value with its unit, and what is remarked on it. */
  private Card.Said value(Table.Row row, List<Integer> columns, Card.Said name) {
    Card.Said out = null;
    for (int column : columns) {
      Table.Cell cell = row.at(column);
      if (cell == null || !cell.hasOwnWords()) continue;
      String words = cell.text().strip();
      if (out == null) out = said(cell);
      else if (UNIT.matcher(PlainText.line(words)).matches())
        out = out.withText(out.text() + " " + words);
      else out = out.withText(out.text() + ", " + words);
    }
    return out == null ? new Card.Said("", "", name.at()) : out;
  }

  private Card.Said said(Table.Cell cell) {
    return Card.Said.of(table, cell);
  }
}
