package clearbed.model;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinTask;
import java.util.function.Function;

/** Work on all processors, piece by piece: one that takes long keeps none of the others waiting. */
public final class AtOnce {
  private AtOnce() {}

  /**
   * Runs the tasks, the first on the calling thread and the last of the others first. What one of
   * them throws is thrown on.
   */
  public static void run(List<Runnable> tasks) {
    ForkJoinTask.invokeAll(tasks.stream().map(ForkJoinTask::adapt).toList());
  }

  /** What comes of each, in their order. */
  public static <T, R> List<R> each(List<T> many, Function<T, R> work) {
    List<ForkJoinTask<R>> tasks =
        many.stream().map(one -> ForkJoinTask.adapt((Callable<R>) () -> work.apply(one))).toList();
    return ForkJoinTask.invokeAll(tasks).stream().map(ForkJoinTask::join).toList();
  }
}
