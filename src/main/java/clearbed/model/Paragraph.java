package clearbed.model;

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

  public static Paragraph body(Origin origin, String text) {
    return new Paragraph(origin, "", 0, -1, text, Region.BODY);
  }
}
