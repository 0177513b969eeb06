package clearbed.report.annotate.note;

import java.io.IOException;
import java.io.OutputStream;

/** Copies a document of one format with its notes in it. */
public interface MarkedCopy {
  /**
   * Writes the copy.
   *
   * @throws CannotMark when this document cannot carry marks
   * @throws IOException when it cannot be read or the copy not be written
   */
  void write(Job job, OutputStream out) throws IOException;

  /** Why a document cannot carry marks, in words for its reader. */
  final class CannotMark extends IOException {
    private static final long serialVersionUID = 1L;

    public CannotMark(String reason) {
      super(reason);
    }
  }
}
