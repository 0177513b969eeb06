package clearbed.recognise.schedule;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.regex.Pattern;

/** Rows that say nothing of a tile in force: sums, titles of sections, former tiles. */
final class RowsSetAside {
  private static final Pattern SECTION =
      Pattern.compile("(?:(?i:division|section) )?\\d\\d[ -]?\\d\\d[ -]?\\d\\d(?:\\.\\d\\d)?");

  private static final Pattern TOTAL =
      Pattern.compile("(?:sub-?|grand )?totals?\\b.{0,40}|sum\\b.{0,20}", Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;

  RowsSetAside(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * Why a row is set aside; empty where it is not.
   *
   * @param former the group of former rows that it is in; null where it is in no such group
   */
  String why(Table.Row row, Header header, int tagColumn, String former) {
    List<Table.Cell> filled = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
    boolean total =
        filled.stream().limit(2).anyMatch(c -> TOTAL.matcher(c.text().trim()).matches());
    if (total) return "a row of totals";
    Table.Cell mark = tagColumn < 0 ? null : row.at(tagColumn);
    // "Section 09 30 20 | Glass tiling" stands over keynotes of that section, and is no tile.
    boolean section = mark != null && SECTION.matcher(PlainText.line(mark.text())).matches();
    if (section) return "the title of a section";
    String by = former != null ? former : former(filled, header);
    return by.isEmpty() ? "" : "no longer in force: " + by;
  }

  private String former(List<Table.Cell> filled, Header header) {
    for (Table.Cell cell : filled) {
      Header.Column c = header.columns().get(cell.column());
      boolean free =
          c == null
              || c.role() == Header.Role.OTHER
              || c.role() == Header.Role.TAG
              || c.describes()
              || c.attribute() != null && c.attribute().id().equals("notes");
      if (free && vocabulary.list("schedule.struck").matches(PlainText.line(cell.text()).trim()))
        return PlainText.line(cell.text()).trim();
    }
    return "";
  }
}
