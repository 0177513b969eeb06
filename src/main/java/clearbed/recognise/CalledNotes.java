package clearbed.recognise;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Notes that the rows of a schedule call by their numbers, "Notes 1, 2" under "Remarks": what such
 * a note says is said of the tiles that call it, and of no others.
 */
final class CalledNotes {
  private static final Pattern CALLS =
      Pattern.compile(
          "(?:see\\s+)?(?:(?:key)?notes?|nos?|rem(?:ark)?s?)?[.:]?\\s*#?\\d{1,2}(?:(?:\\s*(?:[,;&/+]|and)\\s*|\\s+)(?:(?:key)?notes?\\s*)?#?\\d{1,2})*\\.?",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern NUMBER = Pattern.compile("\\d{1,2}");

  private static final Pattern NOTE =
      Pattern.compile(
          "(?i:(?:key)?note\\s*)?#?\\(?(\\d{1,2})(?:[.):]|\\s)\\s*(\\S.*)", Pattern.DOTALL);

  private static final Pattern ALONE =
      Pattern.compile("(?i:(?:key)?note\\s*)?#?\\(?(\\d{1,2})[.):]*");

  /** A cell that calls notes, in characters. */
  private static final int LONGEST_CALL = 60;

  /** Headings stand among so many rows from the top of a table. */
  private static final int SEARCHED = 60;

  /** Rows of one column that call notes. */
  private static final int FEWEST = 2;

  private static final int WORDS = 2;

  /**
   * A document read so.
   *
   * @param calls the cells that call notes, each by its place; they say nothing else
   */
  record Read(Document document, List<Origin> calls) {}

  /** Where a block of the document, or a row of it, says the words of a note. */
  private record NoteAt(int block, int row, int number) {}

  private final Vocabulary vocabulary;
  private final List<Block> blocks;
  private final List<Origin> calls = new ArrayList<>();
  private final Map<NoteAt, Set<String>> called = new LinkedHashMap<>();

  private CalledNotes(Vocabulary vocabulary, Document document) {
    this.vocabulary = vocabulary;
    this.blocks = new ArrayList<>(document.blocks());
  }

  static Read of(Document document, Vocabulary vocabulary) {
    CalledNotes notes = new CalledNotes(vocabulary, document);
    List<List<Integer>> columns = new ArrayList<>();
    Set<Integer> numbers = new TreeSet<>();
    for (Block block : document.blocks()) {
      if (!(block instanceof Table table)) continue;
      List<Integer> calling = notes.columns(table);
      columns.add(calling);
      for (int column : calling) numbers.addAll(notes.calls(table, column).keySet());
    }
    if (numbers.isEmpty()) return new Read(document, List.of());
    numbers.forEach(notes::part);
    Iterator<List<Integer>> next = columns.iterator();
    for (int i = 0; i < notes.blocks.size(); i++)
      if (notes.blocks.get(i) instanceof Table table) notes.table(i, table, next.next());
    if (notes.calls.isEmpty()) return new Read(document, List.of());
    notes.called.forEach(notes::limit);
    return new Read(document.withBlocks(notes.blocks), notes.calls);
  }

  private void table(int at, Table table, List<Integer> columns) {
    for (int column : columns) {
      Map<Integer, Set<String>> numbers = calls(table, column);
      Map<Integer, NoteAt> notes = notes(at, table, numbers.keySet());
      if (notes.isEmpty()) continue;
      numbers.forEach(
          (number, tags) ->
              called.computeIfAbsent(notes.get(number), any -> new LinkedHashSet<>()).addAll(tags));
      for (Table.Row row : table.rows())
        if (calls(row, column)) calls.add(table.origin(row.at(column)));
      blocks.set(at, without((Table) blocks.get(at), column));
    }
  }

  private boolean calls(Table.Row row, int column) {
    Table.Cell cell = row.at(column);
    return cell != null && isCall(cell) && !tag(row, column).isEmpty();
  }

  /** The marks that call each number in a column. */
  private Map<Integer, Set<String>> calls(Table table, int column) {
    Map<Integer, Set<String>> out = new TreeMap<>();
    for (Table.Row row : table.rows()) {
      if (!calls(row, column)) continue;
      Matcher m = NUMBER.matcher(row.at(column).text());
      while (m.find())
        out.computeIfAbsent(Integer.valueOf(m.group()), any -> new LinkedHashSet<>())
            .add(tag(row, column));
    }
    return out;
  }

  /** "41 White mortar. 42 Gray mortar.": lines of a page that were taken for one paragraph. */
  private void part(int number) {
    Pattern within = Pattern.compile("(?<=[.;])\\s+(?=" + number + "[.)]?\\s+\\p{Lu})");
    for (int i = 0; i < blocks.size(); i++) {
      if (!(blocks.get(i) instanceof Paragraph p) || number(p.label(), p.text()) == 0) continue;
      String[] parts = within.split(p.text(), 2);
      if (parts.length < 2) continue;
      blocks.set(i, saying(p, parts[0]));
      blocks.add(i + 1, saying(p, parts[1]));
      return;
    }
  }

  private static Paragraph saying(Paragraph p, String words) {
    return new Paragraph(
        p.origin().withText(words), p.label(), p.headingLevel(), p.listLevel(), words, p.region());
  }

  /** Those under a heading for notes in which all that marked tiles have are numbers. */
  private List<Integer> columns(Table table) {
    List<Table.Cell> headings = headings(table);
    // Most tables call nothing.
    if (headings.isEmpty()) return List.of();
    Map<Integer, Integer> found = new TreeMap<>();
    Set<Integer> others = new TreeSet<>();
    for (Table.Row row : table.rows()) {
      Table.Cell mark = mark(row);
      if (mark == null) continue;
      for (Table.Cell cell : row.cells()) {
        if (!cell.hasOwnWords() || cell.column() <= mark.column()) continue;
        if (isCall(cell)) found.merge(cell.column(), 1, Integer::sum);
        else if (!vocabulary.list("empty").matches(PlainText.line(cell.text()).strip()))
          others.add(cell.column());
      }
    }
    return found.keySet().stream()
        .filter(column -> found.get(column) >= FEWEST && !others.contains(column))
        .filter(column -> headings.stream().anyMatch(c -> c.covers(column)))
        .toList();
  }

  /** Cells of the first rows that say of what is below them that it calls notes. */
  private List<Table.Cell> headings(Table table) {
    Phrases calling = vocabulary.list("schedule.calling");
    return table.rows().stream()
        .limit(SEARCHED)
        .flatMap(row -> row.cells().stream())
        .filter(cell -> calling.matches(PlainText.line(cell.text()).strip()))
        .toList();
  }

  private static boolean isCall(Table.Cell cell) {
    return cell.hasOwnWords()
        && cell.text().length() <= LONGEST_CALL
        && CALLS.matcher(PlainText.line(cell.text()).strip()).matches();
  }

  /** The mark that a row begins with, before a column; empty where it has none. */
  private String tag(Table.Row row, int column) {
    Table.Cell mark = mark(row);
    return mark == null || mark.column() >= column ? "" : firstLine(mark);
  }

  /** "GT-5" over what the tile is. */
  private static String firstLine(Table.Cell cell) {
    return PlainText.line(cell.firstLine()).strip();
  }

  /** The first cell of a row that is a mark and no number of a note, or null. */
  private Table.Cell mark(Table.Row row) {
    for (Table.Cell cell : row.cells()) {
      String text = firstLine(cell);
      if (text.length() > LONGEST_CALL) continue;
      if (Tags.isMark(text, vocabulary) && !ALONE.matcher(text).matches()) return cell;
    }
    return null;
  }

  /** The notes that have all these numbers, each one below the other; the nearest such list. */
  private Map<Integer, NoteAt> notes(int at, Table table, Set<Integer> numbers) {
    List<Map<Integer, NoteAt>> lists = new ArrayList<>();
    Map<Integer, NoteAt> list = new LinkedHashMap<>();
    int last = 0;
    for (NoteAt note : candidates()) {
      if (note.block() == at && !isBelow(table, note.row())) continue;
      if (note.number() <= last || list.isEmpty()) lists.add(list = new LinkedHashMap<>());
      list.putIfAbsent(note.number(), note);
      last = note.number();
    }
    Map<Integer, NoteAt> before = Map.of();
    for (Map<Integer, NoteAt> found : lists) {
      if (!found.keySet().containsAll(numbers)) continue;
      int first = found.values().iterator().next().block();
      if (first >= at) return found;
      before = found;
    }
    return before;
  }

  /** No notes are among the tiles themselves. */
  private boolean isBelow(Table table, int row) {
    return mark(table.rows().get(row)) == null;
  }

  private List<NoteAt> candidates() {
    List<NoteAt> out = new ArrayList<>();
    for (int i = 0; i < blocks.size(); i++) {
      if (blocks.get(i) instanceof Paragraph p) {
        int number = number(p.label(), p.text());
        if (number > 0) out.add(new NoteAt(i, -1, number));
      } else if (blocks.get(i) instanceof Table table) {
        for (int r = 0; r < table.rows().size(); r++) {
          List<Table.Cell> filled = filled(table.rows().get(r));
          if (filled.isEmpty() || filled.size() > 2) continue;
          String label = filled.size() == 2 ? filled.get(0).text().strip() : "";
          int number = number(label, filled.get(filled.size() - 1).text());
          if (number > 0) out.add(new NoteAt(i, r, number));
        }
      }
    }
    return out;
  }

  private static List<Table.Cell> filled(Table.Row row) {
    return row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
  }

  /** Of a note, by its label or as typed before its words; 0 where it is none. */
  private static int number(String label, String text) {
    Matcher alone = ALONE.matcher(label.strip());
    if (alone.matches()) return isSaying(text) ? Integer.parseInt(alone.group(1)) : 0;
    if (!label.isBlank()) return 0;
    Matcher m = NOTE.matcher(text.strip());
    return m.matches() && isSaying(m.group(2)) ? Integer.parseInt(m.group(1)) : 0;
  }

  private static boolean isSaying(String words) {
    return words.strip().split("\\s+").length >= WORDS;
  }

  /** A note that names tiles itself is of those. */
  private void limit(NoteAt note, Set<String> tags) {
    String of = String.join(", ", tags) + ": ";
    if (blocks.get(note.block()) instanceof Paragraph p) {
      String words = p.text().strip();
      boolean labelled = !p.label().isBlank();
      Matcher m = NOTE.matcher(words);
      String said = labelled || !m.matches() ? words : m.group(2);
      if (!TagFinder.tags(said).isEmpty()) return;
      blocks.set(
          note.block(),
          new Paragraph(p.origin(), p.label(), 0, p.listLevel(), of + said, p.region()));
    } else if (blocks.get(note.block()) instanceof Table table) {
      Table.Row row = table.rows().get(note.row());
      List<Table.Cell> filled = filled(row);
      Table.Cell cell = filled.get(filled.size() - 1);
      Matcher m = NOTE.matcher(cell.text().strip());
      boolean typed = filled.size() == 1 && m.matches();
      String said = typed ? m.group(2) : cell.text().strip();
      if (!TagFinder.tags(said).isEmpty()) return;
      String number = typed ? m.group(1) + ". " : "";
      List<Table.Cell> cells = new ArrayList<>(row.cells());
      cells.replaceAll(c -> c.column() == cell.column() ? c.withText(number + of + said) : c);
      List<Table.Row> rows = new ArrayList<>(table.rows());
      rows.set(note.row(), row.withCells(cells));
      blocks.set(note.block(), table.withRows(rows));
    }
  }

  /** The table without the numbers that call notes. */
  private Table without(Table table, int column) {
    List<Table.Row> rows = new ArrayList<>();
    for (Table.Row row : table.rows()) {
      boolean calls = calls(row, column);
      List<Table.Cell> cells =
          row.cells().stream().filter(c -> !(calls && c.column() == column)).toList();
      rows.add(row.withCells(cells));
    }
    return table.withRows(rows);
  }
}
