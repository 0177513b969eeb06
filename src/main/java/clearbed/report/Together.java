package clearbed.report;

import java.util.List;
import java.util.concurrent.ForkJoinTask;

/** Work on all processors. */
final class Together {
  private Together() {}

  /** Runs the tasks, the first on the calling thread and the last of the others first. */
  static void run(List<Runnable> tasks) {
    ForkJoinTask.invokeAll(tasks.stream().map(ForkJoinTask::adapt).toList());
  }
}
