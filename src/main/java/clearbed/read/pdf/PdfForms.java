package clearbed.read.pdf;

import clearbed.model.document.Paragraph.Region;
import clearbed.read.block.CleanText;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationMarkup;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDChoice;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDTextField;

/** Words that lie over the pages: values typed into a form, and text typed onto a page. */
final class PdfForms {
  private PdfForms() {}

  record Overlay(int page, Region region, String text) {}

  static List<Overlay> of(PDDocument pdf) {
    List<Overlay> overlays = new ArrayList<>();
    PDAcroForm form = pdf.getDocumentCatalog().getAcroForm(null);
    if (form != null) {
      for (PDField field : form.getFieldTree()) addField(field, pdf, overlays);
    }
    int number = 0;
    for (PDPage page : pdf.getPages()) addTyped(page, ++number, overlays);
    return overlays;
  }

  /** What people wrote beside the page: notes, and words put to marks on the text. */
  static List<Overlay> remarks(PDDocument pdf) {
    List<Overlay> remarks = new ArrayList<>();
    int number = 0;
    for (PDPage page : pdf.getPages()) {
      number++;
      try {
        for (PDAnnotation note : page.getAnnotations()) {
          if (!(note instanceof PDAnnotationMarkup) || isTyped(note)) continue;
          String text = CleanText.of(note.getContents());
          if (!text.isEmpty()) remarks.add(new Overlay(number, Region.COMMENT, text));
        }
      } catch (IOException | RuntimeException e) {
        // A broken note is no part of the page's own text.
      }
    }
    return remarks;
  }

  private static boolean isTyped(PDAnnotation note) {
    return "FreeText".equals(note.getSubtype());
  }

  private static void addField(PDField field, PDDocument pdf, List<Overlay> overlays) {
    if (!(field instanceof PDTextField) && !(field instanceof PDChoice)) return;
    String value = CleanText.of(field.getValueAsString());
    if (value.isEmpty() || value.equals("[]")) return;
    String asked = field.getAlternateFieldName();
    String name = CleanText.of(asked == null ? field.getPartialName() : asked);
    overlays.add(new Overlay(page(field, pdf), Region.BODY, name + ": " + value));
  }

  private static int page(PDField field, PDDocument pdf) {
    if (field.getWidgets().isEmpty() || field.getWidgets().get(0).getPage() == null) return 1;
    return Math.max(1, pdf.getPages().indexOf(field.getWidgets().get(0).getPage()) + 1);
  }

  private static void addTyped(PDPage page, int number, List<Overlay> overlays) {
    try {
      for (PDAnnotation note : page.getAnnotations()) {
        if (!isTyped(note)) continue;
        String text = CleanText.of(note.getCOSObject().getString(COSName.CONTENTS));
        if (!text.isEmpty()) overlays.add(new Overlay(number, Region.NOTE, text));
      }
    } catch (IOException e) {
      // A broken note is no part of the page's own text.
    }
  }
}
