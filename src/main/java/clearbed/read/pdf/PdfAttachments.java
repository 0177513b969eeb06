package clearbed.read.pdf;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDNameTreeNode;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationFileAttachment;

/** Files within a PDF: those of the document, and those pinned to a page. They are not opened. */
final class PdfAttachments {
  private final Set<COSBase> seen = new HashSet<>();
  private int count;

  private PdfAttachments() {}

  static int count(PDDocument pdf) throws IOException {
    PdfAttachments attached = new PdfAttachments();
    PDDocumentNameDictionary names = pdf.getDocumentCatalog().getNames();
    if (names != null && names.getEmbeddedFiles() != null) attached.add(names.getEmbeddedFiles());
    for (PDPage page : pdf.getPages())
      for (PDAnnotation each : page.getAnnotations())
        if (each instanceof PDAnnotationFileAttachment) attached.count++;
    return attached.count;
  }

  /** A tree may be made to hold itself. */
  private <T extends org.apache.pdfbox.pdmodel.common.COSObjectable> void add(
      PDNameTreeNode<T> node) throws IOException {
    if (!seen.add(node.getCOSObject())) return;
    if (node.getNames() != null) count += node.getNames().size();
    List<PDNameTreeNode<T>> kids = node.getKids();
    if (kids != null) for (PDNameTreeNode<T> kid : kids) add(kid);
  }
}
