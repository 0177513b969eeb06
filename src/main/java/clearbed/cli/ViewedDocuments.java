package clearbed.cli;

import clearbed.model.document.Document;
import clearbed.model.report.Account;
import clearbed.read.DocumentReader;
import clearbed.read.guard.OwnThread;
import clearbed.read.source.ReadOptions;
import clearbed.read.source.Source;
import clearbed.recognise.Recogniser;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.report.view.Viewed;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;

/**
 * The documents once more, with their words, one after the other: a check lets go of the words of a
 * document as soon as it has the facts, and one with a cache never has them.
 *
 * @param unreadable the reason of each document that the check could not read, by its path; none is
 *     tried again
 */
record ViewedDocuments(
    List<Path> paths, ReadOptions options, Vocabulary vocabulary, Map<String, String> unreadable)
    implements Iterable<Viewed> {

  @Override
  public Iterator<Viewed> iterator() {
    DocumentReader reader = new DocumentReader(paths, options);
    Recogniser recogniser = Recogniser.tracing(vocabulary);
    OwnThread ownThread = new OwnThread(reader.limits());
    Iterator<Source> sources = reader.sources();
    return new Iterator<>() {
      @Override
      public boolean hasNext() {
        boolean more = sources.hasNext();
        if (!more) reader.close();
        return more;
      }

      @Override
      public Viewed next() {
        Source source = sources.next();
        String reason = unreadable.get(source.path());
        Document document =
            reason == null
                ? reader.read(source)
                : Document.unreadable(source.path(), source.extension(), reason);
        source.discard();
        return new Viewed(document, endings(ownThread, recogniser, document));
      }
    };
  }

  /** What cannot be made out in time is shown without the marks of what was read. */
  private static List<Account.Ending> endings(
      OwnThread ownThread, Recogniser recogniser, Document document) {
    try {
      return ownThread.run(
          "show " + document.path(), () -> recogniser.endings(document), List.of());
    } catch (TimeoutException e) {
      return List.of();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("reading was interrupted", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    }
  }
}
