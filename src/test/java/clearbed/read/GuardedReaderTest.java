package clearbed.read;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.Document;
import clearbed.model.Document.Status;
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
        new GuardedReader(
            Duration.ofMillis(50),
            format ->
                source -> {
                  never.await();
                  return null;
                });

    Document document = reader.read(input());

    assertThat(document.status()).isEqualTo(Status.UNREADABLE);
    assertThat(document.reason()).startsWith("not read within");
  }

  @Test
  void errorsOfAParserAreReasonsLikeAnyOther() throws IOException {
    assertThat(failing(new StackOverflowError()).reason()).contains("nested too deeply");
    assertThat(failing(new NoClassDefFoundError("x")).reason()).startsWith("damaged or truncated");
    assertThat(failing(new IllegalStateException("a\nb")).reason())
        .isEqualTo("damaged or truncated text file (a b); open and save it again");
  }

  @Test
  void aDocumentThatRunsOutOfMemoryBesideOthersIsTriedOnceMoreAlone() throws IOException {
    AtomicInteger tries = new AtomicInteger();
    GuardedReader reader =
        new GuardedReader(
            Duration.ofSeconds(30),
            format ->
                source -> {
                  if (tries.incrementAndGet() == 1) throw new OutOfMemoryError();
                  return Document.read(source.path(), "txt", List.of(), List.of());
                });

    assertThat(reader.read(input()).status()).isEqualTo(Status.READ);
    assertThat(failing(new OutOfMemoryError()).reason()).contains("MiB").contains("-Xmx");
  }

  private Document failing(Error error) throws IOException {
    return new GuardedReader(
            Duration.ofSeconds(30),
            format ->
                source -> {
                  throw error;
                })
        .read(input());
  }

  private Document failing(RuntimeException failure) throws IOException {
    return new GuardedReader(
            Duration.ofSeconds(30),
            format ->
                source -> {
                  throw failure;
                })
        .read(input());
  }

  private Input input() throws IOException {
    Path file = Files.writeString(folder.resolve("note.txt"), "words");
    return new Input.Unread(new Source("note.txt", file, false, false));
  }
}
