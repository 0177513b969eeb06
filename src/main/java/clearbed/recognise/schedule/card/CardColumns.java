package clearbed.recognise.schedule.card;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.schedule.grid.Transposed;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Cards side by side behind one column of names, as build-ups stand: "Substrate | Concrete |
 * Board", "Finish | GT-1 Glass mosaic | PT-2 Porcelain", "Grout | Epoxy | Cement". One of the rows
 * has the marks, with what each tile is.
 */
final class CardColumns {
  private static final int MOST_ROWS = 120;
  private static final int FEWEST_NAMES = 3;
  private static final int FEWEST_CARDS = 2;
  private static final int LONGEST_PART = 60;

  private final Table table;
  private final int first;
  private final LabelColumns.Names names;
  private final Vocabulary vocabulary;

  private CardColumns(Table table, LabelColumns.Names names, Vocabulary vocabulary) {
    this.table = table;
    this.first = Transposed.first(table);
    this.names = names;
    this.vocabulary = vocabulary;
  }

  static CardFinder.Found of(Table table, LabelColumns.Names names, Vocabulary vocabulary) {
    if (table.rows().size() > MOST_ROWS) return CardFinder.Found.NONE;
    return new CardColumns(table, names, vocabulary).found();
  }

  private CardFinder.Found found() {
    // "Adhesive | C1 grey | C2 grey" has classes that look like marks.
    List<Table.Row> marked =
        table.rows().stream().filter(row -> !isOfAttribute(row) && isOfMarks(row)).toList();
    // Rooms have numbers like marks, and a row of marks alone heads a turned schedule.
    if (marked.size() != 1
        || table.rows().stream().anyMatch(row -> isOfBareMarks(row) && !isOver(row, marked.get(0))))
      return CardFinder.Found.NONE;
    List<Table.Row> named = table.rows().stream().filter(row -> name(row) != null).toList();
    long known = named.stream().filter(this::isKnown).count();
    if (known < FEWEST_NAMES || known * 5 < named.size() * 2) return CardFinder.Found.NONE;
    List<Table.Row> above = new ArrayList<>();
    List<Table.Row> below = new ArrayList<>();
    List<Card.Said> context = new ArrayList<>();
    List<Table.Row> said = new ArrayList<>();
    for (Table.Row row : table.rows()) {
      List<Table.Cell> own = row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
      if (own.isEmpty()) continue;
      if (row == marked.get(0)) {
        if (name(row) != null) context.add(said(name(row)));
        continue;
      }
      boolean names = name(row) != null && own.size() > 1;
      boolean part = own.size() == 1 && own.get(0).text().length() <= LONGEST_PART;
      if (names && (!said.isEmpty() || isKnown(row))) said.add(row);
      else if (said.isEmpty() && own.size() == 1) above.add(row);
      else if (part || said.isEmpty()) own.forEach(cell -> context.add(said(cell)));
      else below.add(row);
    }
    List<Card> cards = new ArrayList<>();
    for (Table.Cell mark : values(marked.get(0)))
      if (title(mark) != null) cards.add(card(mark, said));
    return new CardFinder.Found(cards, above, below, context);
  }

  private Card card(Table.Cell cell, List<Table.Row> said) {
    CardTitle title = title(cell);
    List<Card.Pair> pairs = new ArrayList<>();
    for (Table.Row row : said) {
      Table.Cell name = name(row);
      Table.Cell value = row.at(cell.column());
      boolean blank = value == null || !value.hasOwnWords() || value == name;
      Card.Said of = said(name).withText(LabelColumns.words(name));
      pairs.add(new Card.Pair(of, of.text(), blank ? new Card.Said("", "", of.at()) : said(value)));
    }
    List<Card.Said> words = new ArrayList<>();
    if (!title.isAlone()) words.add(said(cell).withText(title.rest()));
    return new Card(said(cell).withText(title.mark()), words, pairs);
  }

  /** True where every value opens with the mark of a tile, and most say what it is. */
  private boolean isOfMarks(Table.Row row) {
    Set<String> marks = new HashSet<>();
    int described = 0;
    for (Table.Cell cell : values(row)) {
      if (vocabulary.list("empty").matches(PlainText.line(cell.text()).strip())) continue;
      CardTitle title = title(cell);
      if (title == null || !marks.add(title.mark())) return false;
      if (!title.isAlone()) described++;
    }
    return marks.size() >= FEWEST_CARDS && described * 2 > marks.size();
  }

  private boolean isOfAttribute(Table.Row row) {
    Table.Cell name = name(row);
    Header.Column named =
        name == null ? null : HeadingWords.named(vocabulary, LabelColumns.words(name));
    return named != null && !named.describes();
  }

  private boolean isOfBareMarks(Table.Row row) {
    List<CardTitle> titles = values(row).stream().map(this::title).toList();
    return titles.size() >= FEWEST_CARDS
        && titles.stream().allMatch(title -> title != null && title.isAlone());
  }

  /** "Layer | W1 | W2" over "Finish | GT-1 Glass mosaic | PT-2 Porcelain" names the build-ups. */
  private boolean isOver(Table.Row row, Table.Row marked) {
    if (row.number() >= marked.number()) return false;
    // "Pendulum | PTV 38, slider 96" has the form of marks by chance, and not for all.
    if (values(marked).size() * 3 < values(row).size() * 2) return false;
    Set<String> letters = new HashSet<>();
    for (Table.Cell cell : values(row)) letters.add(letters(cell));
    return values(marked).stream().noneMatch(cell -> letters.contains(letters(cell)));
  }

  private String letters(Table.Cell cell) {
    CardTitle title = title(cell);
    return title == null ? "" : Tags.prefix(Tags.key(title.mark()));
  }

  private boolean isKnown(Table.Row row) {
    Table.Cell name = name(row);
    return name != null && names.are(LabelColumns.words(name));
  }

  private Table.Cell name(Table.Row row) {
    Table.Cell cell = row.at(first);
    return cell != null && cell.hasOwnWords() ? cell : null;
  }

  private List<Table.Cell> values(Table.Row row) {
    return row.cells().stream().filter(c -> c.column() > first && c.hasOwnWords()).toList();
  }

  private CardTitle title(Table.Cell cell) {
    return CardTitle.of(cell.text(), vocabulary);
  }

  private Card.Said said(Table.Cell cell) {
    return Card.Said.of(table, cell);
  }
}
