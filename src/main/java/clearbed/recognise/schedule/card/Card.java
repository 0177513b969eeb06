package clearbed.recognise.schedule.card;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import java.util.List;

/**
 * What is said of one tile by names and values.
 *
 * @param mark of the tile
 * @param title the words beside the mark, or over the card, that tell what the tile is
 */
record Card(Said mark, List<Said> title, List<Pair> pairs) {
  /**
   * Words of a document.
   *
   * @param remark a comment attached to them, or empty
   */
  record Said(String text, String remark, Origin at) {
    static Said of(Table table, Table.Cell cell) {
      return new Said(cell.text().strip(), cell.remark(), table.origin(cell));
    }

    boolean isBlank() {
      return text.isBlank();
    }

    Said withText(String words) {
      return new Said(words, remark, at);
    }
  }

  /**
   * A value under its name.
   *
   * @param label the name in full: "Colour" in the part on grout is "Grout Colour"
   * @param value blank where the name stands beside nothing
   */
  record Pair(Said name, String label, Said value) {}
}
