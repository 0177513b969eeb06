package clearbed.report.annotate;

import clearbed.base.io.AtomicFile;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import clearbed.read.guard.OwnThread;
import clearbed.read.source.ReadOptions;
import clearbed.read.source.ReadingLimits;
import clearbed.report.annotate.note.FindingNote;
import clearbed.report.annotate.note.Job;
import clearbed.report.annotate.note.MarkedCopy;
import clearbed.report.annotate.note.NearbyWords;
import clearbed.report.annotate.note.Reason;
import clearbed.report.annotate.note.Shortfall;
import clearbed.report.annotate.office.WordCopy;
import clearbed.report.annotate.office.XlsCopy;
import clearbed.report.annotate.office.XlsxCopy;
import clearbed.report.annotate.pdf.PdfCopy;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;

/** Copies of the source documents with the findings written at their places. */
public final class AnnotatedCopies {
  /** What follows the name of a document in the name of its list of findings. */
  public static final String LIST_ENDING = ".findings.txt";

  /**
   * What came of it.
   *
   * @param files written, in the order of the report's documents
   * @param shortfalls notes that are not in a copy, or not at their words, each with the reason
   * @param failures one line each; the other documents were done all the same
   */
  public record WrittenCopies(List<Path> files, List<Shortfall> shortfalls, List<String> failures) {
    public WrittenCopies {
      files = List.copyOf(files);
      shortfalls = List.copyOf(shortfalls);
      failures = List.copyOf(failures);
    }
  }

  private final OwnThread ownThread;
  private final Report report;
  private final Function<String, Path> sourceOf;
  private final CopyFolder folder;
  private final List<Path> files = new ArrayList<>();
  private final List<Shortfall> shortfalls = new ArrayList<>();
  private final List<String> failures = new ArrayList<>();

  private AnnotatedCopies(
      Report report,
      Function<String, Path> sourceOf,
      Path folder,
      boolean overwrite,
      ReadingLimits limits) {
    this.ownThread = new OwnThread(limits);
    this.report = report;
    this.sourceOf = sourceOf;
    this.folder = new CopyFolder(folder, overwrite);
  }

  /**
   * Writes a copy of every document in which a reported finding has a place; findings that are
   * suppressed or resolved leave no mark. Formats that take no marks, and documents that refuse
   * them, get a list beside: {@code name.findings.txt}. Sources are only read; no exception is
   * thrown for what goes wrong with a file.
   *
   * @param sourceOf from {@link Origin#document()} to the file on disk; null when it lies in an
   *     archive or is gone
   * @param folder for the copies, made when missing
   */
  public static WrittenCopies write(Report report, Function<String, Path> sourceOf, Path folder) {
    return write(report, sourceOf, folder, false, ReadOptions.defaults().limits());
  }

  /**
   * The same.
   *
   * @param overwrite true when files in the folder may be replaced that are no copies of ours, or
   *     were changed since
   * @param limits of the work on one document
   */
  public static WrittenCopies write(
      Report report,
      Function<String, Path> sourceOf,
      Path folder,
      boolean overwrite,
      ReadingLimits limits) {
    return new AnnotatedCopies(report, sourceOf, folder, overwrite, limits).run();
  }

  private WrittenCopies run() {
    Map<String, List<FindingNote>> byDocument = notes();
    Map<String, String> formats = new LinkedHashMap<>();
    for (var document : report.documents()) {
      formats.put(document.path(), document.format());
      boolean passedOver = document.status() == Document.Status.IGNORED;
      Path source = passedOver ? null : sourceOf.apply(document.path());
      if (source != null) folder.guard(source);
    }
    byDocument.keySet().forEach(document -> formats.putIfAbsent(document, ""));
    NearbyWords surroundings = NearbyWords.of(report);
    formats.forEach(
        (document, format) -> {
          List<FindingNote> notes = byDocument.get(document);
          if (notes != null) copy(document, format, notes, surroundings);
        });
    return new WrittenCopies(files, shortfalls, failures);
  }

  private Map<String, List<FindingNote>> notes() {
    Map<String, List<FindingNote>> notes = new LinkedHashMap<>();
    for (Finding finding : report.findings()) {
      if (!finding.suppressed().isEmpty() || finding.state() == State.RESOLVED) continue;
      FindingNote.places(finding)
          .forEach(
              place -> {
                boolean first = !notes.containsKey(place.document());
                FindingNote note = new FindingNote(finding, place, first);
                if (place.document().isEmpty()) {
                  shortfalls.add(Job.shortfall(note, false, "no document states it"));
                } else {
                  notes.computeIfAbsent(place.document(), k -> new ArrayList<>()).add(note);
                }
              });
    }
    return notes;
  }

  private void copy(
      String document, String format, List<FindingNote> notes, NearbyWords surroundings) {
    Path source = sourceOf.apply(document);
    if (source == null || !Files.isRegularFile(source)) {
      String reason =
          document.contains("!/")
              ? "the document lies in an archive; unpack it and check the folder to get a copy"
              : "the document is not there any more";
      for (FindingNote note : notes) shortfalls.add(Job.shortfall(note, false, reason));
      return;
    }
    List<Shortfall> found = new ArrayList<>();
    Job job = new Job(document, source, notes, date(), surroundings, found::add, List.of());
    MarkedCopy marks = marks(format.isEmpty() ? extension(document) : format);
    List<FindingNote> listed = marks == null ? notes : marked(job, marks, found);
    if (!listed.isEmpty()) list(document, listed);
  }

  /** The notes that are left for the list. */
  private List<FindingNote> marked(Job job, MarkedCopy marks, List<Shortfall> found) {
    try {
      Path target = folder.file(job.document());
      AtomicFile.write(target, out -> withinLimits(job, marks, out));
      files.add(target);
      shortfalls.addAll(found);
      return job.listed();
    } catch (IOException | RuntimeException | OutOfMemoryError | StackOverflowError e) {
      String reason = Reason.of(e);
      failures.add(job.document() + ": no marked copy: " + reason);
      for (FindingNote note : job.notes()) {
        shortfalls.add(Job.shortfall(note, false, "no marked copy: " + reason));
      }
      return job.notes();
    }
  }

  private void withinLimits(Job job, MarkedCopy marks, OutputStream out) throws IOException {
    try {
      Boolean done =
          ownThread.run(
              "mark " + job.document(),
              () -> {
                marks.write(job, out);
                return true;
              },
              false);
      if (!done) throw new OutOfMemoryError(job.document());
    } catch (TimeoutException e) {
      throw new IOException(
          "not marked within " + ownThread.seconds() + " s; give more by --document-timeout");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("marking was interrupted");
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException io) throw io;
      if (e.getCause() instanceof RuntimeException wrong) throw wrong;
      throw (Error) e.getCause();
    }
  }

  private void list(String document, List<FindingNote> notes) {
    try {
      Path target = folder.file(document + FindingsList.ENDING);
      AtomicFile.write(target, out -> FindingsList.write(document, report.run(), notes, out));
      files.add(target);
    } catch (IOException | RuntimeException e) {
      String reason = Reason.of(e);
      failures.add(document + ": no list of findings: " + reason);
      for (FindingNote note : notes)
        shortfalls.add(Job.shortfall(note, false, "no list: " + reason));
    }
  }

  private static MarkedCopy marks(String format) {
    return switch (format) {
      case "xlsx", "xlsm" -> new XlsxCopy();
      case "xls" -> new XlsCopy();
      case "docx", "docm" -> new WordCopy();
      case "pdf" -> new PdfCopy();
      default -> null;
    };
  }

  private static String extension(String document) {
    int dot = document.lastIndexOf('.');
    return document.substring(dot + 1).toLowerCase(Locale.ROOT);
  }

  private Instant date() {
    try {
      return LocalDate.parse(report.run().date()).atStartOfDay().toInstant(ZoneOffset.UTC);
    } catch (DateTimeParseException | NullPointerException undated) {
      return Instant.EPOCH;
    }
  }
}
