package clearbed.cli;

import clearbed.base.io.AtomicFile;
import clearbed.cache.ResultCache;
import clearbed.model.QuestionLog;
import clearbed.model.Report;
import clearbed.report.FindingsWorkbook;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Writes the findings workbook; the same one again is copied from the cache.
 *
 * @param results may be null
 * @param outcome from which the report comes
 * @param layers rule files, which may be linked to where they lie among the documents
 */
record WorkbookOutput(ResultCache results, ResultCache.Outcome outcome, List<Path> layers) {

  void write(Report report, QuestionLog log, Sources sources, Path output) throws IOException {
    boolean first = results != null && !log.carries();
    String own = first ? results.fileKey(outcome, decisive(report, sources, output)) : null;
    if (own == null) {
      FindingsWorkbook.write(report, log, document -> sources.from(output, document), output);
      return;
    }
    byte[] kept = results.file(own);
    byte[] bytes = kept == null ? bytes(report, log, sources, output) : kept;
    AtomicFile.write(output, out -> out.write(bytes));
    if (kept == null) results.keepFile(own, bytes);
  }

  /** What else decides every byte of it: its date, and where its links lead. */
  private List<String> decisive(Report report, Sources sources, Path output) {
    List<String> words = new ArrayList<>();
    words.add(report.run().date());
    for (Path layer : layers) words.add(sources.from(output, layer.toString()));
    String before = "";
    for (Report.DocumentSummary document : report.documents()) {
      String file = document.path().split("!/", 2)[0];
      if (file.equals(before)) continue;
      words.add(sources.from(output, file));
      before = file;
    }
    return words;
  }

  private static byte[] bytes(Report report, QuestionLog log, Sources sources, Path output)
      throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FindingsWorkbook.write(report, log, document -> sources.from(output, document), out);
    return out.toByteArray();
  }
}
