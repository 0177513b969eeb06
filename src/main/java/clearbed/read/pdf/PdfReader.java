package clearbed.read.pdf;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Document.Status;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.Source;
import clearbed.read.source.Unreadable;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * PDF files by the positions of their letters and lines: paragraphs, and tables put together again.
 */
public final class PdfReader implements FormatReader {
  private static final String NO_TEXT = "no text: scanned pages; run text recognition first";
  private static final int TAIL = 4096;

  @Override
  public Document read(Source source) throws IOException, Unreadable {
    // The library mends a file that is cut short, and would leave out pages without a word.
    if (!hasEnd(source.file())) {
      throw new Unreadable("damaged or truncated PDF: its end is missing; save it again");
    }
    try (PDDocument pdf = open(source.file())) {
      PdfPages pages = new PdfPages();
      List<PdfPage> read = pages.of(pdf);
      if (read.isEmpty()) throw new Unreadable("a PDF without pages; save it again");
      PdfBlocks blocks = new PdfBlocks(source.path());
      blocks.add(read);
      blocks.addRepeats(pages.repeats());
      blocks.addForms(pdf);
      blocks.addAttachments(PdfAttachments.count(pdf));
      return document(source, blocks, read);
    }
  }

  /** What opens certificates is left out of the program; it could not be given one. */
  private static PDDocument open(Path file) throws IOException, Unreadable {
    try {
      return Loader.loadPDF(file.toFile());
    } catch (NoClassDefFoundError e) {
      if (!String.valueOf(e.getMessage()).startsWith("org/bouncycastle")) throw e;
      throw new Unreadable("locked by a certificate; save a copy without");
    }
  }

  private static Document document(Source source, PdfBlocks blocks, List<PdfPage> pages) {
    List<Gap> gaps = blocks.gaps();
    boolean noText = blocks.blocks().isEmpty() && pages.stream().anyMatch(PdfPage::isScanned);
    if (noText) return Document.unreadable(source.path(), Format.PDF.shortName(), NO_TEXT);
    boolean partly = pages.stream().anyMatch(PdfPage::isScanned);
    String reason = partly ? "some pages have " + NO_TEXT : "";
    Status status = Document.statusFor(gaps);
    return new Document(
        source.path(), Format.PDF.shortName(), status, reason, blocks.blocks(), gaps);
  }

  private static boolean hasEnd(Path file) throws IOException {
    try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
      long start = Math.max(0, in.length() - TAIL);
      byte[] tail = new byte[(int) (in.length() - start)];
      in.seek(start);
      in.readFully(tail);
      return new String(tail, StandardCharsets.ISO_8859_1).contains("%%EOF");
    }
  }
}
