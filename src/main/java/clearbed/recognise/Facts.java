package clearbed.recognise;

import clearbed.model.Account;
import clearbed.model.Document;
import clearbed.model.Origin;
import clearbed.model.ThinList;
import java.util.List;

/**
 * What one document says, before it is joined with the others.
 *
 * @param gaps rows and cells passed over, with the reason
 * @param glassNamed places that say that there is glass tile, whatever came of them; of many the
 *     first few
 * @param account of every sentence and cell
 */
public record Facts(
    String document,
    List<ScheduleRow> rows,
    List<RoomUse> rooms,
    List<Section> sections,
    List<Citation> citations,
    List<Document.Gap> gaps,
    List<Origin> glassNamed,
    Account account) {
  public Facts {
    rows = List.copyOf(rows);
    rooms = List.copyOf(rooms);
    sections = List.copyOf(sections);
    citations = ThinList.copyOf(citations);
    gaps = List.copyOf(gaps);
    glassNamed = List.copyOf(glassNamed);
  }

  /** Without what its rows state, for when that has been joined into entries. */
  public Facts withoutStatements() {
    return withRows(rows.stream().map(ScheduleRow::withoutStatements).toList());
  }

  Facts withRows(List<ScheduleRow> now) {
    return new Facts(document, now, rooms, sections, citations, gaps, glassNamed, account);
  }
}
