package clearbed.cli;

import clearbed.model.Document;
import clearbed.model.Entry;
import clearbed.model.Report;
import clearbed.read.DocumentReader;
import clearbed.read.ReadOptions;
import clearbed.recognise.Facts;
import clearbed.recognise.Recogniser;
import clearbed.recognise.Tags;
import clearbed.resolve.Project;
import clearbed.resolve.ProjectFact;
import clearbed.resolve.Resolver;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * What was read and understood of a batch, without the documents' text.
 *
 * @param documents each without its blocks
 */
record Understanding(
    Project project, List<Document> documents, List<Report.DocumentSummary> summaries) {

  /** Reads and joins a batch; every document is let go once its facts are taken. */
  static Understanding of(
      List<Path> paths,
      ReadOptions options,
      Rulebook.Coming rulebook,
      Consumer<String> progress) {
    if (paths.stream().noneMatch(Files::exists)) {
      throw new UsageFailure(
          paths.get(0)
              + ": no such file or folder; give the documents, folders or zip files to check");
    }
    List<Document> documents = new ArrayList<>();
    List<Facts> facts = new ArrayList<>();
    // The first documents are read while the rules are loaded.
    Recogniser[] recogniser = new Recogniser[1];
    new DocumentReader(options)
        .read(
            paths,
            document -> {
              if (recogniser[0] == null)
                recogniser[0] = new Recogniser(rulebook.get().vocabulary());
              Facts found = recognise(recogniser[0], document, documents);
              if (found != null) facts.add(found);
              progress.accept(document.path());
            });
    List<ProjectFact> known = rulebook.get().rules().facts();
    Project project = new Resolver(rulebook.get().vocabulary()).resolve(facts, known);
    return new Understanding(project, documents, summaries(documents, facts, project));
  }

  private static Facts recognise(
      Recogniser recogniser, Document document, List<Document> documents) {
    boolean read =
        document.status() == Document.Status.READ || document.status() == Document.Status.PARTLY;
    if (!read) {
      documents.add(document);
      return null;
    }
    try {
      Facts facts = recogniser.recognise(document);
      boolean whole = facts.gaps().isEmpty() && document.status() == Document.Status.READ;
      Document.Status status = whole ? Document.Status.READ : Document.Status.PARTLY;
      documents.add(
          new Document(
              document.path(),
              document.format(),
              status,
              document.reason(),
              List.of(),
              facts.gaps()));
      return facts;
    } catch (StackOverflowError | RuntimeException e) {
      documents.add(
          Document.unreadable(
              document.path(),
              document.format(),
              "its text could not be analysed ("
                  + e.getClass().getSimpleName()
                  + "); report this file"));
      return null;
    }
  }

  private static List<Report.DocumentSummary> summaries(
      List<Document> documents, List<Facts> facts, Project project) {
    List<Report.DocumentSummary> out = new ArrayList<>();
    Set<String> glass =
        project.glass().stream()
            .map(e -> Tags.key(e.tag()))
            .collect(java.util.stream.Collectors.toSet());
    for (Document d : documents) {
      Set<String> here = new java.util.TreeSet<>();
      Set<String> other = new java.util.TreeSet<>();
      for (Facts f : facts) {
        if (!f.document().equals(d.path())) continue;
        f.rows()
            .forEach(
                r -> (glass.contains(Tags.key(r.tag())) ? here : other).add(Tags.key(r.tag())));
      }
      for (Entry e : project.glass()) {
        if (e.origin().document().equals(d.path())) here.add(Tags.key(e.tag()));
      }
      out.add(
          new Report.DocumentSummary(
              d.path(), d.format(), d.status(), d.reason(), here.size(), other.size(), d.gaps()));
    }
    return out;
  }

  boolean anyUnreadable() {
    return documents.stream().anyMatch(d -> d.status() == Document.Status.UNREADABLE);
  }
}
