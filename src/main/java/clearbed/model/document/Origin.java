package clearbed.model.document;

import clearbed.base.DisplayText;
import java.util.Objects;

/**
 * Where words stand in the documents, so that a reader can go and look.
 *
 * @param document path relative to the argument it was found under, {@code /} as separator, {@code
 *     bundle.zip!/path} inside an archive; empty for a value that no document states (a rule set's
 *     default)
 * @param sheet name of the spreadsheet sheet, or null
 * @param cell address of the cell in a sheet or table, such as {@code B7}, or null
 * @param page page number from 1 (PDF), or null
 * @param paragraph ordinal of the paragraph in the document from 1, or null
 * @param heading number of the article or clause it stands under, such as {@code 2.3 B}, or null
 * @param text the words as written, or null
 * @param part what stands outside the running text: {@code footnote}, {@code header}, {@code
 *     comment}; null within it
 */
public record Origin(
    String document,
    String sheet,
    String cell,
    Integer page,
    Integer paragraph,
    String heading,
    String text,
    String part) {

  public Origin(
      String document,
      String sheet,
      String cell,
      Integer page,
      Integer paragraph,
      String heading,
      String text) {
    this(document, sheet, cell, page, paragraph, heading, text, null);
  }

  /** The whole document, no closer place. */
  public static Origin ofDocument(String document) {
    return new Origin(document, null, null, null, null, null, null);
  }

  public static Origin ofCell(String document, String sheet, String cell, String text) {
    return new Origin(document, sheet, cell, null, null, null, text);
  }

  public Origin withText(String words) {
    return new Origin(document, sheet, cell, page, paragraph, heading, words, part);
  }

  public Origin withHeading(String number) {
    return new Origin(document, sheet, cell, page, paragraph, number, text, part);
  }

  public Origin withCell(String address) {
    return new Origin(document, sheet, address, page, paragraph, heading, text, part);
  }

  /** The same place, outside the running text. */
  public Origin withPart(String name) {
    return new Origin(document, sheet, cell, page, paragraph, heading, text, name);
  }

  /** A page has no addresses of cells to go by, but rows that can be counted. */
  private String row() {
    String number = rowNumber();
    return number.isEmpty() ? cell : "row " + number;
  }

  private String rowNumber() {
    return cell.replaceFirst("^[A-Z]+", "");
  }

  /** True for cells in one row of a table: "ISO 11600 F-25LM | pool quality, ASTM C920 Use I". */
  public boolean isBeside(Origin other) {
    return cell != null
        && other.cell != null
        && document.equals(other.document)
        && Objects.equals(sheet, other.sheet)
        && Objects.equals(page, other.page)
        && Objects.equals(paragraph, other.paragraph)
        && rowNumber().equals(other.rowNumber());
  }

  /** The place in words: {@code schedule.xlsx, sheet Tile, cell B7}. */
  public String place() {
    StringBuilder out = new StringBuilder(DisplayText.path(document));
    if (sheet != null) out.append(", sheet ").append(DisplayText.of(sheet));
    if (page != null) out.append(", page ").append(page);
    if (heading != null && !heading.isBlank()) out.append(", ").append(heading);
    if (cell != null && page != null && sheet == null) out.append(", table ").append(row());
    else if (cell != null) out.append(", cell ").append(cell);
    else if (paragraph != null && heading == null) out.append(", paragraph ").append(paragraph);
    if (part != null) out.append(", ").append(part);
    return out.toString();
  }
}
