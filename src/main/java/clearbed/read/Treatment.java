package clearbed.read;

import clearbed.model.Document;
import java.nio.file.Path;

/**
 * What becomes of each document, on the thread that read it, so that as many are treated at a time
 * as are read.
 */
@FunctionalInterface
public interface Treatment<T> {
  /** What is made of a document; called by several threads, and twice when memory ran out. */
  T of(Document document);

  /**
   * What is remembered of a file from earlier, by which it need not be read.
   *
   * @param path under which it is reported
   * @param named true when the user named this very file, rather than a folder that holds it
   * @param file where its bytes lie
   */
  default Memory<T> memory(String path, boolean named, Path file) {
    return Memory.none();
  }

  /** Holds what came of one file. */
  interface Memory<T> {
    /** What came of it earlier, or null. */
    T recalled();

    /** Keeps what came of it, and gives it back as it is to be handed on. */
    T keep(T result);

    /** Remembers nothing. */
    static <T> Memory<T> none() {
      return new Memory<>() {
        @Override
        public T recalled() {
          return null;
        }

        @Override
        public T keep(T result) {
          return result;
        }
      };
    }
  }
}
