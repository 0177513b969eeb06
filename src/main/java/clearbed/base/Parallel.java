package clearbed.base;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinTask;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Parallel work on all processors, in small tasks so that one that takes long keeps none of the
 * others waiting; what is thrown by a task is thrown on.
 */
public final class Parallel {
  private static final int MOST_AHEAD = 2_048;
  private static final int BATCH = 128;

  private Parallel() {}

  /** Runs the tasks, the first on the calling thread and the last of the others first. */
  public static void run(List<Runnable> tasks) {
    ForkJoinTask.invokeAll(tasks.stream().map(ForkJoinTask::adapt).toList());
  }

  /** The result for each item, in their order; each is a task. */
  public static <T, R> List<R> map(List<T> items, Function<T, R> work) {
    List<ForkJoinTask<R>> tasks =
        items.stream()
            .map(item -> ForkJoinTask.adapt((Callable<R>) () -> work.apply(item)))
            .toList();
    return ForkJoinTask.invokeAll(tasks).stream().map(ForkJoinTask::join).toList();
  }

  /**
   * The result for each of many items, in their order, for a caller that takes one after the other;
   * some are computed ahead, and no more results are held at a time.
   */
  public static <T, R> Stream<R> mapAhead(List<T> items, Function<T, R> work) {
    return pieces(items, MOST_AHEAD)
        .flatMap(
            ahead ->
                map(pieces(ahead, BATCH).toList(), batch -> batch.stream().map(work).toList())
                    .stream())
        .flatMap(List::stream);
  }

  private static <T> Stream<List<T>> pieces(List<T> items, int size) {
    return IntStream.iterate(0, from -> from < items.size(), from -> from + size)
        .mapToObj(from -> items.subList(from, Math.min(items.size(), from + size)));
  }
}
