package clearbed.read;

import clearbed.read.guard.FaultyWorker;
import clearbed.read.guard.IsolatingReader;
import clearbed.read.source.ArchiveLimits;
import clearbed.read.source.ReadOptions;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;

/** Reads the folder of the first argument in this process and prints a line for each document. */
final class FaultyRun {
  private FaultyRun() {}

  public static void main(String[] arguments) {
    ReadOptions options =
        ReadOptions.defaults().withJobs(2).withDocumentTimeout(Duration.ofSeconds(20));
    IsolatingReader.Means means =
        new IsolatingReader.Means(Faults::reader, FaultyWorker.COMMAND, Integer.MAX_VALUE);
    DocumentReader reader =
        new DocumentReader(
            List.of(Path.of(arguments[0])), options, ArchiveLimits.standard(), means);
    ReadAll.by(reader, 2)
        .forEach(d -> System.out.println(d.path() + " " + d.status() + " " + d.reason()));
    System.out.println("done");
    System.out.flush();
    Runtime.getRuntime().halt(0);
  }
}
