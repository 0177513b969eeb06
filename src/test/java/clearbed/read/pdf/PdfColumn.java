package clearbed.read.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.font.PDFont;

/** Sets running text into a column of a test page, wrapped at its width; lengths in points. */
final class PdfColumn {
  private final PdfSheet sheet;
  private final float x;
  private final float width;
  private final float size;
  private final float space;
  private float y;

  /**
   * @param space between paragraphs, above the line's own pitch
   */
  PdfColumn(PdfSheet sheet, float x, float y, float width, float size, float space) {
    this.sheet = sheet;
    this.x = x;
    this.y = y;
    this.width = width;
    this.size = size;
    this.space = space;
  }

  PdfColumn heading(String words) throws IOException {
    return set(PdfSheet.BOLD, 0, words);
  }

  PdfColumn paragraph(String words) throws IOException {
    return set(PdfSheet.PLAIN, 0, words);
  }

  /** A paragraph with a mark hanging before it. */
  PdfColumn item(String mark, String words) throws IOException {
    return item(mark, 18, words);
  }

  PdfColumn item(String mark, float hang, String words) throws IOException {
    sheet.text(PdfSheet.PLAIN, size, x, y, mark);
    return set(PdfSheet.PLAIN, hang, words);
  }

  /** The rest of a paragraph that began in another column. */
  PdfColumn rest(float hang, String words) throws IOException {
    return set(PdfSheet.PLAIN, hang, words);
  }

  /** A row of cells that wrap, each at its own place and width. */
  PdfColumn row(float[] xs, String... cells) throws IOException {
    int most = 1;
    for (int c = 0; c < cells.length; c++) {
      if (cells[c].isEmpty()) continue;
      float right = c + 1 < xs.length ? xs[c + 1] - size * 1.1f : x + width;
      List<String> lines = wrap(PdfSheet.PLAIN, cells[c], right - xs[c]);
      for (int i = 0; i < lines.size(); i++) {
        sheet.text(PdfSheet.PLAIN, size, xs[c], y + i * pitch(), lines.get(i));
      }
      most = Math.max(most, lines.size());
    }
    y += most * pitch() + space;
    return this;
  }

  private PdfColumn set(PDFont font, float hang, String words) throws IOException {
    for (String line : wrap(font, words, width - hang)) {
      sheet.text(font, size, x + hang, y, line);
      y += pitch();
    }
    y += space;
    return this;
  }

  private float pitch() {
    return size * 1.2f;
  }

  float y() {
    return y;
  }

  private List<String> wrap(PDFont font, String words, float room) throws IOException {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : words.split(" ")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && font.getStringWidth(longer) / 1000 * size > room) {
        lines.add(line.toString());
        line.setLength(0);
        line.append(word);
      } else {
        line.setLength(0);
        line.append(longer);
      }
    }
    lines.add(line.toString());
    return lines;
  }
}
