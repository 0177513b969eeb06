package clearbed.read.guard;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.base.Cancellation;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.read.source.FormatReader;
import clearbed.read.source.ReadingLimits;
import clearbed.read.source.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GuardedReaderTest {
  @TempDir Path folder;

  @Test
  void aParserThatHangsIsGivenUp() throws IOException {
    CountDownLatch never = new CountDownLatch(1);
    GuardedReader reader =
        reader(
            Duration.ofMillis(50),
            source -> {
              never.await();
              return null;
            });

    Document document = reader.read(input()).document();

    assertThat(document.status()).isEqualTo(Status.UNREADABLE);
    assertThat(document.reason()).startsWith("not read within");
  }

  @Test
  void theThreadOfADocumentThatWasGivenUpEndsAtTheNextPieceItTakesOver()
      throws IOException, InterruptedException {
    GuardedReader reader = reader(Duration.ofMillis(50), source -> endless());

    assertThat(reader.read(input("endless.txt")).ending())
        .isEqualTo(ReadOutcome.ReadEnding.TIMED_OUT);

    for (Thread left : threadsThatRead()) left.join(10_000);
    assertThat(threadsThatRead()).isEmpty();
  }

  private static List<Thread> threadsThatRead() {
    return Thread.getAllStackTraces().keySet().stream()
        .filter(thread -> thread.getName().equals("read endless.txt"))
        .toList();
  }

  private static Document endless() {
    while (true) Cancellation.check();
  }

  @Test
  void errorsOfAParserAreReasonsLikeAnyOther() throws IOException {
    assertThat(failing(new StackOverflowError()).reason()).contains("nested too deeply");
    assertThat(failing(new NoClassDefFoundError("x")).reason()).startsWith("damaged or truncated");
    assertThat(failing(new IllegalStateException("a\nb")).reason())
        .isEqualTo("damaged or truncated text file (a b); open and save it again");
  }

  @Test
  void afterALackOfMemoryNoRefusalIsBelieved() throws IOException {
    AtomicInteger tries = new AtomicInteger();
    GuardedReader reader =
        reader(
            Duration.ofSeconds(30),
            source -> {
              if (tries.incrementAndGet() == 1) throw new OutOfMemoryError();
              throw new IllegalStateException("a wounded library");
            });

    assertThat(reader.isHarmed()).isFalse();
    ReadOutcome first = reader.read(input());
    assertThat(first.ending()).isEqualTo(ReadOutcome.ReadEnding.OUT_OF_MEMORY);
    assertThat(first.document().reason()).contains("MiB").contains("-Xmx");
    assertThat(reader.isHarmed()).isTrue();
    assertThat(reader.read(input()).ending()).isEqualTo(ReadOutcome.ReadEnding.BROKEN);
  }

  private static GuardedReader reader(Duration timeout, FormatReader parser) {
    return new GuardedReader(ReadingLimits.of(timeout), format -> parser);
  }

  private Document failing(Throwable failure) throws IOException {
    return reader(
            Duration.ofSeconds(30),
            source -> {
              if (failure instanceof Error error) throw error;
              throw (Exception) failure;
            })
        .read(input())
        .document();
  }

  private Source input() throws IOException {
    return input("note.txt");
  }

  private Source input(String name) throws IOException {
    Path file = Files.writeString(folder.resolve(name), "words");
    return new Source(name, file, false, false);
  }
}
