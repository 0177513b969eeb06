package clearbed.model.document;

import java.util.Optional;

/**
 * One paragraph of running text.
 *
 * @param label the number that the word processor shows before it ({@code 2.3}, {@code A.}), not
 *     part of the text; empty when there is none or when it is typed in the text
 * @param headingLevel 1 to 9 for a heading style, 0 for body text
 * @param listLevel depth of automatic numbering from 0, or -1 when the paragraph is not numbered
 *     automatically
 * @param text the words, without the label
 * @param region where on the page: body, header, footer, note; or a remark of a person
 */
public record Paragraph(
    Origin origin, String label, int headingLevel, int listLevel, String text, Region region)
    implements Block {

  /** The part of the page that a paragraph stands in. */
  public enum Region {
    BODY,
    HEADER,
    FOOTER,
    NOTE,
    COMMENT
  }

  /** True for words that hang on others and stand over nothing: a footnote, a comment. */
  public boolean isAside() {
    boolean note = region == Region.NOTE && origin.part() != null && origin.part().endsWith("note");
    return note || region == Region.COMMENT;
  }

  /** What a person said of a cell of a table. */
  public static Optional<Paragraph> remark(Table table, Table.Cell cell) {
    if (cell.remark().isBlank()) return Optional.empty();
    Origin origin = table.origin(cell).withText(cell.remark()).withPart("comment");
    return Optional.of(new Paragraph(origin, "", 0, -1, cell.remark(), Region.COMMENT));
  }

  public static Paragraph body(Origin origin, String text) {
    return new Paragraph(origin, "", 0, -1, text, Region.BODY);
  }
}
