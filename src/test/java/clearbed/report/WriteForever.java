package clearbed.report;

import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.Report;
import clearbed.report.annotate.AnnotatedCopies;
import clearbed.report.workbook.FindingsWorkbook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Writes two issues of all outputs over each other, in turn, until somebody ends the process. */
public final class WriteForever {
  static final List<String> DATES = List.of("2026-03-02", "2026-04-06");

  private WriteForever() {}

  /** Takes the folder of the sources and that of the outputs. */
  public static void main(String[] folders) throws IOException {
    Path sources = Path.of(folders[0]);
    Path outputs = Path.of(folders[1]);
    for (int issue = 0; ; issue++) {
      write(sources, outputs, DATES.get(issue % 2));
      Files.writeString(outputs.resolveSibling("started"), "");
    }
  }

  static void write(Path sources, Path outputs, String date) throws IOException {
    // The issues differ in every output.
    boolean first = date.equals(DATES.get(0));
    Report report = DemoReport.report(date, f -> first || !f.id().equals("mortar-class/GT-4"));
    FindingsWorkbook.write(report, outputs.resolve("findings.xlsx"));
    FindingsJson.write(report, outputs.resolve("findings.json"));
    FindingsSarif.write(report, outputs.resolve("findings.sarif"));
    AnnotatedCopies.WrittenCopies result =
        AnnotatedCopies.write(marks(report), sources::resolve, outputs.resolve("marked"));
    if (!result.failures().isEmpty()) throw new IOException(result.failures().toString());
  }

  /** One finding in each kind of document. */
  private static Report marks(Report report) {
    Finding like = report.findings().get(0);
    return new Report(
        report.run(),
        List.of(),
        List.of(),
        List.of(
            at(like, report.run().date(), Origin.ofCell("s.xlsx", "Tile", "B2", "A118.1")),
            at(
                like,
                report.run().date(),
                new Origin("s.docx", null, null, null, 1, null, "mortar")),
            at(like, report.run().date(), new Origin("s.pdf", null, null, 1, 1, null, "mortar")),
            at(
                like,
                report.run().date(),
                new Origin("s.txt", null, null, null, 1, null, "mortar"))),
        List.of(),
        List.of(),
        List.of());
  }

  private static Finding at(Finding f, String date, Origin place) {
    return new Finding(
        f.check() + "/" + place.document(),
        f.check(),
        f.kind(),
        Level.ERROR,
        f.state(),
        f.tags(),
        f.attribute(),
        place,
        List.of(),
        f.message() + " Issue of " + date + ".",
        "",
        f.expected(),
        f.steps(),
        f.question(),
        f.clause(),
        f.source(),
        "",
        "",
        Finding.FindingWording.NONE);
  }
}
