package clearbed.recognise.schedule.card;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Goes down the rows of a grid of cards. */
final class CardRows {
  /** Longer lines head no part of a card. */
  private static final int LONGEST_PART = 60;

  /** A heading of columns stands in one of the first rows. */
  private static final int FIRST_ROWS = 3;

  private static final Pattern COUNTED =
      Pattern.compile("^(?:\\d{1,2}(?:\\.\\d{1,2})*|\\p{L})[.)]?\\s");

  private final Table table;
  private final LabelColumns labels;
  private final LabelColumns.Names names;
  private final Vocabulary vocabulary;

  /** True where marks stand over the cards, and not beside "Item" or "Code". */
  private final boolean titled;

  private final TreeSet<Integer> columns = new TreeSet<>();

  private final List<Table.Row> above = new ArrayList<>();
  private final List<Table.Row> below = new ArrayList<>();
  private final List<Table.Cell> context = new ArrayList<>();

  /** What heads the columns of values, by column. */
  private final Map<Integer, String> heads = new HashMap<>();

  CardRows(Table table, LabelColumns labels, LabelColumns.Names names, Vocabulary vocabulary) {
    this.table = table;
    this.labels = labels;
    this.names = names;
    this.vocabulary = vocabulary;
    for (Table.Row row : table.rows()) columns.addAll(titles(row).keySet());
    this.titled = !columns.isEmpty();
    if (titled) return;
    boolean beside = false;
    boolean any = false;
    for (Table.Row row : table.rows()) {
      TreeSet<Integer> marked = new TreeSet<>(marks(row).keySet());
      any |= !marked.isEmpty();
      if (marked.size() < 2) continue;
      beside = true;
      columns.addAll(marked);
    }
    if (any && !beside) columns.add(labels.at().get(0));
  }

  /** The columns of names over which, or in which, marks stand. */
  TreeSet<Integer> titledColumns() {
    return columns;
  }

  /** Marks side by side behind one name are the heading of a turned schedule. */
  boolean isMarkedAcross() {
    for (Table.Row row : table.rows().subList(0, Math.min(table.rows().size(), FIRST_ROWS)))
      for (int label : labels.at())
        if (values(row, label).stream().filter(c -> mark(c) != null).count() > 1) return true;
    return false;
  }

  /** True of "Item | Was | Now": what was before is said of no tile. */
  boolean tellsChanges() {
    return table.rows().stream()
        .limit(FIRST_ROWS)
        .flatMap(row -> row.cells().stream())
        .anyMatch(cell -> vocabulary.list("schedule.former").matches(LabelColumns.words(cell)));
  }

  /** The titles of cards in a row, by the column of names that they stand over. */
  private TreeMap<Integer, Table.Cell> titles(Table.Row row) {
    TreeMap<Integer, Table.Cell> out = new TreeMap<>();
    int first = labels.at().get(0);
    if (labels.first() < first) {
      Table.Cell before = own(row, labels.first());
      if (before != null && title(before) != null) out.put(first, before);
    }
    for (int label : labels.at()) {
      Table.Cell cell = own(row, label);
      CardTitle title = cell == null || out.containsKey(label) ? null : title(cell);
      if (title != null && (title.isAlone() || values(row, label).isEmpty())) out.put(label, cell);
    }
    return out;
  }

  /** Marks beside "Item" or "Code", by the column of these names. */
  private TreeMap<Integer, Table.Cell> marks(Table.Row row) {
    TreeMap<Integer, Table.Cell> out = new TreeMap<>();
    for (int label : labels.at()) {
      Table.Cell name = own(row, label);
      List<Table.Cell> values = values(row, label);
      if (name == null || values.size() != 1 || mark(values.get(0)) == null) continue;
      String words = LabelColumns.words(name);
      // "ARCH. TAG" is a tag as well.
      String last = words.substring(words.lastIndexOf(' ') + 1);
      if (HeadingWords.isOfTags(vocabulary, words) || HeadingWords.isOfTags(vocabulary, last))
        out.put(label, values.get(0));
    }
    return out;
  }

  private CardTitle title(Table.Cell cell) {
    return CardTitle.of(cell.text(), vocabulary);
  }

  private CardTitle mark(Table.Cell cell) {
    CardTitle title = title(cell);
    return title != null && title.isAlone() ? title : null;
  }

  private static Table.Cell own(Table.Row row, int column) {
    Table.Cell cell = row.at(column);
    return cell != null && cell.column() == column && cell.hasOwnWords() ? cell : null;
  }

  private List<Table.Cell> values(Table.Row row, int label) {
    int end = labels.endOf(label);
    return row.cells().stream()
        .filter(c -> c.column() > label && c.column() < end && c.hasOwnWords())
        .toList();
  }

  private Card.Said said(Table.Cell cell) {
    return Card.Said.of(table, cell);
  }

  /** The column over which the marks stand of what a column of names is of. */
  private int owner(int label) {
    Integer owner = columns.floor(label);
    return owner != null ? owner : columns.isEmpty() ? labels.at().get(0) : columns.first();
  }

  /** Column behind the last that belongs to an owner. */
  private int endOf(int owner) {
    Integer next = columns.higher(owner);
    return next == null ? labels.end() : next;
  }

  /**
   * Gives each row to the cards that it is of.
   *
   * @param builders by the column of names that their marks stand over
   */
  void into(Map<Integer, CardBuilder> builders) {
    Map<Integer, List<Integer>> labelsOf = new TreeMap<>();
    for (int label : labels.at())
      labelsOf.computeIfAbsent(owner(label), any -> new ArrayList<>()).add(label);
    for (Table.Row row : table.rows()) {
      TreeMap<Integer, Table.Cell> marks = titled ? titles(row) : new TreeMap<>();
      if (!titled) marks(row).forEach((label, cell) -> marks.putIfAbsent(owner(label), cell));
      List<Table.Cell> left = new ArrayList<>();
      labelsOf.forEach(
          (owner, own) -> {
            CardBuilder builder = builders.get(owner);
            Table.Cell mark = marks.get(owner);
            if (mark != null && opens(builder, row, mark, owner)) return;
            for (int label : own) pair(builder, row, label, mark, left);
          });
      boolean begun = builders.values().stream().anyMatch(CardBuilder::isOpen);
      if (!left.isEmpty()) (begun ? below : above).add(row.withCells(left));
      Table.Cell counter = labels.first() < labels.at().get(0) ? own(row, labels.first()) : null;
      if (counter != null && !marks.containsValue(counter)) context.add(counter);
    }
  }

  /** Begins a card; true where the row is its title, and nothing of what it says. */
  private boolean opens(CardBuilder builder, Table.Row row, Table.Cell cell, int owner) {
    CardTitle title = title(cell);
    Card.Said mark = said(cell).withText(title.mark());
    if (!titled) {
      if (!builder.isOf(title.mark())) builder.open(mark, List.of());
      return false;
    }
    Table.Cell name = own(row, owner);
    boolean before = cell.column() < owner;
    boolean goesOn =
        before
            && name != null
            && (names.are(LabelColumns.words(name)) || builder.isOf(title.mark()));
    if (goesOn && builder.isOf(title.mark())) return false;
    List<Card.Said> words = new ArrayList<>();
    if (!title.isAlone()) words.add(said(cell).withText(title.rest()));
    for (Table.Cell other : row.cells()) {
      boolean beside = other.column() > cell.column() && other.column() < endOf(owner);
      if (!goesOn && beside && other.hasOwnWords()) words.add(said(other));
    }
    builder.open(mark, words);
    return !goesOn;
  }

  private void pair(
      CardBuilder builder, Table.Row row, int label, Table.Cell mark, List<Table.Cell> left) {
    Table.Cell name = own(row, label);
    List<Table.Cell> values = values(row, label);
    if (name == null && values.isEmpty()) return;
    if (mark != null && values.contains(mark)) {
      if (name != null) context.add(name);
      return;
    }
    if (!builder.isOpen()) {
      if (name != null) left.add(name);
      left.addAll(values);
      return;
    }
    if (name == null) {
      for (Table.Cell value : values) builder.more(said(value));
      return;
    }
    String words = LabelColumns.words(name);
    boolean known = names.are(words);
    boolean over = isPartRow(row) || !known;
    if (values.isEmpty() && known) builder.part(words);
    if (values.isEmpty() && over) {
      boolean part = words.length() <= LONGEST_PART && !name.text().strip().endsWith(".");
      // "GT-1" over "Glass mosaic, steam room".
      boolean describes = part && titled && builder.isEmpty() && !COUNTED.matcher(words).find();
      if (describes && !isPartRow(row)) {
        builder.more(said(name));
        return;
      }
      if (part) builder.part(words);
      (part ? context : left).add(name);
      return;
    }
    if (!known && isHeading(name, values)) {
      for (Table.Cell value : values) heads.put(value.column(), LabelColumns.words(value));
      context.add(name);
      context.addAll(values);
      return;
    }
    Card.Said of = said(name).withText(words);
    if (values.isEmpty()) builder.add(of, words, new Card.Said("", "", table.origin(name)));
    else values(builder, of, words, values);
  }

  /** "PRODUCT | | INSTALLATION |" over the names and values of both. */
  private boolean isPartRow(Table.Row row) {
    long filled = labels.at().stream().filter(label -> own(row, label) != null).count();
    return filled > 1 && labels.at().stream().allMatch(label -> values(row, label).isEmpty());
  }

  private void values(CardBuilder builder, Card.Said name, String words, List<Table.Cell> values) {
    Card.Said first = said(values.get(0));
    List<Table.Cell> others = new ArrayList<>();
    for (Table.Cell value : values.subList(1, values.size())) {
      if (heads.containsKey(value.column())) others.add(value);
      else first = first.withText(first.text() + "; " + value.text().strip());
    }
    builder.add(name, words, first);
    for (Table.Cell value : others) {
      String head = heads.get(value.column());
      builder.add(name, LabelColumns.measured(words, head, vocabulary), said(value));
    }
  }

  /** "Layer | Material | Thickness" over what stands below. */
  private boolean isHeading(Table.Cell name, List<Table.Cell> values) {
    return values.size() > 1
        && name.text().chars().noneMatch(Character::isDigit)
        && values.stream().allMatch(c -> c.text().chars().noneMatch(Character::isDigit))
        && values.stream().anyMatch(c -> names.are(LabelColumns.words(c)));
  }

  List<Table.Row> above() {
    return above;
  }

  List<Table.Row> below() {
    return below;
  }

  /** Names of columns and of parts, and what counts the rows. */
  List<Card.Said> context() {
    return context.stream().map(this::said).toList();
  }
}
