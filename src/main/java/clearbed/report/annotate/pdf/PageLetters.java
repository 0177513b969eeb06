package clearbed.report.annotate.pdf;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.apache.pdfbox.util.Matrix;

/** Takes the letters off one page in the order in which they are drawn. */
final class PageLetters extends PDFTextStripper {
  /** Of the font's size: a wider gap parts two words. */
  private static final double WORD_GAP = 0.15;

  private final List<PageLetter> letters = new ArrayList<>();
  private final PDRectangle box;
  private boolean afterBlank = true;

  private PageLetters(PDRectangle box) throws IOException {
    this.box = box;
  }

  /**
   * @param number of the page, from 1
   */
  static List<PageLetter> of(PDDocument pdf, int number) throws IOException {
    PageLetters page = new PageLetters(pdf.getPage(number - 1).getCropBox());
    page.setStartPage(number);
    page.setEndPage(number);
    page.writeText(pdf, Writer.nullWriter());
    return page.letters;
  }

  @Override
  protected void writePage() {
    // The letters are gathered as they come; nothing is written.
  }

  @Override
  protected void processTextPosition(TextPosition t) {
    String text = t.getUnicode();
    if (text == null || text.isBlank()) {
      afterBlank = true;
      return;
    }
    Matrix m = t.getTextMatrix();
    // The library counts from the corner of the crop box.
    double left = box.getLowerLeftX();
    double low = box.getLowerLeftY();
    PageLetter plain =
        new PageLetter(
            text,
            m.getTranslateX() + left,
            m.getTranslateY() + low,
            t.getEndX() + left,
            t.getEndY() + low,
            m.getValue(1, 0),
            m.getValue(1, 1),
            true);
    PageLetter last = letters.isEmpty() ? null : letters.get(letters.size() - 1);
    boolean opens = afterBlank || last == null || !last.runsOnTo(plain, WORD_GAP);
    letters.add(opens ? plain : inside(plain));
    afterBlank = false;
  }

  private static PageLetter inside(PageLetter l) {
    return new PageLetter(l.text(), l.x(), l.y(), l.endX(), l.endY(), l.upX(), l.upY(), false);
  }
}
