package clearbed.recognise;

import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Items that are each addressed to a tile or a place, as bulletins set them: "3 | GT-2 | The maker
 * accepts it over the membrane." They are running text, and say what they say of whom they name.
 */
final class AddressedTable {
  private static final Pattern NUMBER =
      Pattern.compile("(?:[A-Z]{1,3}[-.]?)?\\d{1,3}(?:[-./]\\d{1,3}){0,2}[.:)]?");

  private static final Pattern SENTENCE = Pattern.compile("(?:\\S+\\s+){3}.*[.!]", Pattern.DOTALL);

  /** Number, address, words. */
  private static final int COLUMNS = 3;

  private static final int LONGEST_ADDRESS = 60;

  /** Fewer rows might be anything. */
  private static final int FEWEST = 3;

  private AddressedTable() {}

  /** Its items, as paragraphs led by their address; empty where it is no such table. */
  static List<Paragraph> items(Table table, Vocabulary vocabulary) {
    List<Paragraph> out = new ArrayList<>();
    int items = 0;
    int sentences = 0;
    int tiles = 0;
    for (Table.Row row : table.rows()) {
      List<Table.Cell> filled = row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
      if (filled.isEmpty()) continue;
      boolean item =
          filled.size() == COLUMNS && NUMBER.matcher(filled.get(0).text().strip()).matches();
      if (!item) {
        boolean names = items == 0 && filled.size() <= COLUMNS;
        boolean former =
            filled.stream()
                .anyMatch(
                    c -> vocabulary.list("schedule.former").matches(PlainText.line(c.text())));
        if (!names || former) return List.of();
        continue;
      }
      items++;
      String address = filled.get(1).text().strip();
      String words = filled.get(2).text().strip();
      if (address.length() > LONGEST_ADDRESS) return List.of();
      if (SENTENCE.matcher(words).matches()) sentences++;
      if (!TagFinder.tags(PlainText.of(address)).isEmpty()) tiles++;
      String text = address + ": " + words;
      out.add(Paragraph.body(table.origin(filled.get(2)).withText(text), text));
      for (Table.Cell cell : row.cells()) Paragraph.remark(table, cell).ifPresent(out::add);
    }
    boolean addressed = items >= FEWEST && tiles * 2 > items && sentences * 3 >= items * 2;
    return addressed ? out : List.of();
  }
}
