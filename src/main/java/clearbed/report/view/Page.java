package clearbed.report.view;

import java.util.List;

/**
 * What the page shows; the template asks for it and for nothing else. All texts are plain text.
 *
 * @param policy what the page may load: nothing
 * @param style and script as elements, which are ours and the same on every page
 */
public record Page(
    String policy,
    String style,
    String script,
    String title,
    String decides,
    List<Fact> facts,
    List<String> levels,
    List<String> tags,
    List<String> checks,
    List<ShownFinding> findings,
    List<Integer> ofTheSet,
    List<ShownUnread> unread,
    List<Tile> tiles,
    List<ShownDocument> papers) {

  /** The finding of a number, from 1. */
  public ShownFinding note(int number) {
    return findings.get(number - 1);
  }

  /** A line over all: what, and how much of it. */
  public record Fact(String name, String value) {}

  /** A place in words, and the anchor that leads there; empty where none does. */
  public record ShownPlace(String words, String anchor) {}

  /**
   * A finding.
   *
   * @param id anchor of the finding itself
   * @param number from 1, in the order of the report
   * @param tags joined by blanks, for the filter
   * @param unnamed tiles that the message does not name
   * @param others further places
   */
  public record ShownFinding(
      String id,
      int number,
      String level,
      String check,
      String title,
      String state,
      String tags,
      List<String> tagList,
      String unnamed,
      String message,
      List<Fact> particulars,
      ShownPlace place,
      List<ShownPlace> others) {}

  /**
   * @param could what it might answer
   */
  public record ShownUnread(ShownPlace place, String words, String could) {}

  /** An entry with all that is said of it. */
  public record Tile(String tag, String of, List<ShownValue> values) {}

  /**
   * @param scope how near to the tile it is stated
   * @param taught the file and line that taught its words; else empty
   */
  public record ShownValue(
      String name, String value, String scope, String taught, ShownPlace place) {}

  /**
   * A document.
   *
   * @param remarks what a reader of it should know: what was not read and why
   * @param chunks pieces that are laid out when they come into sight
   */
  public record ShownDocument(
      String id, String path, String status, List<String> remarks, List<Chunk> chunks) {}

  /** Of about a page. */
  public record Chunk(String name, List<ShownPiece> pieces) {}

  /**
   * A paragraph or a table, and the findings on it.
   *
   * @param id anchor; empty where nothing leads there
   * @param heading 0 for running text, else how deep a heading it is, from 1
   * @param label number before it
   * @param part of the page, where it is not running text; else empty
   * @param grid null for a paragraph
   * @param findings on it, by their numbers
   */
  public record ShownPiece(
      String id,
      int heading,
      String label,
      String part,
      List<ShownRun> runs,
      ShownGrid grid,
      List<Integer> findings) {}

  /**
   * Words that ended in one way.
   *
   * @param kind {@code read}, {@code context}, {@code aside}, {@code unread} or empty
   * @param why shown with them
   */
  public record ShownRun(String kind, String text, String why) {}

  /**
   * @param name of the sheet or the table
   * @param columns letters of the columns shown
   * @param left rows that are not shown
   */
  public record ShownGrid(String name, List<String> columns, List<ShownRow> lines, int left) {}

  /**
   * A row.
   *
   * @param number from 1
   * @param findings on its cells, by their numbers
   */
  public record ShownRow(int number, List<Box> boxes, List<Integer> findings) {}

  /**
   * A cell.
   *
   * @param findings on it, by their numbers
   */
  public record Box(String id, int span, ShownRun words, List<Integer> findings) {}
}
