package clearbed.read.pdf;

import java.io.IOException;
import java.nio.file.Path;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts.FontName;

/** Draws test pages; y is measured from the top, in points. */
final class PdfSheet implements AutoCloseable {
  static final PDFont PLAIN = new PDType1Font(FontName.HELVETICA);
  static final PDFont BOLD = new PDType1Font(FontName.HELVETICA_BOLD);

  final PDDocument pdf = new PDDocument();
  private final StringBuilder words = new StringBuilder();
  private PDPageContentStream content;
  private float height;

  PdfSheet page() throws IOException {
    return page(PDRectangle.LETTER);
  }

  PdfSheet page(PDRectangle size) throws IOException {
    if (content != null) content.close();
    PDPage page = new PDPage(size);
    height = page.getMediaBox().getHeight();
    pdf.addPage(page);
    content = new PDPageContentStream(pdf, page);
    return this;
  }

  PdfSheet text(float x, float y, String words) throws IOException {
    return text(PLAIN, 10, x, y, words);
  }

  PdfSheet text(PDFont font, float size, float x, float y, String words) throws IOException {
    this.words.append(words).append(' ');
    content.beginText();
    content.setFont(font, size);
    content.newLineAtOffset(x, height - y);
    content.showText(words);
    content.endText();
    return this;
  }

  PdfSheet line(float x0, float y0, float x1, float y1) throws IOException {
    content.moveTo(x0, height - y0);
    content.lineTo(x1, height - y1);
    content.stroke();
    return this;
  }

  PdfSheet grid(float[] xs, float[] ys) throws IOException {
    for (float x : xs) line(x, ys[0], x, ys[ys.length - 1]);
    for (float y : ys) line(xs[0], y, xs[xs.length - 1], y);
    return this;
  }

  /** All that was written, in the order in which it was. */
  String words() {
    return words.toString();
  }

  PDPageContentStream content() {
    return content;
  }

  void save(Path file) throws IOException {
    content.close();
    content = null;
    pdf.save(file.toFile());
  }

  @Override
  public void close() throws IOException {
    pdf.close();
  }
}
