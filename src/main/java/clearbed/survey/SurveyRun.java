package clearbed.survey;

import clearbed.cache.ResultCache;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Checks the projects of an archive on this machine, several at a time; one that goes wrong costs
 * its own line.
 */
public final class SurveyRun {
  private final Surveyor surveyor;
  private final LocalArchive archive;
  private final ResultCache<Surveyed> cache;
  private final List<String> rules;
  private final Set<Path> ownOutputs;
  private final Duration limit;

  /**
   * @param cache of earlier runs, or null
   * @param rules what decides the result beside bytes and program, in words
   * @param limit after which a project is given up, whatever it is at
   */
  public SurveyRun(
      Surveyor surveyor,
      LocalArchive archive,
      ResultCache<Surveyed> cache,
      List<String> rules,
      Set<Path> ownOutputs,
      Duration limit) {
    this.surveyor = surveyor;
    this.archive = archive;
    this.cache = cache;
    this.rules = rules;
    this.ownOutputs = ownOutputs;
    this.limit = limit;
  }

  /** A cache of projects in a folder, which need not be there yet. */
  public static ResultCache<Surveyed> cache(Path folder) throws IOException {
    return ResultCache.open(folder, SurveyedBytes.FORM);
  }

  /** What was done; to be closed when it is written. */
  public record Done(Surveys projects, int checked, int known) implements AutoCloseable {
    @Override
    public void close() {
      if (projects instanceof Spool spool) spool.close();
    }
  }

  /**
   * @param jobs projects at a time, 1 or more; the result is the same for every number
   * @param progress told of each that is done
   * @throws IOException when the temporary folder cannot take them
   */
  public Done run(List<ProjectFinder.FoundProject> projects, int jobs, Runnable progress)
      throws IOException {
    Spool spool = new Spool(projects.size());
    ExecutorService pool = Executors.newFixedThreadPool(jobs, SurveyRun::daemon);
    List<Future<SurveyStep>> steps = new ArrayList<>();
    List<Integer> again = new ArrayList<>();
    int known = 0;
    try {
      for (int i = 0; i < projects.size(); i++) {
        int at = i;
        steps.add(pool.submit(() -> beside(projects.get(at), spool, at, progress)));
      }
      for (int i = 0; i < steps.size(); i++) {
        SurveyStep step = finished(steps.get(i));
        if (step == SurveyStep.NO_MEMORY) again.add(i);
        if (step == SurveyStep.KNOWN) known++;
      }
      for (int i : again) {
        spool.put(i, alone(projects.get(i)));
        progress.run();
      }
      return new Done(spool, projects.size() - known, known);
    } catch (IOException | RuntimeException e) {
      spool.close();
      throw e;
    } finally {
      pool.shutdownNow();
    }
  }

  private enum SurveyStep {
    CHECKED,
    KNOWN,
    NO_MEMORY
  }

  private SurveyStep beside(
      ProjectFinder.FoundProject project, Spool spool, int at, Runnable progress)
      throws IOException {
    try {
      SurveyedProject outcome = outcome(project);
      spool.put(at, outcome.project);
      progress.run();
      return outcome.known ? SurveyStep.KNOWN : SurveyStep.CHECKED;
    } catch (OutOfMemoryError e) {
      return SurveyStep.NO_MEMORY;
    }
  }

  private record SurveyedProject(Surveyed project, boolean known) {}

  /** Once more, when nothing is checked beside it that may have taken the memory. */
  private Surveyed alone(ProjectFinder.FoundProject project) {
    try {
      return outcome(project).project;
    } catch (OutOfMemoryError e) {
      String why = "the memory does not suffice for it; give Java more (CLEARBED_JAVA_OPTS=-Xmx4g)";
      return Surveyed.notChecked(project.name(), why);
    }
  }

  private SurveyedProject outcome(ProjectFinder.FoundProject project) {
    Path place = archive.place(project);
    String key = key(project.name(), place);
    Surveyed kept = key == null ? null : cache.get(key);
    if (kept != null && kept.name().equals(project.name())) return new SurveyedProject(kept, true);
    Surveyed made = surveyor.checkWithin(limit, project.name(), place);
    // What changed while it was read is not what the key speaks of.
    if (key != null && made.isLasting() && key.equals(key(project.name(), place)))
      cache.put(key, made);
    return new SurveyedProject(made, false);
  }

  private String key(String name, Path place) {
    if (cache == null) return null;
    try {
      return ProjectKey.of(name, place, rules, ownOutputs);
    } catch (IOException e) {
      return null;
    }
  }

  private static SurveyStep finished(Future<SurveyStep> ahead) throws IOException {
    try {
      return ahead.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the survey was interrupted", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException failure) throw failure;
      if (e.getCause() instanceof IOException failure) throw failure;
      throw new IllegalStateException(e.getCause());
    }
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "projects");
    thread.setDaemon(true);
    return thread;
  }
}
