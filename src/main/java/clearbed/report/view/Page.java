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
    List<Note> findings,
    List<Integer> ofTheSet,
    List<Unread> unread,
    List<Tile> tiles,
    List<Paper> papers) {

  /** The finding of a number, from 1. */
  public Note note(int number) {
    return findings.get(number - 1);
  }

  /** A line over all: what, and how much of it. */
  public record Fact(String name, String value) {}

  /** A place in words, and the anchor that leads there; empty where none does. */
  public record Place(String words, String anchor) {}

  /**
   * A finding.
   *
   * @param id anchor of the finding itself
   * @param number from 1, in the order of the report
   * @param tags joined by blanks, for the filter
   * @param unnamed tiles that the message does not name
   * @param others further places
   */
  public record Note(
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
      Place place,
      List<Place> others) {}

  /**
   * @param could what it might answer
   */
  public record Unread(Place place, String words, String could) {}

  /** An entry with all that is said of it. */
  public record Tile(String tag, String of, List<Said> values) {}

  /**
   * @param scope how near to the tile it is stated
   * @param taught the file and line that taught its words; else empty
   */
  public record Said(String name, String value, String scope, String taught, Place place) {}

  /**
   * A document.
   *
   * @param remarks what a reader of it should know: what was not read and why
   * @param chunks pieces that are laid out when they come into sight
   */
  public record Paper(
      String id, String path, String status, List<String> remarks, List<Chunk> chunks) {}

  /** Of about a page. */
  public record Chunk(String name, List<Piece> pieces) {}

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
  public record Piece(
      String id,
      int heading,
      String label,
      String part,
      List<Run> runs,
      Grid grid,
      List<Integer> findings) {}

  /**
   * Words that ended in one way.
   *
   * @param kind {@code read}, {@code context}, {@code aside}, {@code unread} or empty
   * @param why shown with them
   */
  public record Run(String kind, String text, String why) {}

  /**
   * @param name of the sheet or the table
   * @param columns letters of the columns shown
   * @param left rows that are not shown
   */
  public record Grid(String name, List<String> columns, List<Line> lines, int left) {}

  /**
   * A row.
   *
   * @param number from 1
   * @param findings on its cells, by their numbers
   */
  public record Line(int number, List<Box> boxes, List<Integer> findings) {}

  /**
   * A cell.
   *
   * @param findings on it, by their numbers
   */
  public record Box(String id, int span, Run words, List<Integer> findings) {}
}
