package clearbed.bench;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/** Bare Tika over a folder: threads, folder. */
public final class BareBatch {
  private BareBatch() {}

  public static void main(String[] args) throws Exception {
    java.util.logging.LogManager.getLogManager().reset();
    List<Path> files = BareOpen.files(Path.of(args[1]));
    ExecutorService pool = Executors.newFixedThreadPool(Integer.parseInt(args[0]));
    AtomicLong characters = new AtomicLong();
    for (Path file : files) {
      pool.execute(() -> characters.addAndGet(BareTika.characters(file)));
    }
    pool.shutdown();
    pool.awaitTermination(1, TimeUnit.DAYS);
    System.out.println(files.size() + " files, " + characters + " characters");
    System.out.flush();
    Runtime.getRuntime().halt(0);
  }
}
