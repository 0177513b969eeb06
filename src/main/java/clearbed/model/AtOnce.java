package clearbed.model;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinTask;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Work on all processors, piece by piece: one that takes long keeps none of the others waiting. */
public final class AtOnce {
  private static final int AHEAD = 2_048;
  private static final int PIECE = 128;

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

  /**
   * What comes of each, in their order; some are worked on ahead, and no more of them are held at a
   * time.
   */
  public static <T, R> Stream<R> ahead(List<T> many, Function<T, R> work) {
    return pieces(many, AHEAD)
        .flatMap(
            some ->
                each(pieces(some, PIECE).toList(), piece -> piece.stream().map(work).toList())
                    .stream())
        .flatMap(List::stream);
  }

  private static <T> Stream<List<T>> pieces(List<T> many, int size) {
    return IntStream.iterate(0, from -> from < many.size(), from -> from + size)
        .mapToObj(from -> many.subList(from, Math.min(many.size(), from + size)));
  }
}
