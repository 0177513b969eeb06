package clearbed.report.annotate;

import clearbed.base.DisplayText;
import clearbed.mark.ClosingLine;
import clearbed.mark.ListWords;
import clearbed.mark.OutputKind;
import clearbed.model.report.Report;
import clearbed.report.annotate.note.FindingNote;
import clearbed.report.wording.SafeText;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The findings of a document as a text file, for documents that cannot carry them. */
final class FindingsList {
  static final String ENDING = AnnotatedCopies.LIST_ENDING;
  private static final int WORDS_SHOWN = 300;

  private FindingsList() {}

  static void write(
      String document, Report.RunDetails run, List<FindingNote> notes, OutputStream out)
      throws IOException {
    StringBuilder text = new StringBuilder(ListWords.TITLE + DisplayText.path(document) + "\n");
    text.append(ListWords.RULES).append(run.ruleSet()).append(", ").append(run.date()).append('\n');
    int number = 0;
    for (FindingNote note : notes) {
      text.append('\n').append(++number).append(". ").append(note.heading()).append('\n');
      line(text, "Place", note.place().place());
      if (note.place().text() != null) line(text, "Words", quoted(note.place().text()));
      note.body().forEach(words -> line(text, "", words));
    }
    String closed = ClosingLine.closed(text.toString(), OutputKind.LIST);
    out.write(closed.getBytes(StandardCharsets.UTF_8));
  }

  private static void line(StringBuilder text, String label, String words) {
    String flat = SafeText.xml(words).replaceAll("\\s+", " ").strip();
    text.append("   ");
    if (!label.isEmpty()) text.append(label).append(": ");
    text.append(flat).append('\n');
  }

  private static String quoted(String words) {
    if (words.length() <= WORDS_SHOWN) return '"' + words + '"';
    int end = Character.isHighSurrogate(words.charAt(WORDS_SHOWN - 1)) ? 1 : 0;
    return '"' + words.substring(0, WORDS_SHOWN - end) + "...\" (cut here)";
  }
}
