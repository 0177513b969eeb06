package clearbed.report.annotate.pdf;

import clearbed.report.annotate.note.FindingNote;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceRGB;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationHighlight;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationMarkup;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationText;

/** Draws highlights and notes on a page (ISO 32000-1, 12.5.6.4 and 12.5.6.10). */
final class PdfNotes {
  private static final float SIDE = 20;
  private static final float EDGE = 6;

  /** More of them side by side would cover the words. */
  private static final int MOST_IN_A_ROW = 3;

  private static final PDColor YELLOW =
      new PDColor(new float[] {1, 0.87f, 0.35f}, PDDeviceRGB.INSTANCE);

  private final PDDocument pdf;
  private final PDPage page;
  private final PDRectangle box;
  private final GregorianCalendar date;
  private final List<PDAnnotation> annotations;
  private final List<PDRectangle> taken = new ArrayList<>();

  PdfNotes(PDDocument pdf, PDPage page, Instant date) throws IOException {
    this.pdf = pdf;
    this.page = page;
    this.box = page.getCropBox();
    this.date = GregorianCalendar.from(ZonedDateTime.ofInstant(date, ZoneOffset.UTC));
    this.annotations = new ArrayList<>(page.getAnnotations());
  }

  void write() {
    page.setAnnotations(annotations);
  }

  /** One highlight for the words, and a note for each of the findings, or one for very many. */
  void add(List<PageLetter> words, List<FindingNote> notes) {
    if (!words.isEmpty()) highlight(WordBox.of(words), notes);
    if (notes.size() > MOST_IN_A_ROW) {
      String all = notes.stream().map(FindingNote::text).collect(Collectors.joining("\n\n"));
      note(words, notes.size() + " findings", all);
    } else {
      for (FindingNote note : notes) note(words, note.heading(), note.text());
    }
  }

  private void note(List<PageLetter> words, String subject, String contents) {
    PDAnnotationText text = new PDAnnotationText();
    text.setName(PDAnnotationText.NAME_NOTE);
    text.setRectangle(free(words.isEmpty() ? corner() : edge(words.get(0)), direction(words)));
    text.setOpen(false);
    finish(text, subject, contents);
    text.constructAppearances(pdf);
  }

  private void highlight(List<WordBox> boxes, List<FindingNote> notes) {
    PDAnnotationHighlight highlight = new PDAnnotationHighlight();
    float[] quads = new float[8 * boxes.size()];
    for (int i = 0; i < boxes.size(); i++) boxes.get(i).fill(quads, 8 * i);
    highlight.setQuadPoints(quads);
    highlight.setRectangle(WordBox.around(quads));
    String headings = notes.stream().map(FindingNote::heading).collect(Collectors.joining("\n"));
    finish(highlight, notes.get(0).heading(), headings);
    highlight.constructAppearances(pdf);
  }

  private void finish(PDAnnotationMarkup mark, String subject, String contents) {
    mark.setColor(YELLOW);
    mark.setTitlePopup(FindingNote.AUTHOR);
    mark.setSubject(subject);
    mark.setContents(contents);
    mark.setCreationDate(date);
    mark.setModifiedDate(date);
    mark.setPrinted(true);
    mark.setPage(page);
    annotations.add(mark);
  }

  /** Where the line of the words, gone back, meets the edge of the page. */
  private PDRectangle edge(PageLetter first) {
    double dx = first.upY() / first.size();
    double dy = -first.upX() / first.size();
    double back = Math.min(reach(first.x(), dx, true), reach(first.y(), dy, false));
    double inset = Math.max(0, back - EDGE - SIDE / 2);
    double x = first.x() - dx * inset + first.upX() * 0.3;
    double y = first.y() - dy * inset + first.upY() * 0.3;
    return square(x, y);
  }

  /** Length of the way back along one axis, or endless when the line does not go along it. */
  private double reach(double from, double step, boolean across) {
    if (Math.abs(step) < 1e-3) return Double.MAX_VALUE;
    double low = across ? box.getLowerLeftX() : box.getLowerLeftY();
    double high = across ? box.getUpperRightX() : box.getUpperRightY();
    return step > 0 ? (from - low) / step : (from - high) / step;
  }

  /** The corner that a reader sees at the upper left. */
  private PDRectangle corner() {
    int turn = Math.floorMod(page.getRotation(), 360);
    boolean left = turn == 0 || turn == 90;
    boolean high = turn == 0 || turn == 270;
    float inset = EDGE + SIDE / 2;
    return square(
        left ? box.getLowerLeftX() + inset : box.getUpperRightX() - inset,
        high ? box.getUpperRightY() - inset : box.getLowerLeftY() + inset);
  }

  private PDRectangle square(double x, double y) {
    double low = box.getLowerLeftX() + 1;
    double right = Math.max(low, box.getUpperRightX() - SIDE - 1);
    double bottom = box.getLowerLeftY() + 1;
    double top = Math.max(bottom, box.getUpperRightY() - SIDE - 1);
    double cornerX = Math.min(right, Math.max(low, x - SIDE / 2));
    double cornerY = Math.min(top, Math.max(bottom, y - SIDE / 2));
    return new PDRectangle((float) cornerX, (float) cornerY, SIDE, SIDE);
  }

  /** Along the words, or along the top of the page as it is seen. */
  private double[] direction(List<PageLetter> words) {
    if (!words.isEmpty()) {
      PageLetter first = words.get(0);
      return new double[] {first.upY() / first.size(), -first.upX() / first.size()};
    }
    double turn = Math.toRadians(page.getRotation());
    return new double[] {Math.cos(turn), Math.sin(turn)};
  }

  /** The wanted square, or the next one along that no other note lies on. */
  private PDRectangle free(PDRectangle wanted, double[] along) {
    PDRectangle found = wanted;
    double step = SIDE + 1;
    for (int i = 1; i < 200 && isTaken(found); i++) {
      found =
          square(
              wanted.getLowerLeftX() + SIDE / 2 + along[0] * step * i,
              wanted.getLowerLeftY() + SIDE / 2 + along[1] * step * i);
    }
    taken.add(found);
    return found;
  }

  private boolean isTaken(PDRectangle square) {
    return taken.stream()
        .anyMatch(
            t ->
                Math.abs(t.getLowerLeftX() - square.getLowerLeftX()) < SIDE
                    && Math.abs(t.getLowerLeftY() - square.getLowerLeftY()) < SIDE);
  }
}
