package clearbed.model.document;

import java.util.List;

/**
 * One file as read.
 *
 * @param path as in {@link Origin#document()}
 * @param format short name: xlsx, docx, pdf, csv, ...
 * @param reason why it is not wholly read; empty when it is
 * @param blocks in reading order; empty when nothing could be read
 * @param gaps what a reader of it should know of, each with its place and reason: what was left
 *     unread, what was read and is not in force, what was read though it does not show
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

  /** What became of the words at a gap. */
  public enum GapFate {
    /** Nobody knows what they say. */
    UNREAD,
    /** Their writer took them back: struck through, deleted. */
    NOT_IN_FORCE,
    /** They were read, and are no requirement by themselves: a page header, a person's remark. */
    PASSED_OVER,
    /** They were read like others; a person should know of it: a hidden row, an insertion. */
    READ
  }

  /**
   * Something in a document that is not simply read, and why.
   *
   * @param origin the place, with the words where they are known
   */
  public record Gap(Origin origin, String reason, GapFate fate) {
    public Gap(Origin origin, String reason) {
      this(origin, reason, GapFate.UNREAD);
    }

    public boolean isUnread() {
      return fate == GapFate.UNREAD;
    }
  }

  public Document {
    blocks = List.copyOf(blocks);
    gaps = List.copyOf(gaps);
  }

  /** The same document with these blocks in place of its own. */
  public Document withBlocks(List<Block> now) {
    return new Document(path, format, status, reason, now, gaps);
  }

  public static Document read(String path, String format, List<Block> blocks, List<Gap> gaps) {
    return new Document(path, format, statusFor(gaps), "", blocks, gaps);
  }

  /** Partly, when any of the gaps is unread. */
  public static Status statusFor(List<Gap> gaps) {
    return gaps.stream().anyMatch(Gap::isUnread) ? Status.PARTLY : Status.READ;
  }

  public static Document unreadable(String path, String format, String reason) {
    return new Document(path, format, Status.UNREADABLE, reason, List.of(), List.of());
  }

  public static Document ignored(String path, String format, String reason) {
    return new Document(path, format, Status.IGNORED, reason, List.of(), List.of());
  }
}
