package clearbed.recognise.schedule;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.row.RoomUse;
import clearbed.recognise.schedule.row.RowWords;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Rows on a room, whose cells name the tiles of its surfaces. */
final class RoomRows {
  private final Vocabulary vocabulary;
  private final RowWords rowWords;
  private final Table table;
  private final List<RoomUse> uses = new ArrayList<>();

  RoomRows(Vocabulary vocabulary, RowWords rowWords, Table table) {
    this.vocabulary = vocabulary;
    this.rowWords = rowWords;
    this.table = table;
  }

  List<RoomUse> uses() {
    return uses;
  }

  /** "Room | Name | Floor | Walls", "Unit type | Room | Floor | Walls": neither is a product's. */
  static boolean are(Header header) {
    boolean rooms =
        header.all(Header.Role.ATTRIBUTE).stream()
            .anyMatch(c -> c.attribute().id().equals("location.room"));
    return rooms
        && header.all(Header.Role.SURFACE).size() >= 2
        && (!header.has(Header.Role.TAG)
            || header.all(Header.Role.MATERIAL).stream()
                .allMatch(c -> c.text().toLowerCase(Locale.ROOT).contains("name")));
  }

  /** Notes what a row says; false where it names no tile. */
  boolean add(Table.Row row, Header header) {
    String room = rowWords.room(header, row);
    String exposure = rowWords.exposure(header, row);
    boolean any = false;
    for (Header.Column column : header.all(Header.Role.SURFACE)) {
      Table.Cell cell = row.at(column.index());
      if (cell == null) continue;
      Set<String> tags = TagFinder.tags(PlainText.of(cell.text()));
      if (vocabulary.taught().isTag(cell.text())) tags.add(PlainText.line(cell.text()));
      for (String tag : tags) {
        uses.add(new RoomUse(tag, room, exposure, column.surface(), table.origin(cell)));
        any = true;
      }
    }
    return any;
  }
}
