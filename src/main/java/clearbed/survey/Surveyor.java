package clearbed.survey;

import clearbed.batch.Batch;
import clearbed.cache.FactStore;
import clearbed.check.rules.RuleSet;
import clearbed.model.document.Document;
import clearbed.model.report.ProjectNames;
import clearbed.model.report.Report;
import clearbed.project.CitedSet;
import clearbed.project.ProjectReport;
import clearbed.project.RuleChoice;
import clearbed.project.Rulebook;
import clearbed.project.Summaries;
import clearbed.read.DocumentReader;
import clearbed.read.source.ReadOptions;
import clearbed.recognise.EarlierFacts;
import clearbed.recognise.Facts;
import clearbed.recognise.LearnedMarks;
import clearbed.recognise.Recogniser;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.taught.Lessons;
import clearbed.resolve.Project;
import clearbed.resolve.Resolver;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;

/** Checks one project after the other, as {@code check} does; may be asked by several threads. */
public final class Surveyor {
  private final RuleChoice choice;
  private final Supplier<ReadOptions> options;
  private final String version;
  private final Vocabulary vocabulary;
  private final CompletableFuture<Recogniser> recogniser;
  private final Map<String, RuleSet> sets = new ConcurrentHashMap<>();

  /**
   * @param options of reading one project, with its deadline
   * @param version of the program
   * @throws IOException naming file, line and reason when a rule file is wrong
   */
  public Surveyor(RuleChoice choice, Supplier<ReadOptions> options, String version)
      throws IOException {
    this.choice = choice;
    this.options = options;
    this.version = version;
    this.vocabulary = choice.vocabulary(Lessons.NOTHING);
    this.recogniser = CompletableFuture.completedFuture(new Recogniser(vocabulary));
    sets.put(choice.first(), choice.load(vocabulary, choice.first()));
  }

  /** Names and digests of all rules that may come to hold, and the limits of reading. */
  public List<String> rules() {
    List<String> words = new ArrayList<>();
    for (String set : choice.possible()) words.add(set + " " + rules(set).digest());
    words.add(options.get().documentTimeout().toString());
    return words;
  }

  /**
   * What a project came to. What goes wrong with a document is in it; what goes wrong with the
   * project is thrown.
   *
   * @param name under which it is reported
   * @param place its folder or zip file
   */
  public Surveyed check(String name, Path place) {
    List<Facts> facts = facts(place, recogniser);
    Lessons marks = LearnedMarks.in(facts, vocabulary);
    Vocabulary words = vocabulary;
    if (!marks.isEmpty()) {
      words = learned(marks);
      Recogniser again = new Recogniser(words, new EarlierFacts(facts, marks));
      facts = facts(place, CompletableFuture.completedFuture(again));
    }
    Map<String, String> sections = SurveyedRows.sections(facts);
    CitedSet set = choice.forDocuments(facts);
    RuleSet rules = marks.isEmpty() ? rules(set.name()) : rules(words, set.name());
    Rulebook rulebook = new Rulebook(words, rules, set.why());
    Project project = new Resolver(words).resolve(facts, rulebook.rules().facts());
    if (facts.stream().allMatch(f -> f.document().status() == Document.Status.IGNORED))
      return Surveyed.without(
          name,
          Surveyed.SurveyStatus.NOTHING_TO_READ,
          facts.isEmpty()
              ? "no file in it"
              : "no document among its files: " + facts.get(0).document().reason(),
          SurveyedRows.documents(Summaries.of(project), sections));
    Report report =
        ProjectReport.of(
            project,
            rulebook,
            LocalDate.EPOCH,
            Instant.EPOCH,
            new ProjectNames("", "", ""),
            version,
            Report.Waited.NEVER);
    return SurveyedRows.of(name, report, facts);
  }

  private List<Facts> facts(Path place, CompletableFuture<Recogniser> by) {
    List<Facts> facts = new ArrayList<>();
    // Projects are read side by side; the documents of each one after the other.
    ReadOptions own = options.get().withJobs(1);
    DocumentReader reader = new DocumentReader(List.of(place), own);
    try (Batch batch = new Batch(reader, 1, FactStore.NONE, by)) {
      while (batch.hasNext()) facts.add(batch.next());
    }
    return facts;
  }

  private Vocabulary learned(Lessons marks) {
    try {
      return choice.vocabulary(marks);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private RuleSet rules(Vocabulary words, String set) {
    try {
      return choice.load(words, set);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The same on a thread of its own, so that one that never ends holds up nothing but itself; what
   * goes wrong with the project is its reason. Only memory that does not suffice is thrown.
   */
  public Surveyed checkWithin(Duration limit, String name, Path place) {
    CompletableFuture<Surveyed> result = new CompletableFuture<>();
    Runnable work =
        () -> {
          try {
            result.complete(check(name, place));
          } catch (Throwable e) {
            result.completeExceptionally(e);
          }
        };
    Thread thread = new Thread(work, "project");
    thread.setDaemon(true);
    thread.start();
    try {
      return result.get(limit.toSeconds(), TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      thread.interrupt();
      String why = "not done within " + limit.toSeconds() + " s; give more by --timeout";
      return Surveyed.notChecked(name, why);
    } catch (InterruptedException e) {
      thread.interrupt();
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the survey was interrupted", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof OutOfMemoryError memory) throw memory;
      String what = e.getCause().getClass().getSimpleName();
      return Surveyed.notChecked(
          name, "could not be checked (" + what + "); check it by itself, and report it");
    }
  }

  private RuleSet rules(String name) {
    return sets.computeIfAbsent(
        name,
        set -> {
          try {
            return choice.load(vocabulary, set);
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }
}
