package clearbed.recognise;

import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.ThinList;
import clearbed.model.report.Account;
import clearbed.recognise.schedule.row.RoomUse;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.Citation;
import clearbed.recognise.vocabulary.taught.Lessons;
import java.util.List;
import java.util.function.Predicate;

/**
 * What one document says, before it is joined with the others.
 *
 * @param document without its blocks; its gaps are also the rows and cells passed over
 * @param glassNamed places that say that there is glass tile, whatever came of them; of many the
 *     first few
 * @param numbered what its paragraphs and cells open with, where that is written as numbers of
 *     clauses, positions and details are; each once, of very many the first
 * @param lessons what it teaches of the ways of its office
 * @param account of every sentence and cell
 */
public record Facts(
    Document document,
    List<ScheduleRow> rows,
    List<RoomUse> rooms,
    List<Section> sections,
    List<Citation> citations,
    List<Origin> glassNamed,
    List<String> numbered,
    Lessons lessons,
    Account account) {
  public Facts {
    rows = List.copyOf(rows);
    rooms = List.copyOf(rooms);
    sections = List.copyOf(sections);
    citations = ThinList.copyOf(citations);
    glassNamed = List.copyOf(glassNamed);
    numbered = List.copyOf(numbered);
  }

  /** Of a document that says nothing, or of which nothing could be read. */
  static Facts none(Document document) {
    List<Origin> nowhere = List.of();
    return new Facts(
        document,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        nowhere,
        List.of(),
        Lessons.NOTHING,
        Account.NOTHING);
  }

  /**
   * Without what its rows state, for when that has been joined into entries.
   *
   * @param told true of rows whose tiles other rows describe
   */
  public Facts withoutStatements(Predicate<ScheduleRow> told) {
    return withRows(rows.stream().map(row -> row.withoutStatements(told.test(row))).toList());
  }

  /** Places, rows and cells that were passed over, with the reason. */
  public List<Document.Gap> gaps() {
    return document.gaps();
  }

  Facts withRows(List<ScheduleRow> now) {
    return new Facts(
        document, now, rooms, sections, citations, glassNamed, numbered, lessons, account);
  }
}
