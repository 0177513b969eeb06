package clearbed.report.annotate.office;

import clearbed.read.word.WordParagraphs;
import clearbed.report.annotate.note.FindingNote;
import clearbed.report.annotate.note.Job;
import clearbed.report.annotate.note.MarkedCopy;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.util.List;
import java.util.Optional;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;

/** Word documents: each note is a comment on its paragraph. */
public final class WordCopy implements MarkedCopy {

  @Override
  public void write(Job job, OutputStream out) throws IOException {
    try (InputStream in = Files.newInputStream(job.source());
        XWPFDocument word = new XWPFDocument(in)) {
      OfficeFile.warnIfSigned(word, job);
      WordComments comments = new WordComments(word, job.date());
      for (FindingNote note : job.notes()) comments.add(paragraph(word, note, job), note);
      OfficeFile.write(word, out);
    }
  }

  private static XWPFParagraph paragraph(XWPFDocument word, FindingNote note, Job job)
      throws CannotMark {
    Optional<XWPFParagraph> found = WordParagraphs.at(word, note.place());
    if (found.isEmpty()) {
      job.near(
          note, "it names no paragraph of the body that is there; noted at the first with words");
      return firstWithWords(word);
    }
    if (!SameWords.share(found.get().getCTP(), note.place().text())) {
      job.near(note, "the paragraph there does not hold the words");
    }
    return found.get();
  }

  private static XWPFParagraph firstWithWords(XWPFDocument word) throws CannotMark {
    List<XWPFParagraph> all = WordParagraphs.of(word);
    if (all.isEmpty()) throw new CannotMark("a document without paragraphs");
    return all.stream().filter(p -> !p.getText().isBlank()).findFirst().orElse(all.get(0));
  }
}
