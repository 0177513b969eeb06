package clearbed.samples;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts.FontName;

/** Pages filled from the top, column by column. Lengths in points. */
final class PdfPages {
  private static final float BLOCK = 130;
  private static final float GUTTER = 18;

  private final PDFont plain = new PDType1Font(FontName.HELVETICA);
  private final PDFont bold = new PDType1Font(FontName.HELVETICA_BOLD);
  private final PDDocument document;
  private final PDRectangle size;
  private final float margin;
  private final int columns;
  private final float points;
  private String header = "";
  private String footer = "";
  private List<String> block = List.of();
  private PDPageContentStream stream;
  private int pageNumber;
  private int column;
  private float y;

  PdfPages(PDDocument document, PDRectangle size, float margin, int columns, float points) {
    this.document = document;
    this.size = size;
    this.margin = margin;
    this.columns = columns;
    this.points = points;
  }

  void running(String top, String bottom) {
    header = top;
    footer = bottom;
  }

  void titleBlock(String... lines) {
    block = List.of(lines);
  }

  void centred(String text) throws IOException {
    room(points * 2);
    float width = width(bold, points, text);
    show(bold, points, left() + (columnWidth() - width) / 2, text);
    y -= points * 2;
  }

  /** A numbered paragraph with a hanging indent. */
  void paragraph(String label, String text, int depth, boolean strong) throws IOException {
    PDFont font = strong ? bold : plain;
    float indent = depth <= 2 ? 0 : (depth - 2) * points * 2;
    float hang = label.isEmpty() ? 0 : Math.max(points * 2.4f, width(font, points, label + "  "));
    List<String> lines = wrap(font, text, columnWidth() - indent - hang);
    room(points * (strong ? 4.2f : 1.9f));
    y -= depth < 2 ? points * 0.8f : points * 0.3f;
    for (int i = 0; i < lines.size(); i++) {
      room(points * 1.3f);
      if (i == 0 && !label.isEmpty()) show(font, points, left() + indent, label);
      show(font, points, left() + indent + hang, lines.get(i));
      y -= points * 1.25f;
    }
  }

  /** A ruled table over the column's width, shared by weight. */
  void table(List<List<String>> rows, List<Integer> weights) throws IOException {
    float total = weights.stream().mapToInt(Integer::intValue).sum();
    y -= points * 0.4f;
    for (int r = 0; r < rows.size(); r++) {
      List<List<String>> cells = new ArrayList<>();
      int most = 1;
      for (int c = 0; c < rows.get(r).size(); c++) {
        float width = columnWidth() * weights.get(c) / total - 6;
        cells.add(wrap(r == 0 ? bold : plain, rows.get(r).get(c), width));
        most = Math.max(most, cells.get(c).size());
      }
      float height = most * points * 1.2f + 5;
      room(height);
      row(cells, weights, total, height, r == 0 ? bold : plain);
    }
    y -= points * 0.9f;
  }

  private void row(
      List<List<String>> cells, List<Integer> weights, float total, float height, PDFont font)
      throws IOException {
    float x = left();
    float top = y + points;
    for (int c = 0; c < cells.size(); c++) {
      float width = columnWidth() * weights.get(c) / total;
      stream.addRect(x, top - height, width, height);
      stream.stroke();
      float line = y;
      for (String words : cells.get(c)) {
        text(font, points, x + 3, line - 2, words);
        line -= points * 1.2f;
      }
      x += width;
    }
    y -= height;
  }

  void close() throws IOException {
    if (stream != null) stream.close();
    stream = null;
  }

  private void room(float height) throws IOException {
    if (stream == null) {
      page();
    } else if (y - height < margin) {
      if (++column >= columns) page();
      else y = size.getHeight() - margin - points;
    }
  }

  private void page() throws IOException {
    close();
    PDPage page = new PDPage(size);
    document.addPage(page);
    pageNumber++;
    column = 0;
    // Not compressed: deflate output differs between zlib builds.
    stream =
        new PDPageContentStream(
            document, page, PDPageContentStream.AppendMode.OVERWRITE, false, false);
    stream.setLineWidth(0.5f);
    y = size.getHeight() - margin - points;
    if (!header.isEmpty()) text(plain, 8, margin, size.getHeight() - margin + 18, header);
    if (!footer.isEmpty()) text(plain, 8, margin, margin - 30, footer + " - " + pageNumber);
    if (!block.isEmpty()) drawBlock();
  }

  private void drawBlock() throws IOException {
    stream.addRect(18, 18, size.getWidth() - 36, size.getHeight() - 36);
    float x = size.getWidth() - 18 - BLOCK;
    stream.moveTo(x, 18);
    stream.lineTo(x, size.getHeight() - 18);
    stream.stroke();
    float line = 190;
    for (int i = 0; i < block.size(); i++) {
      float height = i == 2 ? 20 : 10;
      for (String words : wrap(bold, block.get(i), (BLOCK - 16) * points / height)) {
        text(i % 2 == 1 ? plain : bold, height, x + 8, line, words);
        line -= height * 1.3f;
      }
      line -= 14;
    }
  }

  private float columnWidth() {
    float whole = size.getWidth() - 2 * margin - (block.isEmpty() ? 0 : BLOCK);
    return (whole - (columns - 1) * GUTTER) / columns;
  }

  private float left() {
    return margin + column * (columnWidth() + GUTTER);
  }

  private void show(PDFont font, float height, float x, String words) throws IOException {
    text(font, height, x, y, words);
  }

  private void text(PDFont font, float height, float x, float base, String words)
      throws IOException {
    stream.beginText();
    stream.setFont(font, height);
    stream.newLineAtOffset(x, base);
    stream.showText(words);
    stream.endText();
  }

  private List<String> wrap(PDFont font, String text, float width) throws IOException {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && width(font, points, longer) > width) {
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

  private static float width(PDFont font, float height, String text) throws IOException {
    return font.getStringWidth(text) / 1000 * height;
  }
}
