package clearbed.cli;

import clearbed.model.Document;
import clearbed.read.DocumentReader;
import clearbed.read.source.ReadOptions;
import clearbed.read.source.Source;
import clearbed.recognise.Recogniser;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.report.view.Viewed;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;

/**
 * The documents once more, with their words, one after the other: a check lets go of the words of a
 * document as soon as it has the facts, and one with a cache never has them.
 */
record ViewedDocuments(List<Path> paths, ReadOptions options, Vocabulary vocabulary)
    implements Iterable<Viewed> {

  @Override
  public Iterator<Viewed> iterator() {
    DocumentReader reader = new DocumentReader(paths, options);
    Recogniser recogniser = Recogniser.tracing(vocabulary);
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
        Document document = reader.read(source);
        source.discard();
        return new Viewed(document, recogniser.endings(document));
      }
    };
  }
}
