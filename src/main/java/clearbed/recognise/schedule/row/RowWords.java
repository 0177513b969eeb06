package clearbed.recognise.schedule.row;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the words of a row tell before its cells are read. */
public final class RowWords {
  private final Vocabulary vocabulary;

  public RowWords(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * The words that describe the material; without such a column, those of the columns not
   * understood.
   */
  public String material(Header header, Table.Row row, int tagColumn) {
    List<String> words = new ArrayList<>();
    for (Header.Column column : header.columns().values()) {
      boolean kind = column.attribute() != null && column.attribute().id().equals("tile.kind");
      if ((column.describes() || kind) && column.index() != tagColumn)
        words.add(vocabulary.taught().spelt(text(row, column.index()), ""));
    }
    if (words.stream().allMatch(String::isBlank)) {
      // "Old Brass" under "Color program" is a colour and no brass.
      for (Header.Role role : List.of(Header.Role.OTHER, Header.Role.UNASKED))
        for (Header.Column c : header.all(role))
          if (!vocabulary.list("schedule.looks").in(c.text()) && !isOfOtherWork(c))
            words.add(text(row, c.index()));
    }
    return String.join(" | ", words.stream().filter(w -> !w.isBlank()).toList());
  }

  /** "Board on steel studs" under "Backing" is what a tile is on, if it is not clear of what. */
  private static boolean isOfOtherWork(Header.Column column) {
    List<String> could = column.evidence().could();
    return !could.isEmpty() && !could.get(0).startsWith("tile.");
  }

  public String tileStandard(Header header, Table.Row row) {
    for (Header.Column column : header.all(Header.Role.ATTRIBUTE)) {
      if (column.attribute().id().equals("tile.standard")) {
        return String.join(
            " ",
            Citations.find(text(row, column.index())).stream()
                .map(f -> f.standard().designation())
                .toList());
      }
    }
    return "";
  }

  /** What a row of rooms says of the exposure, as written. */
  public String exposure(Header header, Table.Row row) {
    return header.all(Header.Role.ATTRIBUTE).stream()
        .filter(c -> c.attribute().id().equals("location.exposure"))
        .map(c -> text(row, c.index()))
        .filter(t -> !t.isBlank())
        .findFirst()
        .orElse("");
  }

  /** Room number and name as one text. */
  public String room(Header header, Table.Row row) {
    List<String> words = new ArrayList<>();
    for (Header.Column column : header.columns().values()) {
      boolean room = column.attribute() != null && column.attribute().id().equals("location.room");
      boolean number =
          column.role() != Header.Role.SURFACE
              && vocabulary
                  .list("schedule.roomNumber")
                  .matches(column.text().toLowerCase(Locale.ROOT).replace(".", ""));
      if (room
          || number
          || (column.role() == Header.Role.MATERIAL
              && column.text().toLowerCase(Locale.ROOT).contains("name")))
        words.add(text(row, column.index()));
    }
    return String.join(" ", words.stream().filter(w -> !w.isBlank()).toList());
  }

  static String text(Table.Row row, int column) {
    Table.Cell cell = row.at(column);
    return cell == null ? "" : PlainText.of(cell.text()).trim();
  }
}
