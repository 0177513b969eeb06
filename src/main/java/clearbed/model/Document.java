package clearbed.model;

import java.util.List;

/**
 * One file as read.
 *
 * @param path as in {@link Origin#document()}
 * @param format short name: xlsx, docx, pdf, csv, ...
 * @param reason why it is not wholly read; empty when it is
 * @param blocks in reading order; empty when nothing could be read
 * @param gaps what was left unread inside a readable file, each with its place and reason
 */
public record Document(
    String path, String format, Status status, String reason, List<Block> blocks, List<Gap> gaps) {

  /** How much of a file was read. */
  public enum Status {
    READ,
    PARTLY,
    UNREADABLE,
    IGNORED
  }

  /** Something in a document that was passed over, and why. */
  public record Gap(Origin origin, String reason) {}

  public Document {
    blocks = List.copyOf(blocks);
    gaps = List.copyOf(gaps);
  }

  public static Document read(String path, String format, List<Block> blocks, List<Gap> gaps) {
    return new Document(
        path, format, gaps.isEmpty() ? Status.READ : Status.PARTLY, "", blocks, gaps);
  }

  public static Document unreadable(String path, String format, String reason) {
    return new Document(path, format, Status.UNREADABLE, reason, List.of(), List.of());
  }

  public static Document ignored(String path, String format, String reason) {
    return new Document(path, format, Status.IGNORED, reason, List.of(), List.of());
  }
}
