package clearbed.samples;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** An outline or a schedule as a PDF, with the standard fonts that every reader has. */
public final class PdfFile {
  private static final float TABLOID_WIDTH = 17 * 72;
  private static final float TABLOID_HEIGHT = 11 * 72;

  private PdfFile() {}

  /** A section on portrait pages with a running header and footer. */
  public static byte[] section(Outline outline) {
    try (PDDocument document = new PDDocument()) {
      boolean metric = outline.about("paper").equals("a4");
      PdfPages pages =
          new PdfPages(document, metric ? PDRectangle.A4 : PDRectangle.LETTER, 72, 1, 10f);
      String name = (outline.about("title") + " " + outline.about("number")).strip();
      pages.running(outline.about("project"), name);
      if (!outline.about("number").isEmpty()) pages.centred("SECTION " + outline.about("number"));
      pages.centred(outline.about("title"));
      clauses(pages, outline);
      return bytes(document, pages);
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  /** Notes in columns on a drawing sheet with a title block along the right edge. */
  public static byte[] sheet(Outline outline) {
    try (PDDocument document = new PDDocument()) {
      PDRectangle size = new PDRectangle(TABLOID_WIDTH, TABLOID_HEIGHT);
      PdfPages pages = new PdfPages(document, size, 44, 2, 11f);
      pages.titleBlock(
          outline.about("project"),
          outline.about("title"),
          outline.about("number"),
          outline.about("date"));
      clauses(pages, outline);
      return bytes(document, pages);
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  /** A schedule as a ruled table on landscape pages. */
  public static byte[] schedule(Schedule schedule) {
    try (PDDocument document = new PDDocument()) {
      PDRectangle size = new PDRectangle(TABLOID_WIDTH, TABLOID_HEIGHT);
      PdfPages pages = new PdfPages(document, size, 36, 1, 7.5f);
      for (String line : schedule.titles()) pages.paragraph("", line, 0, true);
      pages.table(
          Grid.of(schedule), schedule.columns().stream().map(Schedule.Column::width).toList());
      for (String line : schedule.notes()) pages.paragraph("", line, 0, false);
      return bytes(document, pages);
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  private static void clauses(PdfPages pages, Outline outline) throws IOException {
    List<String> labels = Numbering.of(outline).labels(outline.clauses());
    for (int i = 0; i < outline.clauses().size(); i++) {
      Clause clause = outline.clauses().get(i);
      if (clause.isTable()) pages.table(clause.table(), widths(clause.table()));
      else pages.paragraph(labels.get(i), clause.text(), clause.depth(), clause.depth() < 2);
    }
  }

  /** Columns share the width by their longest cell. */
  private static List<Integer> widths(List<List<String>> rows) {
    return java.util.stream.IntStream.range(0, rows.get(0).size())
        .mapToObj(c -> rows.stream().mapToInt(row -> Math.min(30, row.get(c).length() + 3)).max())
        .map(max -> max.orElse(1))
        .toList();
  }

  private static byte[] bytes(PDDocument document, PdfPages pages) throws IOException {
    pages.close();
    // The file id is otherwise made from the clock.
    document.setDocumentId(1L);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    document.save(out, CompressParameters.NO_COMPRESSION);
    return out.toByteArray();
  }
}
