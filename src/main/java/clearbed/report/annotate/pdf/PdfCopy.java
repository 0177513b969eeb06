package clearbed.report.annotate.pdf;

import clearbed.mark.ClosingLine;
import clearbed.mark.OutputKind;
import clearbed.report.annotate.note.FindingNote;
import clearbed.report.annotate.note.Job;
import clearbed.report.annotate.note.MarkedCopy;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;

/** PDF files: a highlight over the words, and a note at the edge of the page level with them. */
public final class PdfCopy implements MarkedCopy {

  @Override
  public void write(Job job, OutputStream out) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(job.source().toFile())) {
      if (pdf.isEncrypted()) {
        throw new CannotMark(
            "the PDF is encrypted against changes; its findings are listed beside");
      }
      if (pdf.getNumberOfPages() == 0) throw new CannotMark("a PDF without pages");
      boolean signed = !pdf.getSignatureDictionaries().isEmpty();
      pages(pdf, job).forEach((number, notes) -> mark(pdf, number, notes, job));
      // The library takes the number, else the clock, for the identifier of the file.
      pdf.setDocumentId(job.date().toEpochMilli());
      if (signed) {
        // What was signed stays byte for byte; the marks are a revision behind it.
        ClosingLine.writePdf(pdf::saveIncremental, OutputKind.COPY, out);
        String reason =
            "the PDF is signed; the signature speaks for the original, not for the marks";
        for (FindingNote note : job.notes()) job.near(note, reason);
      } else {
        ClosingLine.writePdf(pdf::save, OutputKind.COPY, out);
      }
    } catch (InvalidPasswordException e) {
      throw new CannotMark("the PDF is encrypted; its findings are listed beside");
    }
  }

  private static Map<Integer, List<FindingNote>> pages(PDDocument pdf, Job job) {
    Map<Integer, List<FindingNote>> pages = new TreeMap<>();
    for (FindingNote note : job.notes()) {
      Integer page = note.place().page();
      boolean there = page != null && page >= 1 && page <= pdf.getNumberOfPages();
      if (!there) job.near(note, "it names no page that is there; noted on the first");
      pages.computeIfAbsent(there ? page : 1, k -> new ArrayList<>()).add(note);
    }
    return pages;
  }

  private static void mark(PDDocument pdf, int number, List<FindingNote> notes, Job job) {
    try {
      PageWords words = new PageWords(PageLetters.of(pdf, number));
      PdfNotes marks = new PdfNotes(pdf, pdf.getPage(number - 1), job.date());
      Map<List<PageLetter>, List<FindingNote>> byWords = new LinkedHashMap<>();
      for (FindingNote note : notes) {
        byWords.computeIfAbsent(letters(words, note, job), k -> new ArrayList<>()).add(note);
      }
      byWords.forEach(marks::add);
      marks.write();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<PageLetter> letters(PageWords words, FindingNote note, Job job) {
    String text = note.place().text();
    if (text == null || text.isBlank()) {
      if (note.place().page() != null) job.near(note, "it names no words; noted in the corner");
      return List.of();
    }
    PageWords.FoundWords found = words.find(text, job.surroundings().of(note.place()));
    if (found.letters().isEmpty()) {
      job.near(note, "its words were not found on the page; noted in the corner");
    } else if (found.guessed()) {
      job.near(note, "its words stand on the page more than once; the first are marked");
    }
    return found.letters();
  }
}
