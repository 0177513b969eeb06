package clearbed.recognise.lesson;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import clearbed.recognise.vocabulary.taught.Taught;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Mortars, grouts and sealants that cells call by a letter or a number alone, "Grout | 3" beside a
 * clause "Grout 3": the name of the product is put before it, as the rest of the reading knows it.
 */
public final class LetteredProducts {
  /** "A", "3"; "As A but grey". */
  private static final Pattern CALL =
      Pattern.compile("((?i:as |type |no\\.? ?)?)(\\p{Lu}\\d{0,2}|\\d{1,2})(?=$|[,;(]| but\\b)");

  /** A cell that calls a product, in characters. */
  private static final int LONGEST_CALL = 60;

  /** A heading is no longer, in characters. */
  private static final int LONGEST_HEADING = 60;

  /** Headings stand among so many rows from the top of a table. */
  private static final int SEARCHED = 8;

  private LetteredProducts() {}

  /** The table with the names of products in the cells that call them by their letters. */
  public static Table called(Table table, Vocabulary vocabulary) {
    Map<String, String> names = names(vocabulary);
    if (names.isEmpty()) return table;
    Map<Integer, String> heads = new HashMap<>();
    List<Table.Row> rows = new ArrayList<>();
    boolean changed = false;
    for (Table.Row row : table.rows()) {
      List<Table.Cell> cells = new ArrayList<>();
      List<Table.Cell> filled = row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
      // "Grout | 3" has its name before it, other cells over them.
      String name = filled.size() == 2 ? family(filled.get(0), vocabulary) : "";
      for (Table.Cell cell : row.cells()) {
        String family = name.isEmpty() ? heads.getOrDefault(cell.column(), "") : name;
        Table.Cell said = filled.contains(cell) ? called(cell, family, names) : cell;
        cells.add(said);
        changed |= said != cell;
        String head = rows.size() < SEARCHED && filled.size() > 2 ? family(cell, vocabulary) : "";
        if (!head.isEmpty()) heads.putIfAbsent(cell.column(), head);
      }
      rows.add(row.withCells(cells));
    }
    return changed ? table.withRows(rows) : table;
  }

  /** The product that a heading names; empty for "Grout joint", below which figures stand. */
  private static String family(Table.Cell cell, Vocabulary vocabulary) {
    String text = PlainText.line(cell.text()).strip();
    if (text.length() > LONGEST_HEADING) return "";
    String family = vocabulary.family(text);
    if (!WorkFamilies.MATERIALS.contains(family)) return "";
    Header.Column named = HeadingWords.named(vocabulary, text);
    return named == null || named.measures() ? "" : family;
  }

  private static Table.Cell called(Table.Cell cell, String family, Map<String, String> names) {
    String text = cell.text().strip();
    if (family.isEmpty() || text.length() > LONGEST_CALL) return cell;
    Matcher call = CALL.matcher(text);
    if (!call.lookingAt()) return cell;
    String name = names.get(family + " " + call.group(2));
    return name == null ? cell : cell.withText(call.group(1) + name + text.substring(call.end(2)));
  }

  /** Names of products by their part of the work and their letter. */
  private static Map<String, String> names(Vocabulary vocabulary) {
    Map<String, String> out = new HashMap<>();
    for (Taught.Word word : vocabulary.taught().words()) {
      int blank = word.words().lastIndexOf(' ');
      if (word.kind() != Taught.Kind.TAG || blank < 0) continue;
      String family = vocabulary.family(word.words().substring(0, blank));
      if (WorkFamilies.MATERIALS.contains(family))
        out.putIfAbsent(family + word.words().substring(blank), word.words());
    }
    return out;
  }
}
